/**
 * This kart's own record of pressures: how hot the gas in a tyre gets, over the temperature of the track.
 *
 *   T = Tc (ph + pa) / (pc + pa) of each run;  T* = a + b Ttrack ± t s √(1 + 1/n + (Ttrack - mean)²/Σ(..)²)
 *
 * T gas temperature [K], Tc tyre temperature when set [K], pc and ph gauge cold and hot [Pa], pa air around [Pa].
 * What a tyre grows and what water is in it is within T: the figure of the record, not a thermometer's.
 * Valid: days alike by the rule of `alike`. Sources: tyre-gas, line-fit; the rule is common practice.
 */
import { foretold, foretoldMean, type Interval, lineFit, type Point } from '../line-fit.ts';
import { coldGauge, tyreGasTemperature } from './gas.ts';

export const CORNERS_AND_AXLES = ['front left', 'front right', 'rear left', 'rear right', 'front', 'rear'] as const;
export type TyrePlace = (typeof CORNERS_AND_AXLES)[number];
export type Surface = 'dry' | 'wet';

/** One tyre in one run: gauge pressures, SI. `track` is the temperature of the track surface [K]. */
export type PressureRun = {
  readonly tyre: TyrePlace;
  readonly surface: Surface;
  readonly cold: number;
  readonly coldTemperature: number;
  readonly hot: number;
  readonly ambient: number; // absolute, where and when it was read
  readonly track: number;
  readonly laps: number;
};
export type Today = Pick<PressureRun, 'tyre' | 'surface' | 'track' | 'laps'>;

/** Runs needed, kelvin apart, least laps and spread of track temperature [K] for a slope: common practice. */
export const ALIKE = { runs: 3, within: 15, laps: 5, forSlope: 5, spread: 6 } as const;

export type Rise =
  | {
      readonly kind: 'known';
      readonly by: 'line' | 'mean';
      readonly used: readonly PressureRun[];
      readonly gas: Interval; // temperature of the gas at the end of a run [K]
      readonly beyond: boolean; // today's track is outside of what the record has seen
    }
  | { readonly kind: 'too few'; readonly used: readonly PressureRun[]; readonly needed: number };

/** Front answers for front left; so does front left for front, when an axle is asked. */
const samePlace = (asked: TyrePlace, had: TyrePlace): boolean => asked.startsWith(had) || had.startsWith(asked);

/** Same tyre or axle, same surface, track within 15 K of today's, and laps enough to be warm: half of today's, at least 5. */
export const alike = (run: PressureRun, today: Today): boolean =>
  samePlace(today.tyre, run.tyre) &&
  run.surface === today.surface &&
  Math.abs(run.track - today.track) <= ALIKE.within &&
  run.laps >= Math.max(ALIKE.laps, today.laps / 2);

/** How hot the gas gets today, from runs on similar days; too few of them is said, never guessed. */
export function riseFrom(record: readonly PressureRun[], today: Today): Rise {
  const used = record.filter(run => alike(run, today));
  const found = gasFrom(used, today.track);
  if (found === undefined) return { kind: 'too few', used, needed: ALIKE.runs };
  const tracks = used.map(run => run.track);
  const beyond = !(today.track >= Math.min(...tracks) && today.track <= Math.max(...tracks));
  return { kind: 'known', ...found, used, beyond };
}

/** From these runs and no others, how hot the gas gets on a track of this temperature [K]; undefined for too few. */
export function gasFrom(
  runs: readonly PressureRun[],
  track: number,
): { readonly by: 'line' | 'mean'; readonly gas: Interval } | undefined {
  const points = runs.map((run): Point => [run.track, gasOf(run)]);
  const tracks = runs.map(run => run.track);
  const spread = Math.max(...tracks) - Math.min(...tracks);
  const fit = runs.length >= ALIKE.forSlope && spread >= ALIKE.spread ? lineFit(points) : undefined;
  if (fit) return { by: 'line', gas: foretold(fit, track) };
  const gas = runs.length < ALIKE.runs ? undefined : foretoldMean(points.map(([, kelvin]) => kelvin));
  return gas && { by: 'mean', gas };
}

export const gasOf = (run: PressureRun): number =>
  tyreGasTemperature({ cold: run.cold, hot: run.hot, ambient: run.ambient, from: run.coldTemperature });

export type ColdAsked = Today & {
  readonly wanted: number; // hot, gauge [Pa]
  readonly ambient: number; // absolute [Pa]
  readonly coldTemperature: number; // of the tyre when it is set [K]
  readonly gas?: number; // a gas temperature to fall back on [K]
  readonly water?: boolean; // liquid water in the tyre, for the fallback
};
export type Cold =
  | { readonly kind: 'from the record'; readonly cold: Interval; readonly rise: Extract<Rise, { kind: 'known' }> }
  | { readonly kind: 'by the gas law'; readonly cold: number; readonly gas: number; readonly runs: number }
  | { readonly kind: 'not known'; readonly runs: number; readonly needed: number };

/** Cold gauge pressure [Pa] for a wanted hot one: from the record, else by the gas law, else not known. */
export function coldFor(asked: ColdAsked, record: readonly PressureRun[]): Cold {
  const rise = riseFrom(record, asked);
  const at = (gas: number, wet = false): number =>
    coldGauge({ hot: asked.wanted, ambient: asked.ambient, cold: asked.coldTemperature, gas }, wet);
  if (rise.kind === 'known') {
    const { value, low, high } = rise.gas;
    return { kind: 'from the record', cold: { value: at(value), low: at(high), high: at(low) }, rise };
  }
  if (asked.gas !== undefined)
    return { kind: 'by the gas law', cold: at(asked.gas, asked.water), gas: asked.gas, runs: rise.used.length };
  return { kind: 'not known', runs: rise.used.length, needed: rise.needed };
}
