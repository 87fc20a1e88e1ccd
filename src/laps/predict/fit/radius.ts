/**
 * Rolling radius, from engine speed and speed over ground: r = v G / w in one of the gears. The gear of a fix is not in the
 * log; that radius is right to which most fixes come in some gear. Drive slip is in it, as it is in the gearing.
 */
import { type LapKart, ratioOf } from '../kart.ts';
import { type FitLog, type Fitted, unknown } from './log.ts';
import { middle } from './middle.ts';

/** A tape measure is not further off than this: common practice. */
const NEAR = 0.1;
const BIN = 0.004;
/** A fix is in a gear when its radius is so near. */
const IN_GEAR = 0.02;
const LEAST_FIXES = 50;

/** The gear from 0 in which a fix gives this radius; nothing where none does: a shift, or the clutch. */
export function gearAt(kart: LapKart, radius: number, speed: number, rotation: number): number | undefined {
  const ratios = kart.gearing.gears.map(gear => ratioOf(kart.gearing, gear));
  const off = (ratio: number): number => Math.abs(((speed / rotation) * ratio) / radius - 1);
  const best = ratios.reduce((at, ratio, gear) => (off(ratio) < off(ratios[at] as number) ? gear : at), 0);
  return off(ratios[best] as number) <= IN_GEAR ? best : undefined;
}

export function fitRadius({ speed, rotation }: FitLog, kart: LapKart): Fitted {
  if (rotation === undefined) return unknown('The log has no engine speed.');
  const known: number[] = [];
  for (let fix = 0; fix < speed.length; fix++)
    if ((speed[fix] as number) > 5 && (rotation[fix] as number) > 300) known.push(fix);
  if (known.length < LEAST_FIXES)
    return unknown(`Engine speed and speed stand in ${known.length} fixes, ${LEAST_FIXES} are needed.`);
  const ratios = kart.gearing.gears.map(gear => ratioOf(kart.gearing, gear));
  const radiusIn = (fix: number, ratio: number): number => ((speed[fix] as number) / (rotation[fix] as number)) * ratio;
  const bins = new Float64Array(Math.round((2 * NEAR) / BIN));
  const votes = known.flatMap(fix => ratios.map(ratio => Math.log(radiusIn(fix, ratio) / kart.wheel.radius)));
  for (const vote of votes) {
    const bin = Math.floor((vote + NEAR) / BIN);
    if (bin >= 0 && bin < bins.length) bins[bin] = (bins[bin] as number) + 1;
  }
  const wide = (bin: number): number => [-2, -1, 0, 1, 2].reduce((sum, by) => sum + (bins[bin + by] ?? 0), 0);
  const best = bins.reduce((at, _, bin) => (wide(bin) > wide(at) ? bin : at), 0);
  const near = kart.wheel.radius * Math.exp((best + 0.5) * BIN - NEAR);
  const inGear = known.flatMap(fix => {
    const gear = gearAt(kart, near, speed[fix] as number, rotation[fix] as number);
    return gear === undefined ? [] : [{ gear, radius: radiusIn(fix, ratios[gear] as number) }];
  });
  if (inGear.length < 0.5 * known.length)
    return unknown(
      'Engine speed and speed fit no radius near the one given in most fixes: are the gears and sprockets those that were on?',
    );
  const found = middle(inGear.map(({ radius }) => radius));
  // Fixes on end share their errors: a spell in one gear counts once.
  const spells = 1 + inGear.filter(({ gear }, n) => n > 0 && gear !== inGear[n - 1]?.gear).length;
  const gears = new Set(inGear.map(({ gear }) => gear)).size;
  return {
    ...{ kind: 'fitted', value: found.value, spread: found.spread * Math.sqrt(inGear.length / spells) },
    rests: `${inGear.length} of ${known.length} fixes, in ${gears} gears`,
  };
}
