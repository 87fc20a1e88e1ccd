/** `calc fault-tree`: minimal cut sets counted, single points and the exact top of a tree in JSON or Open-PSA MEF XML. */
import { z } from 'zod';
import type { InputProblem } from '../numbers/index.ts';
import { type Analysis, analyse, type FaultTree, fromJson, readMef, type TreeRead, treeFields } from '../risk/index.ts';
import { bareProblem, type Solution } from './bare-problem.ts';

const schema = z.strictObject({
  mef: z.string().optional().describe('the tree as Open-PSA MEF XML, instead of top, gates and basic'),
  top: treeFields.top.optional(),
  gates: treeFields.gates.optional(),
  basic: treeFields.basic.optional(),
  list: z.int().min(0).max(10_000).optional().describe('so many cut sets by name, smallest order first'),
  importance: z.boolean().optional().describe('what each event means for the top'),
});
type Asked = z.infer<typeof schema>;

export const bareFaultTree = bareProblem<Asked>({
  name: 'fault-tree',
  title: 'Fault trees: minimal cut sets, single points, exact chance of the top',
  how: [
    'Standard input takes the XML as it is, or JSON with top, gates and basic, or JSON with the XML as "mef".',
    'Constants folded, modules solved alone, then a binary decision diagram: the chance of the top is exact, not the sum over cut sets.',
    'Minimal cut sets as a diagram of sets, counted by order without being listed; byOrder runs from order 1.',
    'A tree has no "not": a failure never helps. An event without a chance leaves the cut sets and makes the top null.',
    'A tree whose diagram outgrows four million nodes is said to be too large; nothing of it is given for the whole.',
  ],
  sources: [
    'Rauzy 1993, New algorithms for fault trees analysis (memory)',
    'Dutuit and Rauzy 1996, A linear-time algorithm to find modules of fault trees (memory)',
    'Open-PSA Model Exchange Format (open standard)',
    'every state of small trees enumerated, and SCRAM 0.16.2: the figures in checks/rows/fault-tree.json',
  ],
  example: {
    top: 'no brakes',
    gates: {
      'no brakes': { op: 'or', inputs: ['pedal pin', 'both circuits'] },
      'both circuits': { op: 'and', inputs: ['front circuit', 'rear circuit'] },
    },
    basic: { 'pedal pin': 0.0001, 'front circuit': 0.002, 'rear circuit': 0.003 },
  },
  xml: 'mef',
  schema,
  check: asked => {
    const read = treeIn(asked);
    return read.kind === 'tree' ? [] : read.problems;
  },
  solve: asked => {
    const read = treeIn(asked);
    return read.kind === 'tree' ? solution(read.tree, asked) : {};
  },
});

function treeIn({ mef, top, gates, basic }: Asked): TreeRead {
  const given = [top, gates, basic].filter(each => each !== undefined).length;
  if (mef !== undefined && given === 0) return readMef(mef);
  if (mef === undefined && top !== undefined && gates !== undefined && basic !== undefined)
    return fromJson({ top, gates, basic });
  return { kind: 'problems', problems: [mef === undefined ? missing({ top, gates, basic }) : BOTH] };
}

const BOTH: InputProblem = {
  path: 'mef',
  expected: 'the tree once',
  got: 'as XML and as JSON',
  remedy: 'leave mef out, or top, gates and basic',
};
const missing = (parts: Pick<Asked, 'top' | 'gates' | 'basic'>): InputProblem => ({
  path: 'the whole input',
  expected: 'a tree: top, gates and basic, or mef',
  got: `no ${(['top', 'gates', 'basic'] as const).filter(name => parts[name] === undefined).join(', no ')}`,
  remedy: 'add it; --schema shows the shape',
});

function solution(tree: FaultTree, { list, importance }: Asked): Solution {
  const analysis = analyse(tree);
  if (analysis.kind === 'too large')
    return { tooLarge: `The diagram of this tree has more than ${analysis.nodes} nodes. Split the tree at a gate.` };
  const { cutSets, singlePoints, top } = analysis;
  return {
    cutSets: {
      count: plain(cutSets.count),
      byOrder: cutSets.byOrder.map(plain),
      ...(list === undefined ? {} : { list: [...cutSets.list({ sets: list })] }),
    },
    singlePoints,
    top: top ?? null,
    ...(top === undefined ? { notKnown: unknownIn(tree) } : {}),
    ...(importance ? { importance: importanceOf(tree, analysis) } : {}),
  };
}

/** A count past what a JSON number holds exactly is written in digits. */
const plain = (count: bigint): number | string =>
  count <= BigInt(Number.MAX_SAFE_INTEGER) ? Number(count) : String(count);

const unknownIn = ({ events }: FaultTree): readonly string[] =>
  [...events].filter(([, is]) => is === undefined).map(([name]) => name);

/** Null where it is not known, or where nothing happens without the event and a quotient has no end. */
const importanceOf = ({ events }: FaultTree, analysis: Analysis): Solution =>
  Object.fromEntries([...events.keys()].map(event => [event, analysis.importance(event) ?? null]));
