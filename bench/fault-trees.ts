/**
 * Cut sets counted and exact top of whole fault trees, beside scram --bdd where that is installed, both in this run.
 * Each is the least of as many runs, for neighbours on a shared machine only ever add. Ours are warm, as in a page or a
 * server that stays open, with the first run of each tree beside it; scram's is its own clock for the same work, without
 * start, reading and writing.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { analyse, type FaultTree, readMef } from '../src/risk/index.ts';
import { ourTrees, sharedTrees, type TreeFile } from '../test/fault-tree-files.ts';
import { type Figure, ms, times } from './measure.ts';

const RUNS = 15;
const TO_WARM = 20;

export async function faultTrees(): Promise<readonly Figure[]> {
  const files = sharedTrees() ?? ourTrees();
  const scram = spawnSync('scram', ['--version']).status === 0;
  const figures: Figure[] = [];
  for (const file of files) figures.push(await figure(file, scram));
  const most = process.resourceUsage().maxRSS * 1024;
  return [
    ...figures,
    { what: 'most memory of the whole process so far', value: `${Math.round(most / 1e6)} MB` },
    ...(sharedTrees() ? [] : [said('the public trees are not beside this project: only ours were measured')]),
    ...(scram ? [] : [said('scram is not installed: nothing to compare with')]),
  ];
}

const said = (what: string): Figure => ({ what, value: '' });

async function figure(file: TreeFile, scram: boolean): Promise<Figure> {
  const read = readMef(file.xml);
  if (read.kind !== 'tree') throw new Error(`bench: ${file.name} must be a tree, got ${read.problems[0]?.expected}`);
  const from = performance.now();
  const what = `${file.name.padEnd(10)} ${solved(file, read.tree)}`;
  const first = performance.now() - from;
  for (let run = 0; run < TO_WARM; run++) analyse(read.tree);
  const ours = least(() => {
    const start = performance.now();
    analyse(read.tree);
    return performance.now() - start;
  });
  const theirs = scram ? scramTime(file) : undefined;
  const ratio = theirs === undefined ? '' : `${times(ours, theirs, 'scram --bdd')}, ${ms(theirs)}; `;
  return { what, value: ms(ours), ratio: `${ratio}the first time ${ms(first)}` };
}

/** Count and top in words; throws where they are not those that the other program printed. */
function solved({ name, answer }: TreeFile, tree: FaultTree): string {
  const analysis = analyse(tree);
  if (analysis.kind !== 'analysis') throw new Error(`bench: ${name} must be solved, got too large`);
  const top = analysis.top?.toPrecision(6);
  const { count, byOrder } = analysis.cutSets;
  if (Number(top) !== answer.top || byOrder.map(Number).join() !== answer.byOrder.join())
    throw new Error(`bench: ${name} must have ${answer.count} cut sets and top ${answer.top}, got ${count} and ${top}`);
  return `${String(count).padStart(6)} cut sets, top ${Number(top)}`;
}

const least = (time: () => number): number => Math.min(...Array.from({ length: RUNS }, time));

/** The least that scram itself prints for products and probability together, ms. */
function scramTime({ path }: TreeFile): number {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const report = join(folder, 'report.xml');
  const args = ['--bdd', '--probability', '1', '-l', '100', '--no-indent', path, '-o', report];
  const time = least(() => {
    const { status } = spawnSync('scram', args);
    if (status !== 0) throw new Error(`bench: scram ${args.join(' ')} must end with exit 0, got ${status}`);
    const printed = readFileSync(report, 'utf8');
    const seconds = (name: string) => Number(new RegExp(`<${name}>([^<]*)</${name}>`).exec(printed)?.[1]);
    return 1000 * (seconds('products') + seconds('probability'));
  });
  rmSync(folder, { recursive: true });
  return time;
}
