/**
 * Fault trees: small trees whose every state was enumerated outside the project and which another program solved too,
 * beta factors, dependence of one step on the next. How each value was obtained stands in its row. One tree of the sheet
 * is a public one and is not carried in: src/risk/fault-tree/trees.test.ts reads it where it is.
 */
import { describe } from 'vitest';
import {
  type Analysis,
  analyse,
  type FaultTree,
  leftOutToo,
  readJsonTree,
  withSharedCause,
} from '../src/risk/index.ts';
import rows from './rows/fault-tree.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

function treeOf(given: Given): FaultTree {
  const read = readJsonTree(JSON.parse(String(given.tree)));
  if (read.kind === 'tree') return read.tree;
  throw new Error(
    read.problems.map(({ path, expected, got }) => `${path}: expected ${expected}, got ${got}`).join('\n'),
  );
}

function solved(tree: FaultTree): Analysis {
  const found = analyse(tree);
  if (found.kind === 'analysis') return found;
  throw new Error('too large');
}

function figures(tree: FaultTree, analysis: Analysis): Numbers {
  const sets = [...analysis.cutSets.list()].map(set =>
    set.reduce((product, event) => product * Number(tree.events.get(event)), 1),
  );
  return {
    count: Number(analysis.cutSets.count),
    byOrder: analysis.cutSets.byOrder.map(Number),
    top: analysis.top ?? Number.NaN,
    'sum of the sets': sets.reduce((sum, chance) => sum + chance, 0),
    'upper bound of the sets': 1 - sets.reduce((none, chance) => none * (1 - chance), 1),
  };
}

function whole(given: Given): Numbers {
  const tree = treeOf(given);
  const analysis = solved(tree);
  if (given.sets) same(sorted(analysis.cutSets.list()), sorted(words(given.sets, '; ').map(set => words(set, ' '))));
  if (given.sets) same([...analysis.singlePoints].sort(), words(given['single points'], ' ').sort());
  return figures(tree, analysis);
}

function importance(given: Given): Numbers {
  const analysis = solved(treeOf(given));
  const each = words(given.events, ' ').map(event => ({ event, of: analysis.importance(event) }));
  const without = each.filter(({ of }) => of?.reduction === Number.POSITIVE_INFINITY).map(({ event }) => event);
  same(without, words(given['nothing without'] ?? '', ' '));
  const read = (name: Measure): readonly number[] => each.map(({ of }) => of?.[name] ?? Number.NaN);
  return {
    ...Object.fromEntries(MEASURES.map(name => [name, read(name)])),
    reduction: read('reduction').filter(Number.isFinite),
  };
}
const MEASURES = ['birnbaum', 'criticality', 'fussellVesely', 'achievement', 'reduction', 'diagnostic'] as const;
type Measure = (typeof MEASURES)[number];

function grouped(given: Given): Numbers {
  const tree = treeOf(given);
  const beta = number(given, 'beta');
  const groups = words(given.groups, '; ').map((group, n) => ({
    name: `cause ${n + 1}`,
    members: words(group, ','),
    beta,
  }));
  const shared = groups.reduce(withSharedCause, tree);
  return { ...figures(shared, solved(shared)), 'top without groups': solved(tree).top ?? Number.NaN };
}

function dependent(given: Given): Numbers {
  const level = (['low', 'moderate', 'high'] as const).find(each => each === given.dependence);
  if (level === undefined) throw new Error(`no dependence is called ${String(given.dependence)}`);
  return { 'left out too': leftOutToo(number(given, 'alone'), level) };
}

const words = (text: Given[string] | undefined, between: string): string[] =>
  String(text ?? '')
    .split(between)
    .filter(word => word !== '');
const sorted = (sets: Iterable<readonly string[]>): readonly string[] =>
  [...sets].map(set => [...set].sort().join(' ')).sort();
function same(got: readonly string[], wanted: readonly string[]): void {
  if (got.join('; ') !== wanted.join('; ')) throw new Error(`expected ${wanted.join('; ')}, got ${got.join('; ')}`);
}

describe('fault trees: cut sets, exact top, importance, common cause', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    if (id.endsWith('.importance')) return importance(given);
    if ('groups' in given) return grouped(given);
    return 'dependence' in given ? dependent(given) : whole(given);
  });
});
