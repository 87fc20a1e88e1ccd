/**
 * How long a port stands open that the piston opens with its crown.
 *
 * duration = 2π - a_open - a_close;  blowdown = transfer opens - exhaust opens;  roof after = roof - g
 * a_open after top, a_close before top [rad], where the piston has dropped to the roof; g more base gasket [m].
 * A thicker base gasket lifts the roofs toward the top of the stroke: ports open earlier, and the squish opens by g.
 * Port opened by a sharp, flat crown edge. Source: crank-geometry (checks/rows/engine.json).
 */
import { angleOfDrop, type Crank, travel } from './crank.ts';

/** From where the height of a roof was measured. */
export const DATUMS = ['crown at top', 'crown at bottom', 'top of the cylinder'] as const;
export type Datum = (typeof DATUMS)[number];
export type Port = {
  readonly roof: number; // below the crown at top [m]
  readonly opens: number; // after top [rad]
  readonly closes: number; // before top [rad]
  readonly duration: number; // [rad]
};

/** Timing of a port whose roof is `roof` [m] below the crown edge at top; not a number where the piston never gets there. */
export function portDuration(crank: Crank, roof: number): Port {
  const opens = angleOfDrop(crank, roof, 'after');
  const closes = angleOfDrop(crank, roof, 'before');
  return { roof, opens, closes, duration: 2 * Math.PI - opens - closes };
}

/** Roof below the crown at top [m], of a height measured from elsewhere; `deck`: crown below the top of the cylinder, at top [m]. */
export function roofFrom(crank: Crank, height: number, datum: Datum, deck = Number.NaN): number {
  if (datum === 'crown at top') return height;
  return datum === 'crown at bottom' ? travel(crank) - height : height - deck;
}

/** Exhaust open alone before the transfers [rad]; below 0 the transfers open first. */
export const blowdown = (exhaust: Port, transfer: Port): number => transfer.opens - exhaust.opens;

/** The port after a change of base gasket [m], above 0 for more gasket. */
export const afterGasket = (crank: Crank, roof: number, gasket: number): Port => portDuration(crank, roof - gasket);
