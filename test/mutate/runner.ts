/**
 * Runs each test once as it is and notes which mutants it reaches; then, with everything loaded, switches on one mutant after
 * the other and calls the tests that reach it, quick ones first, until one fails. Loading everything anew for each mutant,
 * as is usual, takes hundreds of times as long. What it costs: a mutant reached only while files load is not tried, and a test that a
 * mutant failed is called once more without it; if it fails still, something was left behind and a fresh process goes on.
 */
import { relative } from 'node:path';
import { TestRunner } from 'vitest';
import { tell, toldSoFar } from './work.ts';

type Test = Parameters<TestRunner['onAfterRunTask']>[0] & { readonly type: 'test' };
type Suite = Parameters<TestRunner['onAfterRunSuite']>[0];
type Hits = Readonly<Record<string, number>>;

/** What the instrumented sources read and write: names of the instrumenter. */
type Switches = {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: { readonly static: Hits; readonly perTest: Readonly<Record<string, Hits>> };
};
const world = globalThis as { __stryker__?: Switches };
world.__stryker__ ??= {};
const switches = world.__stryker__;

const HITS = 100; // times as often as without the mutant: then it is held to run for ever
const PATIENCE_MS = 5_000; // and so much longer than five times as long as without

export default class MutantRunner extends TestRunner {
  override onBeforeTryTask(test: Test): void {
    super.onBeforeTryTask(test);
    switches.currentTestId = test.id;
  }

  override onAfterTryTask(test: Test): void {
    super.onAfterTryTask(test);
    switches.currentTestId = undefined;
  }

  override async onAfterRunSuite(suite: Suite): Promise<void> {
    await super.onAfterRunSuite(suite);
    if ('filepath' in suite && typeof suite.filepath === 'string')
      await tryMutants(relative(process.cwd(), suite.filepath), testsOf(suite));
  }
}

const testsOf = (suite: Suite): readonly Test[] =>
  suite.tasks.flatMap(task => (task.type === 'suite' ? testsOf(task) : [task as Test]));

async function tryMutants(file: string, tests: readonly Test[]): Promise<void> {
  const before = toldSoFar();
  if (before.some(line => 'stale' in line || ('done' in line && line.file === file))) return;
  const [sound, failing] = [tests.filter(passed), tests.filter(test => !passed(test))];
  if (sound.length === 0) throw new Error(`${file}: its tests must pass without a mutant`);
  if (failing.length > 0) tell({ file, leftOut: failing.map(test => test.name) });
  const { static: atLoad = {}, perTest = {} } = structuredClone(switches.mutantCoverage) ?? {};
  const quickFirst = sound.toSorted((a, b) => took(a) - took(b));
  const reached = [...new Set(Object.values(perTest).flatMap(hits => Object.keys(hits)))];
  tell({ file, reached, atLoad: Object.keys(atLoad) });
  const settled: ReadonlySet<string> = new Set(
    before.flatMap(line => ('end' in line && (line.end === 'killed' || line.file === file) ? [line.mutant] : [])),
  );
  let fresh = true;
  for (const mutant of reached.filter(each => !settled.has(each))) {
    const its = quickFirst.filter(test => perTest[test.id]?.[mutant] !== undefined);
    tell({ file, mutant, begun: PATIENCE_MS + 5 * its.reduce((sum, test) => sum + took(test), 0) });
    const by = await killer(mutant, its, test => perTest[test.id]?.[mutant] ?? 0);
    const stale = by !== undefined && !(await passes(by));
    if (!stale || fresh) tell({ file, mutant, end: by === undefined ? 'lived' : 'killed', ...(by && { by: by.name }) });
    if (stale) return tell({ file, stale: mutant });
    fresh = false;
    await new Promise(resolve => setImmediate(resolve)); // lets Vitest breathe
  }
  tell({ file, done: true });
}

const passed = (test: Test): boolean => test.result?.state === 'pass';
const took = (test: Test): number => test.result?.duration ?? 0;

async function killer(mutant: string, tests: readonly Test[], hits: (test: Test) => number): Promise<Test | undefined> {
  for (const test of tests) {
    switches.activeMutant = mutant;
    switches.hitCount = 0;
    switches.hitLimit = HITS * hits(test);
    const survives = await passes(test);
    switches.activeMutant = undefined;
    switches.hitLimit = undefined;
    if (!survives) return test;
  }
  return undefined;
}

async function passes(test: Test): Promise<boolean> {
  try {
    await TestRunner.getTestFn(test)();
    return true;
  } catch {
    return false;
  }
}
