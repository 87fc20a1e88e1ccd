/** Why a lap had better not be compared as it stands: what the log does not show of it, or what the kart did besides driving. */
import type { Crossing } from './crossing.ts';
import type { Motion } from './motion.ts';

export type Doubt = 'hole at the gate' | 'hole inside' | 'may be more than one lap' | 'stood still';
export type Span = { readonly from: number; readonly to: number }; // s

/** Slower than walking for so long is standing still. */
const STILL = 1.5; // m/s
const STILL_FOR = 5; // s
/** With a hole in it, so much longer than the middle lap, a lap may hide a crossing. */
const LONG = 1.5;

export const during = (start: Crossing, end: Crossing, spans: readonly Span[]): readonly Span[] =>
  spans.filter(({ from, to }) => from < end.time && to > start.time);

/** @param usual the middle one of all lap times, s */
export function doubtsOf(
  { start, end, usual }: { readonly start: Crossing; readonly end: Crossing; readonly usual: number },
  { holes, stills, hole }: { readonly holes: readonly Span[]; readonly stills: readonly Span[]; readonly hole: number },
): readonly Doubt[] {
  const held = during(start, end, holes);
  const doubts: Readonly<Record<Doubt, boolean>> = {
    'hole at the gate': start.over > hole || end.over > hole,
    'hole inside': held.some(({ from, to }) => from > start.time && to < end.time),
    'may be more than one lap': held.length > 0 && end.time - start.time > LONG * usual,
    'stood still': during(start, end, stills).length > 0,
  };
  return (Object.keys(doubts) as Doubt[]).filter(each => doubts[each]);
}

/** Where more than a few fixes are missing. */
export function holesOf({ time, hole }: Motion): readonly Span[] {
  const holes: Span[] = [];
  for (let n = 0; n + 1 < time.length; n++) {
    const [from, to] = [time[n] as number, time[n + 1] as number];
    if (to - from > hole) holes.push({ from, to });
  }
  return holes;
}

export function stillsOf({ time, vx, vy }: Motion): readonly Span[] {
  const spans: Span[] = [];
  let from: number | undefined;
  for (let n = 0; n < time.length; n++) {
    const to = time[n] as number;
    const still = Math.hypot(vx[n] as number, vy[n] as number) < STILL;
    if (still) from ??= to;
    if (from === undefined || (still && n < time.length - 1)) continue;
    if (to - from >= STILL_FOR) spans.push({ from, to });
    from = undefined;
  }
  return spans;
}
