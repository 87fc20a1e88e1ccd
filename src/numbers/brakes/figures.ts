/** The brakes as figures. */
import { formatQuantity } from '../../quantity/index.ts';
import { small } from '../figure.ts';
import { STANDARD_GRAVITY } from '../gravity.ts';
import type { Figure } from '../subject.ts';
import { brakingLoads } from './balance.ts';
import { brakingDistance, stoppingDistance, wearOf } from './stop.ts';
import { ENDS, type Worked } from './work.ts';

export const force = (si: number): Figure => ({ si, unit: 'N', text: formatQuantity(si, 'N', 0) });
const other = (si: number, unit: string, digits: number): Figure => ({
  si,
  unit,
  text: formatQuantity(si, unit, digits),
});
export const share = (si: number): Figure => other(si, '%', 1);
export const metres = (si: number): Figure => other(si, 'm', 1);
/** A place on the bar: no finer than it can be read. */
export const tenths = (si: number): Figure => other(si, 'mm', 1);
const rise = (si: number): Figure => ({
  si,
  unit: 'K',
  text: formatQuantity(si, '°C', 0, 'temperature-difference'), // a rise, said in the degrees that a person reads
});

/** A deceleration from its number of g: `9.1 m/s² (0.93 g)`. One that never comes reads `never`. */
export const slowing = (z: number): Figure => {
  const si = z * STANDARD_GRAVITY;
  const text = z === Number.POSITIVE_INFINITY ? 'never' : `${formatQuantity(si, 'm/s²', 1)} (${z.toFixed(2)} g)`;
  return { si, unit: 'm/s²', text };
};

/** Hours until worn out, rounded down; never a promise. */
export const hours = (seconds: number): Figure => ({
  si: seconds,
  unit: 'h',
  text: Number.isFinite(seconds) ? formatQuantity(Math.floor(seconds / 360) * 360, 'h', 1) : 'not known: no wear yet',
});

export function figures(worked: Worked): Readonly<Record<string, Figure>> {
  const { input, ends, locks, bar, stop, reached } = worked;
  const found: Record<string, Figure> = {};
  const loads = brakingLoads(worked.kart, input.mass.si, reached);
  for (const end of ENDS) {
    const braked = ends[end];
    if (braked) {
      found[`pressure ${end}`] = other(braked.pressure, 'bar', 1);
      found[`torque of one caliper ${end}`] = other(braked.torque, 'N·m', 1);
      found[`braking force ${end}`] = force(braked.force);
      found[`${end} locks at`] = slowing(locks[end]);
    }
    found[`axle load ${end} while braking`] = force(loads[end]);
  }
  found['front share of braking'] = share(worked.share);
  found['ideal front share'] = share(worked.ideal);
  found['deceleration asked for'] = slowing(worked.asked);
  found['deceleration without locking'] = slowing(reached);
  found['rear lifts at'] = slowing(worked.lifts);
  found['pedal force at the first lock'] = force(worked.pedalAtLock);
  if (bar) {
    found['front share of the bar'] = share(bar.share);
    found['ideal bar offset'] = tenths(bar.offset);
    found['move the bearing forward'] = tenths(bar.move);
  }
  if (stop) {
    const slow = reached * STANDARD_GRAVITY;
    const reaction = input['reaction time']?.si;
    found['braking distance'] = metres(brakingDistance(stop, slow));
    if (reaction !== undefined) found['distance with reaction'] = metres(stoppingDistance(stop, slow, reaction));
    found['energy of the stop'] = other(worked.energy, 'kJ', 1);
  }
  for (const end of ENDS) {
    const up = worked.heat[end];
    if (up !== undefined) found[`rise of one ${end} disc`] = rise(up);
  }
  for (const wear of worked.wear) {
    const { rate, left, until } = wearOf(wear);
    found[`${wear.name} above its limit`] = small(left);
    if (!wear.known) continue;
    found[`${wear.name} wear per hour`] = small(rate * 3600);
    found[`${wear.name} lasts`] = hours(until);
  }
  return found;
}
