/** Why a hub's seat is cleaned, in one sentence with this kart's own numbers. */
import { formatQuantity, type Measure } from '../../quantity/index.ts';
import { floorTo } from '../figure.ts';
import { leastPreload, slipAxial } from './clamp.ts';
import { FRICTION, NUT_FACTOR, SCATTER } from './friction.ts';
import { rearLoads, sideLoad, USUAL_LOADS } from './loads.ts';

export type SeatKnown = {
  readonly axleDiameter: Measure | undefined;
  /** Least mass with driver. */
  readonly mass: Measure | undefined;
  readonly bolts: number;
  /** Nominal diameter of the thread [m]. */
  readonly thread: number | undefined;
  /** Least torque of the pinch bolts. */
  readonly torque: Measure | undefined;
};

/**
 * Clean against a film of oil, for the outer wheel in a corner; undefined when a number it needs is not known.
 * Margins are rounded down. The key counts for nothing here.
 */
export function seatReason({ axleDiameter, mass, bolts, thread, torque }: SeatKnown): string | undefined {
  if (axleDiameter?.dimension !== 'length' || mass?.dimension !== 'mass' || torque?.dimension !== 'torque')
    return undefined;
  const known = [axleDiameter.si, mass.si, torque.si, bolts, thread ?? Number.NaN];
  if (thread === undefined || !known.every(n => n > 0 && Number.isFinite(n))) return undefined;
  const force =
    bolts * leastPreload({ torque: torque.si, running: 0, nutFactor: NUT_FACTOR, diameter: thread, scatter: SCATTER });
  const { rearShare, grip, sideFactor } = USUAL_LOADS;
  const load = sideLoad(rearLoads(mass.si, rearShare).outer, grip, sideFactor);
  const times = (friction: number): string =>
    floorTo(slipAxial({ force, friction, diameter: axleDiameter.si, contact: 'two lines' }) / load, 0.1).toFixed(1);
  return (
    `Clean and dry this hub holds about ${times(FRICTION.clean)} times the side load of the outer wheel; with a film of oil ` +
    `${times(FRICTION.film)} times, and the key does not keep it on (least preload at ${torque.text} on top of the nut's running torque, ` +
    `${formatQuantity(mass.si, 'kg', 0)}, ${formatQuantity(rearShare, '%')} of it at the rear, tyre grip ${grip}, doubled for kerbs; common practice).`
  );
}
