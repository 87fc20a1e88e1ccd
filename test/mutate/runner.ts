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

const SLOW_MS = 1000; // of work: a longer test is left out, since all that live would run it

/** Work a test takes, in ms of processor time, whatever else the machine does. */
const work = new Map<string, number>();

export default class MutantRunner extends TestRunner {
  override onBeforeTryTask(test: Test): void {
    super.onBeforeTryTask(test);
    switches.currentTestId = test.id;
    work.set(test.id, -spent());
  }

  override onAfterTryTask(test: Test): void {
    super.onAfterTryTask(test);
    switches.currentTestId = undefined;
    work.set(test.id, (work.get(test.id) ?? 0) + spent());
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
  if (before.some(line => 'stale' in line)) return;
  const [sound, failing] = [tests.filter(passed), tests.filter(test => !passed(test))];
  if (sound.length === 0) throw new Error(`${file}: its tests must pass without a mutant`);
  const [quick, slow] = [sound.filter(isQuick), sound.filter(test => !isQuick(test))];
  if (failing.length > 0 || slow.length > 0)
    tell({ file, failing: failing.map(test => test.name), slow: slow.map(test => test.name) });
  const { static: atLoad = {}, perTest = {} } = structuredClone(switches.mutantCoverage) ?? {};
  const quickFirst = quick.toSorted((a, b) => workOf(a) - workOf(b));
  const reached = [...new Set(sound.flatMap(test => Object.keys(perTest[test.id] ?? {})))];
  tell({ file, reached, atLoad: Object.keys(atLoad) });
  const settled: ReadonlySet<string> = new Set(
    before.flatMap(line => ('end' in line && (line.end === 'killed' || line.file === file) ? [line.mutant] : [])),
  );
  let fresh = true;
  for (const mutant of reached.filter(each => !settled.has(each))) {
    const its = quickFirst.filter(test => perTest[test.id]?.[mutant] !== undefined);
    if (its.length === 0) continue;
    const begin = (test: Test): number => {
      tell({ file, mutant, begun: PATIENCE_MS + 5 * took(test) });
      return perTest[test.id]?.[mutant] ?? 0;
    };
    const by = await killer(mutant, its, begin);
    const stale = by !== undefined && !(await passes(by));
    if (!stale || fresh) tell({ file, mutant, end: by === undefined ? 'lived' : 'killed', ...(by && { by: by.name }) });
    if (stale) return tell({ file, stale: mutant });
    fresh = false;
    await new Promise(resolve => setImmediate(resolve)); // lets Vitest breathe
  }
  tell({ file, done: true });
}

const passed = (test: Test): boolean => test.result?.state === 'pass';
const spent = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const workOf = (test: Test): number => work.get(test.id) ?? 0;
const isQuick = (test: Test): boolean => workOf(test) <= SLOW_MS;
const took = (test: Test): number => test.result?.duration ?? 0;

/** @param begin says how often the test met the mutant when it was off */
async function killer(
  mutant: string,
  tests: readonly Test[],
  begin: (test: Test) => number,
): Promise<Test | undefined> {
  for (const test of tests) {
    switches.hitLimit = HITS * begin(test);
    switches.hitCount = 0;
    switches.activeMutant = mutant;
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
