/** Whole trees against what another program printed of them: ours always, those of others where they are. */
import { describe, expect, it } from 'vitest';
import { ourTrees, sharedTrees, type TreeFile } from '../../../test/fault-tree-files.ts';
import { analyse } from './analyse.ts';
import { readMef } from './mef.ts';

function solved({ xml }: Pick<TreeFile, 'xml'>) {
  const read = readMef(xml);
  if (read.kind !== 'tree') throw new Error(JSON.stringify(read.problems.slice(0, 3)));
  const analysis = analyse(read.tree);
  if (analysis.kind !== 'analysis') throw new Error('too large');
  return { tree: read.tree, analysis };
}

function holds(file: TreeFile): void {
  const { analysis } = solved(file);
  expect(analysis.cutSets.byOrder.map(Number)).toEqual(file.answer.byOrder);
  expect(analysis.cutSets.count).toBe(BigInt(file.answer.count));
  expect(Number(analysis.top?.toPrecision(6))).toBe(file.answer.top);
  expect(analysis.singlePoints).toHaveLength(file.answer.byOrder[0] ?? 0);
}

describe('the trees made for this project', () => {
  const ours = ourTrees();
  it('are there', () => expect(ours.length).toBe(4));
  for (const file of ours) it(`${file.name} has the counts and the top of the other program`, () => holds(file));

  it('list as many cut sets as they count, each once, none within another', () => {
    const file = ours.find(({ name }) => name === 'kartlike_s');
    const sets = file ? [...solved(file).analysis.cutSets.list()] : [];
    expect(sets).toHaveLength(file?.answer.count ?? -1);
    for (const set of sets)
      for (const other of sets) if (set !== other) expect(set.every(event => other.includes(event))).toBe(false);
  });
});

const theirs = sharedTrees();
if (theirs === undefined)
  it('public trees are not beside this project: sixteen trees were not looked at', () =>
    expect(theirs).toBeUndefined());
else
  describe('the trees beside the project, most of them public', () => {
    it('are sixteen', () => expect(theirs).toHaveLength(16));
    for (const file of theirs) it(`${file.name} has the counts and the top of the other program`, () => holds(file));

    it('B14 one of them has the top of the other program with other chances too: 0.00456932 with every one 0.02', () => {
      const file = theirs.find(({ name }) => name === 'chinese');
      const found = file && solved(file);
      const chances = new Map([...(found?.tree.events.keys() ?? [])].map(event => [event, 0.02]));
      expect(Number(found?.analysis.topWith(chances)?.toPrecision(6))).toBe(0.00456932);
    });
  });
