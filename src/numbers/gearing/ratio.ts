/**
 * From crankshaft to road through primary drive, gear and chain.
 *
 * i = p g zr/zf;  v = n C/(2π i);  n = 2π v i/C;  n2 = n1 i2/i1;  zr/zf wanted = n C/(2π v p g)
 * i crank turns per axle turn [1], p primary, g gear [1; 1 and 1 in direct drive], zf, zr teeth of the front (engine) and
 * rear (axle) sprocket, n engine speed [rad/s], C rolling circumference of the rear tyre [m], v road speed [m/s].
 * Chain and clutch do not slip; what the tyre slips is in C when C was taken from a log. Source: arithmetic of gears
 * (checks/rows/gearing.json).
 */
const TURN = 2 * Math.PI;

export type Sprockets = { readonly front: number; readonly rear: number };
/** What stays while sprockets change: primary ratio and gears, first gear first. Direct drive: 1 and [1]. */
export type Gearbox = { readonly primary: number; readonly gears: readonly number[] };

export const DIRECT: Gearbox = { primary: 1, gears: [1] };

export const overallRatios = ({ primary, gears }: Gearbox, { front, rear }: Sprockets): readonly number[] =>
  gears.map(gear => (primary * gear * rear) / front);

/** Road speed [m/s] at an engine speed [rad/s]. */
export const speedInGear = (at: {
  readonly rotation: number;
  readonly ratio: number;
  readonly circumference: number;
}): number => (at.rotation * at.circumference) / (TURN * at.ratio);

/** Engine speed [rad/s] at a road speed [m/s]. */
export const rotationAt = (at: {
  readonly speed: number;
  readonly ratio: number;
  readonly circumference: number;
}): number => (at.speed * TURN * at.ratio) / at.circumference;

/** Rolling circumference [m] that a logged engine speed [rad/s] and road speed [m/s] in one gear tell; slip is in it. */
export const circumferenceFrom = (log: {
  readonly rotation: number;
  readonly speed: number;
  readonly ratio: number;
}): number => (log.speed * TURN * log.ratio) / log.rotation;

/** Engine speed after the shift from one ratio into the next, at the same road speed. */
export const rotationAfter = (rotation: number, from: number, into: number): number => (rotation * into) / from;
