/** What runs inside the page of `planned.ts`: the core as the page has it, on a book that was handed in. */
import { type Fact, fold } from '../../src/book/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import { makePlan, nextEvent } from '../../src/prep/index.ts';

export type InPage = { times(kart: Kart, facts: readonly Fact[], now: string, runs: number): Timed };
export type Timed = { readonly plan: readonly number[]; readonly fold: readonly number[]; readonly steps: number };

const timed = (work: () => unknown): number => {
  const from = performance.now();
  work();
  return performance.now() - from;
};

export const inPage: InPage = {
  times(kart, facts, now, runs) {
    const state = fold(facts);
    const event = nextEvent(state, now);
    const at = event ? { now, event } : { now };
    const [plan, folded]: [number[], number[]] = [[], []];
    for (let run = 0; run < runs; run++) {
      folded.push(timed(() => fold(facts)));
      plan.push(timed(() => makePlan(kart, state, at)));
    }
    return { plan, fold: folded, steps: makePlan(kart, state, at).steps.length };
  },
};
