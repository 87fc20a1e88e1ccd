/**
 * Litres for a session from what this kart used before.
 *
 *   v = V/L of each fill;  v* = mean ± t s √(1 + 1/n);  fill = (laps + spare) v + reserve
 * V fuel used [m³], L laps, v volume a lap [m³], s standard deviation of v, n fills [1], t two-sided 95 % point of Student's t
 * with n - 1 degrees of freedom. The fill is reckoned with the high end of v*, so about 39 of 40 sessions end above the reserve.
 * Valid: same track, gears, jet and weather alike; three fills or more (common practice). Sources: litres-a-lap, student-t.
 */
import { foretoldMean } from '../line-fit.ts';

export type FuelRun = { readonly volume: number; readonly laps: number }; // used [m³]

export const ENOUGH_FILLS = 3;

export type PerLap = {
  readonly kind: 'known';
  readonly mean: number; // m³ a lap
  readonly low: number; // of a further session, 19 times of 20; never under 0
  readonly high: number;
  readonly spread: number; // standard deviation between sessions [m³]
  readonly fills: number;
};
export type TooFew = {
  readonly kind: 'too few';
  readonly fills: number;
  readonly needed: number;
  readonly most?: number;
};

/** Volume a lap; fills that are no number above 0 are left out. Too few: the largest seen, which is no forecast. */
export function litresPerLap(record: readonly FuelRun[]): PerLap | TooFew {
  const each = record.filter(run => run.volume > 0 && run.laps > 0).map(run => run.volume / run.laps);
  const fills = each.length;
  const interval = fills >= ENOUGH_FILLS ? foretoldMean(each) : undefined;
  if (interval === undefined)
    return { kind: 'too few', fills, needed: ENOUGH_FILLS, ...(fills > 0 ? { most: Math.max(...each) } : {}) };
  const spread = Math.sqrt(each.reduce((sum, v) => sum + (v - interval.value) ** 2, 0) / (fills - 1));
  return { kind: 'known', mean: interval.value, low: Math.max(0, interval.low), high: interval.high, spread, fills };
}

export type SessionQuestion = {
  readonly laps: number;
  readonly spare?: number; // laps more: formation, slowing down, a longer race
  readonly reserve: number; // that must be left [m³]
  readonly perLap: PerLap | TooFew;
  readonly tank?: number; // what it holds [m³]
};
export type Session = {
  readonly kind: 'fill' | 'does not fit';
  readonly fill: number; // to have in the tank at the start [m³]
  readonly burn: { readonly mean: number; readonly low: number; readonly high: number }; // in the laps of the session [m³]
  readonly leftLeast: number; // at the flag, when the most is burnt [m³]
  readonly over: number; // more than the tank holds [m³]; 0 when it fits
};
export type NoSession = { readonly kind: 'not known'; readonly why: string };

/** What to have in the tank; unknown consumption gives no number. */
export function litresForSession(asked: SessionQuestion): Session | NoSession {
  const { laps, spare = 0, reserve, perLap, tank } = asked;
  if (!(laps > 0 && spare >= 0 && reserve >= 0 && Number.isFinite(laps + spare + reserve)))
    return { kind: 'not known', why: 'laps or reserve are not known' };
  if (perLap.kind === 'too few')
    return {
      kind: 'not known',
      why: `${perLap.fills} of the ${perLap.needed} fills it takes are on record: weigh or measure what each session uses`,
    };
  const fill = (laps + spare) * perLap.high + reserve;
  const over = tank === undefined ? 0 : Math.max(0, fill - tank);
  const [mean, low, high] = [perLap.mean, perLap.low, perLap.high].map(v => v * laps) as [number, number, number];
  return { kind: over > 0 ? 'does not fit' : 'fill', fill, burn: { mean, low, high }, leftLeast: fill - high, over };
}

/** Mass to start with so that the scales still show the least after the race [kg]. Source: mass-at-scales. */
export const startMass = (p: {
  readonly least: number; // kg
  readonly burn: number; // m³
  readonly density: number; // of the mix [kg/m³]
  readonly otherLoss: number; // sweat, rubber, oil [kg]
  readonly margin: number; // kg
}): number => p.least + p.burn * p.density + p.otherLoss + p.margin;
