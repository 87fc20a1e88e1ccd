/**
 * Where the piston stands at a crank angle, and the way back.
 *
 * h(φ) = r cos φ + √(l² - (r sin φ - e)²);  top at sin φ0 = e/(r + l);  y = h(φ0) - h(φ0 + a)
 * back: ρ² = h² + e², tan²(γ/2) = (l + ρ - r)(l + r - ρ)/((l + r + ρ)(r + ρ - l)), φ = atan(e/h) ± γ
 * r half of the stroke, l rod between its centres, e gudgeon pin off the crank's axis, above 0 toward the side the crank
 * pin takes after top, y drop below top [m]; a angle after top, below 0 before it [rad].
 * Exact for a stiff crank; l > r + |e|. With e ≠ 0 the piston travels a little more than 2 r.
 * Source: crank-geometry (checks/rows/engine.json).
 */
export type Crank = {
  readonly stroke: number; // twice the crank radius [m]
  readonly rod: number; // centre to centre [m]
  readonly offset?: number; // of the gudgeon pin [m]; none when not given
};
export type Side = 'before' | 'after';

/** Drop of the piston below its top [m] at an angle [rad] after top; below 0 is before top. Not a number without a crank. */
export function dropBelowTop(crank: Crank, angle: number): number {
  const { r, l, e } = parts(crank);
  const phi = topAngle(crank) + angle;
  // Both differences are turned into products, so that a small drop keeps its digits.
  const byCrank = 2 * r * Math.sin(angle / 2) * Math.sin(topAngle(crank) + angle / 2);
  const [sideTop, side] = [r * Math.sin(topAngle(crank)) - e, r * Math.sin(phi) - e];
  const roots = Math.sqrt(l ** 2 - sideTop ** 2) + Math.sqrt(l ** 2 - side ** 2);
  return byCrank + ((side - sideTop) * (side + sideTop)) / roots;
}

/** Angle from top [rad], 0 to about π, at which the piston stands `drop` [m] below top; not a number where it never does. */
export function angleOfDrop(crank: Crank, drop: number, when: Side = 'before'): number {
  if (!(drop >= 0 && drop <= travel(crank) * (1 + 1e-12))) return Number.NaN;
  const { r, l, e } = parts(crank);
  const height = Math.max(0, Math.sqrt((r + l) ** 2 - e ** 2) - drop);
  const reach = Math.hypot(height, e);
  const above = Math.max(0, (l + reach - r) * (l + r - reach));
  const below = Math.max(0, (l + r + reach) * (r + reach - l));
  const gamma = 2 * Math.atan2(Math.sqrt(above), Math.sqrt(below));
  const lean = Math.atan2(e, height) - topAngle(crank);
  return Math.max(0, when === 'after' ? gamma + lean : gamma - lean);
}

/** Radians the timing moves for a metre of drop, at an angle [rad] before top: dα/dy. */
export function timingSlope(crank: Crank, angle: number): number {
  const { r, l, e } = parts(crank);
  const phi = topAngle(crank) - angle;
  const side = r * Math.sin(phi) - e;
  const rate = r * Math.sin(phi) + (side * r * Math.cos(phi)) / Math.sqrt(l ** 2 - side ** 2);
  return 1 / Math.abs(rate);
}

/** From top to bottom [m]: the stroke, and a little more with an offset. */
export function travel(crank: Crank): number {
  const { r, l, e } = parts(crank);
  return Math.sqrt((r + l) ** 2 - e ** 2) - Math.sqrt((l - r) ** 2 - e ** 2);
}

/** What a crank without a rod would say [m]: 19 % low at 20°, kept to show why it is not used. */
export const dropWithoutRod = (stroke: number, angle: number): number => (stroke / 2) * (1 - Math.cos(angle));

const parts = ({ stroke, rod, offset = 0 }: Crank) => ({ r: stroke / 2, l: rod, e: offset });
const topAngle = ({ stroke, rod, offset = 0 }: Crank): number => Math.asin(offset / (stroke / 2 + rod));
