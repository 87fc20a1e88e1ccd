/** Fault trees in files: ours, which lie in test/fixtures, and those of others, which are read beside the project where they are. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageRoot } from '../src/host/index.ts';

/** Number of minimal cut sets, by order from 1 up, and the exact chance of the top as printed: 6 digits. */
export type TreeAnswer = { readonly count: number; readonly byOrder: readonly number[]; readonly top: number };
export type TreeFile = {
  readonly name: string;
  readonly path: string;
  readonly xml: string;
  readonly answer: TreeAnswer;
};

const fixtures = (): string => join(packageRoot(), 'test', 'fixtures', 'fault-trees');
const shared = (): string => join(packageRoot(), '..', 'shared', 'reference', 'fault-trees');

export function ourTrees(): readonly TreeFile[] {
  const { trees } = json(fixtures(), 'answers.json') as { trees: Record<string, TreeAnswer> };
  return Object.entries(trees).map(([name, answer]) => file(fixtures(), name, answer));
}

type Printed = { readonly mcs: number; readonly mcs_by_order: readonly number[]; readonly top_exact: number };

/** All sixteen, where they lie beside the project; undefined where they do not. */
export function sharedTrees(): readonly TreeFile[] | undefined {
  if (!existsSync(join(shared(), 'expected.json'))) return undefined;
  const { trees } = json(shared(), 'expected.json') as { trees: Record<string, Printed> };
  return Object.entries(trees).map(([name, { mcs, mcs_by_order, top_exact }]) =>
    file(shared(), name, { count: mcs, byOrder: mcs_by_order, top: top_exact }),
  );
}

function file(folder: string, name: string, answer: TreeAnswer): TreeFile {
  const path = join(folder, `${name}.xml`);
  return { name, path, xml: readFileSync(path, 'utf8'), answer };
}
const json = (folder: string, name: string): unknown => JSON.parse(readFileSync(join(folder, name), 'utf8'));
