/**
 * Power, from accelerating in one gear where grip is not the limit: F = m_eff a + R at the ground, over what the torque table gives
 * there. One factor on the table is found, not its shape. Throttle is not in the log: stretches far below the best are
 * taken as driven with less. Source: Newton's law with what turns along, `forces.ts`.
 */
import { engineForce, forcesOf, resistance } from '../forces.ts';
import type { LapKart } from '../kart.ts';
import { type FitLog, type Fitted, stretches, unknown } from './log.ts';
import { middleOfTrying } from './middle.ts';
import { gearAt } from './radius.ts';

const STRAIGHT = 3; // m/s² sideways
const LONG = 0.8; // s in one gear
/** After a shift and before the next a smoother still sees the other, s. */
const EDGE = 0.2;
/** Of the grip that drives; nearer to it the tyre may be the limit. */
const GRIPS = 0.85;
const LEAST = 5;

/** A factor on the torque table of the kart as it is given, its own `scale` included. */
export function fitPower(log: FitLog, kart: LapKart): Fitted {
  const { time, speed, ahead, curvature, rotation } = log;
  if (rotation === undefined) return unknown('The log has no engine speed.');
  const f = forcesOf(kart);
  const gears = Array.from(speed, (v, fix) => gearAt(kart, kart.wheel.radius, v, rotation[fix] as number));
  const table = (fix: number): number => engineForce(f, speed[fix] as number, gears[fix] ?? 0);
  const inGear = stretches(log, LONG, (fix, first) => {
    const v = speed[fix] as number;
    if (gears[fix] === undefined || gears[fix] !== gears[first] || !((ahead[fix] as number) > 0.2)) return false;
    return v * v * Math.abs(curvature[fix] as number) < STRAIGHT && table(fix) < GRIPS * f.drive * f.still;
  });
  const scales = inGear.flatMap(({ from, to }) => {
    let [pulled, given] = [0, 0];
    for (let fix = from; fix < to; fix++) {
      if (
        (time[fix] as number) < (time[from] as number) + EDGE ||
        (time[fix] as number) > (time[to - 1] as number) - EDGE
      )
        continue;
      const z = (speed[fix] as number) ** 2;
      const heavy = 1 / (f.perHeavy[gears[fix] ?? 0] as number);
      const force = heavy * (ahead[fix] as number) + resistance(f, z, Math.abs(curvature[fix] as number));
      pulled += force * table(fix);
      given += table(fix) ** 2;
    }
    return given > 0 ? [pulled / given] : [];
  });
  if (scales.length < LEAST)
    return unknown(`${scales.length} stretches of ${LONG} s in one gear on the straight, ${LEAST} are needed.`);
  const { value, spread, count } = middleOfTrying(scales);
  return {
    ...{ kind: 'fitted', value: value * kart.engine.scale, spread: spread * kart.engine.scale },
    rests: `${count} of ${scales.length} stretches in one gear; with the mass, drag and rolling that were given`,
  };
}
