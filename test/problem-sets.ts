/** The public problem sets of others, read where they lie beside the project; never part of it. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageRoot } from '../src/host/index.ts';
import type { ScheduleProblem } from '../src/prep/index.ts';

/** Kolisch, Sprecher, PSPLIB, European Journal of Operational Research 96 (1996) 205-216. */
export type PublicProblem = {
  readonly problem: ScheduleProblem;
  /** Length of the longest chain, and the best bounds and makespans published. */
  readonly chain: number;
  readonly bestBound: number;
  readonly bestKnown: number;
};

type Row = {
  readonly id: string;
  readonly cap: number[];
  readonly dur: number[];
  readonly need: number[][];
  readonly succ: number[][];
  readonly cp: number;
  readonly lb: number;
  readonly ub: number;
};

/** Undefined where the set does not lie beside the project. @param set j30, j60 or j120 */
export function problemSet(set: string): readonly PublicProblem[] | undefined {
  const path = join(packageRoot(), '..', 'shared', 'reference', 'planning', 'psplib', `${set}.json`);
  if (!existsSync(path)) return undefined;
  return (JSON.parse(readFileSync(path, 'utf8')) as Row[]).map(({ id, cap, dur, need, succ, cp, lb, ub }) => {
    const after: number[][] = dur.map(() => []);
    succ.forEach((list, i) => {
      for (const j of list) after[j]?.push(i);
    });
    const activities = dur.map((ticks, i) => ({ id: `${i}`, ticks, needs: need[i] ?? [], after: after[i] ?? [] }));
    return { problem: { id, capacity: cap, activities }, chain: cp, bestBound: lb, bestKnown: ub };
  });
}
