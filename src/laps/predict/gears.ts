/** What each gear is good for on the straight, and how fast the last one can be at all. */
import { engineForce, type Forces, forcesOf, resistance } from './forces.ts';
import type { LapKart } from './kart.ts';

export type GearSpeeds = {
  /** By gear, m/s: where it is shifted up, infinite for the last · with the engine at the speed it is held below, and at its limit. */
  readonly upshift: readonly number[];
  readonly shiftBy: readonly number[];
  readonly limit: readonly number[];
  /** m/s on a straight without end, in the last gear; undefined where it cannot hold any. */
  readonly top: number | undefined;
};

export function gearSpeeds(kart: LapKart): GearSpeeds {
  const f = forcesOf(kart);
  const gears = kart.gearing.gears.map((_, gear) => f.turns[gear] as number);
  return {
    upshift: Array.from(f.up, Math.sqrt),
    shiftBy: gears.map(turns => kart.engine.shiftBy / turns),
    limit: gears.map(turns => kart.engine.limit / turns),
    top: topSpeed(f, gears.length - 1),
  };
}

/** The largest speed at which the engine still beats what holds the kart: looked for from above, then halved. */
function topSpeed(f: Forces, gear: number): number | undefined {
  const most = Math.sqrt(Math.min(f.limit, f.cap));
  const spare = (v: number): number => engineForce(f, v, gear) - resistance(f, v * v, 0);
  let high = most;
  let low = most;
  while (spare(low) < 0) {
    high = low;
    low *= 0.99;
    if (low < 1) return undefined;
  }
  for (let turn = 0; turn < 60; turn++) {
    const middle = (low + high) / 2;
    if (spare(middle) >= 0) low = middle;
    else high = middle;
  }
  return low;
}
