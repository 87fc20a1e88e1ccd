/**
 * Grip sideways, from long bends at a steady speed: what is left of the ellipse there drives against what holds the kart, so
 *
 *   mu² = (a / (N / m))² + (R / (k_drive (mu_x / mu_y) N))²,  a = v² |k|
 *
 * a sideways acceleration [m/s²], N load [N], R resistance [N]. It is the grip that was used: the tyre may have more.
 * Source: the friction ellipse of `forces.ts` solved for mu. Seen on invented logs: means over an arc come out 0.5 to 1.2 % low.
 */
import { forcesOf, resistance } from '../forces.ts';
import type { LapKart } from '../kart.ts';
import { type FitLog, type Fitted, meanOver, stretches, unknown } from './log.ts';
import { middleOfTrying } from './middle.ts';

const TIGHTER_THAN = 1 / 60; // 1/m
const STEADY = 2; // m/s²
const AS_TIGHT = 0.15; // of the curvature where it began
const LONG = 0.6; // s
const LEAST_BENDS = 5;
/** Of a smoother: another one would say so much else. */
const SMOOTHED = 0.01;

export function fitGrip(log: FitLog, kart: LapKart): Fitted {
  const { speed, ahead, curvature } = log;
  const sharp = (fix: number): number => Math.abs(curvature[fix] as number);
  const bends = stretches(log, LONG, (fix, first) => {
    if (!(sharp(fix) > TIGHTER_THAN && Math.abs(ahead[fix] as number) < STEADY)) return false;
    return Math.abs(sharp(fix) / sharp(first) - 1) < AS_TIGHT;
  });
  if (bends.length < LEAST_BENDS)
    return unknown(`${bends.length} bends at a steady speed for ${LONG} s, ${LEAST_BENDS} are needed.`);
  const f = forcesOf(kart);
  const { side, along, driveShare, atMass, fall } = kart.grip;
  const grips = bends.map(bend => {
    const v = meanOver(bend, fix => speed[fix] as number);
    const aside = meanOver(bend, fix => (speed[fix] as number) ** 2 * sharp(fix));
    const load = f.weight + f.lift * v * v;
    const held = resistance(f, v * v, aside / v ** 2) / ((driveShare * along) / side) / load;
    return Math.hypot((kart.mass * aside) / load, held) * (load / (atMass * kart.gravity)) ** fall;
  });
  const { value, spread, count } = middleOfTrying(grips);
  return {
    ...{ kind: 'fitted', value, spread: Math.hypot(spread, SMOOTHED * value) },
    rests: `${count} of ${grips.length} bends at a steady speed; what was used, the tyre may have more`,
  };
}
