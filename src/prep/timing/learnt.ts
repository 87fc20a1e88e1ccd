/**
 * Minutes of a piece of work on this kart, learnt from how long it took before.
 *
 *   y = ln(took/planned);  m = (Σy + k ȳ)/(n + k);  typical = planned e^m;  slow = planned e^(m + z s √(1 + 1/(n + k)))
 * y of one timing [1]; n timings of this work, ȳ mean over all work of this kart (pulled to 0, the plan, by k timings as
 * well), s standard deviation of y about the mean of its own work, over all work with two timings or more [1]; z the 80 %
 * point of the normal distribution [1].
 * Valid: a few timings lean on those of the rest of the work; with none at all the plan's own minutes stand.
 * Source: partial pooling, Gelman and Hill 2007, chapter 12 (memory); k = 2 and 80 in 100 common practice.
 */
import { normalScore } from '../../numbers/index.ts';
import type { Timed } from './observed.ts';

const LEAN = 2; // timings by which one work leans on the others
const SLOW = 0.8; // of 100 times this work is done within the slow figure in 80
/** Where nothing was done twice [1]: as wide as one time in ten half as long again. Common practice. */
const USUAL_SPREAD = 0.3;

export type Minutes = {
  readonly typical: number;
  /** Done within this 80 times of 100; what safety work is planned with. */
  readonly slow: number;
  readonly timings: number; // of this very work
};
/** Minutes for the step of this key, of which the kart's data says `planned`. */
export type Timing = (key: string, planned: number) => Minutes;

/** Nobody timed anything yet. */
export const asPlanned: Timing = (_, planned) => ({ typical: planned, slow: planned, timings: 0 });

export function learnTiming(all: readonly Timed[]): Timing {
  if (all.length === 0) return asPlanned;
  const works = new Map<string, number[]>();
  for (const { key, took, planned } of all) {
    if (!(took > 0 && planned > 0)) continue;
    const own = works.get(key);
    if (own) own.push(Math.log(took / planned));
    else works.set(key, [Math.log(took / planned)]);
  }
  const everything = [...works.values()].flat();
  const kartMean = sum(everything) / (everything.length + LEAN);
  const s = spread([...works.values()]);
  const z = normalScore(SLOW);
  return (key, planned) => {
    const own = works.get(key) ?? [];
    const weight = own.length + LEAN;
    const mean = (sum(own) + LEAN * kartMean) / weight;
    return {
      typical: planned * Math.exp(mean),
      slow: planned * Math.exp(mean + z * s * Math.sqrt(1 + 1 / weight)),
      timings: own.length,
    };
  };
}

/** About the mean of its own work; one work done once says nothing of it. */
function spread(works: readonly (readonly number[])[]): number {
  const twice = works.filter(own => own.length > 1);
  const free = twice.reduce((n, own) => n + own.length - 1, 0);
  if (free === 0) return USUAL_SPREAD;
  const squares = twice.flatMap(own => {
    const mean = sum(own) / own.length;
    return own.map(y => (y - mean) ** 2);
  });
  return Math.sqrt(sum(squares) / free);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
