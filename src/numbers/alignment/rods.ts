import type { Input } from './input.ts';
import type { Toe } from './read.ts';

/** What to do to the tie rods for the wanted toe. */
export type RodWork = {
  readonly toe: number; // to add to both wheels together [rad], toe-in above 0
  readonly each?: number; // to lengthen each rod by [m]
  readonly turns?: number; // of each rod, lengthening above 0
};

/** Each rod by half of the missing toe. Arms behind the kingpin: a longer rod is toe-in; ahead of it: toe-out. */
export function rodWork(input: Input, toe: Toe): RodWork | undefined {
  const wanted = input['wanted toe-in'];
  const over = input['wanted toe diameter'];
  if (wanted === undefined || over === undefined) return undefined;
  const missing = 2 * Math.asin(wanted.si / (2 * over.si)) - toe.total;
  const arm = input['steering arm'];
  if (arm === undefined) return { toe: missing };
  const each = ((input['steering arms'] === 'ahead' ? -1 : 1) * missing * arm.si) / 2;
  const pitch = input['rod thread pitch'];
  if (pitch === undefined) return { toe: missing, each };
  return { toe: missing, each, turns: each / (pitch.si * (input['rod threads'] === 'left and right' ? 2 : 1)) };
}
