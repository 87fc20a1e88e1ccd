/**
 * A fault tree in JSON:
 *   { "top": "no brakes",
 *     "gates": { "no brakes": { "op": "and", "inputs": ["front", "rear"] } },
 *     "basic": { "front": 0.002, "rear": 0.003 } }
 * `op` is "and", "or" or "atleast" with its `k`. An event is a chance from 0 to 1, null where nobody knows it, true or
 * false where it is given.
 */
import { z } from 'zod';
import { type InputProblem, shaped } from '../../numbers/index.ts';
import { type TreeRead, treeOf } from './draft.ts';
import type { Basic, Gate } from './model.ts';

const gate = z.strictObject({
  op: z.enum(['and', 'or', 'atleast']).describe('all of the inputs, any of them, or at least k of them'),
  k: z.number().optional().describe('how many it takes; with "atleast" only'),
  inputs: z.array(z.string()).describe('names of gates and events; the same name is the same event'),
});

export const treeFields = {
  top: z.string().describe('the gate or event that is asked about'),
  gates: z.record(z.string(), gate),
  basic: z
    .record(z.string(), z.unknown().meta({ type: ['number', 'boolean', 'null'] }))
    .describe('events: chance from 0 to 1, null where nobody knows it, true or false where it is given'),
} as const;
const schema = z.strictObject(treeFields);
export type JsonTree = z.output<typeof schema>;

const EXAMPLE = {
  top: 'no brakes',
  gates: { 'no brakes': { op: 'and', inputs: ['front', 'rear'] } },
  basic: { front: 0.002, rear: 0.003 },
} as const;

/** Never throws on what comes from outside. */
export function readJsonTree(raw: unknown): TreeRead {
  const found = shaped(raw, { schema, example: EXAMPLE });
  return found.kind === 'shaped' ? fromJson(found.value) : found;
}

/** Of a tree that has the shape: does it hold together? */
export const fromJson = ({ top, gates, basic }: JsonTree): TreeRead =>
  treeOf(
    {
      top: { name: top, where: 'top' },
      gates: Object.entries(gates).map(([name, is]) => ({ name, is: gateOf(is), where: `gates/${name}` })),
      events: Object.entries(basic).map(([name, written]) => ({ name, ...basicOf(written), where: `basic/${name}` })),
    },
    Object.entries(gates).flatMap(([name, is]) => needless(name, is)),
  );

type JsonGate = z.output<typeof gate>;

const gateOf = ({ op, k, inputs }: JsonGate): Gate =>
  op === 'atleast' ? { op, k: k ?? Number.NaN, inputs } : { op, inputs };

/** What is neither a number nor one of the words becomes a chance that is none, and is refused as such. */
function basicOf(written: unknown): { readonly is: Basic; readonly written?: string } {
  if (written === null) return { is: undefined };
  if (typeof written === 'number' || typeof written === 'boolean') return { is: written };
  return { is: Number.NaN, written: JSON.stringify(written)?.slice(0, 40) ?? 'nothing' };
}

const needless = (name: string, { op, k }: JsonGate): readonly InputProblem[] =>
  k === undefined || op === 'atleast'
    ? []
    : [
        {
          path: `gates/${name}/k`,
          expected: 'k beside "atleast" only',
          got: `k ${k} beside "${op}"`,
          remedy: 'take k out, or write "atleast"',
        },
      ];
