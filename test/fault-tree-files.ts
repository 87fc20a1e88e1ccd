/** Fault trees in files: ours, which lie in test/fixtures, and those of others, which are read beside the project where they are. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Number of minimal cut sets, by order from 1 up, and the exact chance of the top as printed: 6 digits. */
export type TreeAnswer = { readonly count: number; readonly byOrder: readonly number[]; readonly top: number };
export type TreeFile = { readonly name: string; readonly xml: string; readonly answer: TreeAnswer };

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const read = (path: string): string => readFileSync(at(path), 'utf8');

export function ourTrees(): readonly TreeFile[] {
  const { trees } = JSON.parse(read('fixtures/fault-trees/answers.json')) as { trees: Record<string, TreeAnswer> };
  return Object.entries(trees).map(([name, answer]) => ({
    name,
    xml: read(`fixtures/fault-trees/${name}.xml`),
    answer,
  }));
}

type Printed = { readonly mcs: number; readonly mcs_by_order: readonly number[]; readonly top_exact: number };

const SHARED = '../../shared/reference';
/** All sixteen, where they lie beside the project; undefined where they do not. */
export function sharedTrees(): readonly TreeFile[] | undefined {
  if (!existsSync(at(`${SHARED}/fault-trees/expected.json`))) return undefined;
  const { trees } = JSON.parse(read(`${SHARED}/fault-trees/expected.json`)) as { trees: Record<string, Printed> };
  return Object.entries(trees).map(([name, { mcs, mcs_by_order, top_exact }]) => ({
    name,
    xml: read(`${SHARED}/fault-trees/${name}.xml`),
    answer: { count: mcs, byOrder: mcs_by_order, top: top_exact },
  }));
}

