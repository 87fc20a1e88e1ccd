/**
 * A key between hub and axle. It takes a peak of torque that friction did not hold; it keeps no hub on its axle, and
 * what it carries is never added to friction.
 *
 * F = 2 T / d;  τ = F / (b l);  p = F / (h/2 l);  l = n F / (0.577 Sy b) or n F / (Sy h/2)
 * T torque [N·m], d axle diameter [m], b width, h height, l length of the key [m], τ shear stress [Pa], p pressure on
 * half of its height [Pa], Sy yield strength [Pa], n factor wanted [1].
 * Source: a text-book example recalled, formulas read (checks/rows/hub-hold.json).
 */
export type Key = { readonly width: number; readonly height: number; readonly length: number };

/** Force on the key at the surface of the axle [N]. */
export const keyForce = (torque: number, diameter: number): number => (2 * torque) / diameter;

/** Shear stress across the key [Pa]. */
export const keyShear = (force: number, { width, length }: Key): number => force / (width * length);

/** Pressure on the flank, half of the height bearing [Pa]. */
export const keyPressure = (force: number, { height, length }: Key): number => force / ((height / 2) * length);

/** Shear yield over tensile yield by distortion energy, 1/√3 as text books print it. */
const SHEAR_YIELD = 0.577;

/** Length of key [m] that carries the force n times, by shear and by crushing. */
export const keyLength = (
  force: number,
  key: Omit<Key, 'length'>,
  strength: { readonly yield: number; readonly factor: number },
): { readonly shear: number; readonly crush: number } => ({
  shear: (strength.factor * force) / (SHEAR_YIELD * strength.yield * key.width),
  crush: (strength.factor * force) / (strength.yield * (key.height / 2)),
});
