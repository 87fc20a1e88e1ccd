/** The coast-down worked out in numbers, before it is put into figures and words. */
import { balanceSpeed } from './balance-speed.ts';
import { bothWays, type CoastResult } from './both-ways.ts';
import { coastTime, type Rolling } from './coast.ts';
import { type CoastFit, fitCoast } from './fit.ts';
import type { Input, Trace } from './input.ts';

/** What wheels, axle and discs add by turning, over the mass: common practice. */
export const TURNING_SHARE = 0.03;

export type Coasted = {
  readonly kart: Rolling;
  readonly fits: readonly CoastFit[];
  readonly result: CoastResult;
  readonly time: number; // between the two speeds [s], not a number when not asked
  readonly top: number; // [m/s], the same
};

const pointsOf = (trace: Trace) => trace.map(({ time, speed }) => ({ time: time.si, speed: speed.si }));

/** The run that does not tell air from rolling, when there is one. */
export type Untold = { readonly untold: 'first run points' | 'return run points' };

export function work(input: Input): Coasted | Untold {
  const { mass, 'air density': density, 'speed from': from, 'speed to': to } = input;
  const kart = {
    mass: mass.si,
    effectiveMass: mass.si + (input['turning mass']?.si ?? TURNING_SHARE * mass.si),
    density: density.si,
  };
  const out = fitCoast(pointsOf(input['first run points']));
  const back = input['return run points'] && fitCoast(pointsOf(input['return run points']));
  if (out === undefined) return { untold: 'first run points' };
  if (input['return run points'] && back === undefined) return { untold: 'return run points' };
  const result = bothWays(out, back, kart, {
    mass: (mass.half ?? 0) / mass.si,
    density: (density.half ?? 0) / density.si,
  });
  return {
    kart,
    fits: back ? [out, back] : [out],
    result,
    time: from && to ? coastTime(from.si, to.si, result.slowing) : Number.NaN,
    top: topOf(input, kart, result),
  };
}

const topOf = ({ power, efficiency }: Input, { mass, density }: Rolling, { area, rolling }: CoastResult): number =>
  power && efficiency
    ? balanceSpeed({ area: area.value, rolling: rolling.value, mass, density, power: power.si * efficiency.si })
    : Number.NaN;
