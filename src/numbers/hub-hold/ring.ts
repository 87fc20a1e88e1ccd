/**
 * Rings: a hub pressed on an axle, and a tube squeezed between two jaws. Lengths in m, pressures and moduli in Pa.
 *
 * Press fit (elastic, Lamé): p = (δ/d) / (Kh + Ks), Kh = ((D²+d²)/(D²-d²) + νh)/Eh, Ks = ((d²+i²)/(d²-i²) - νs)/Es.
 * δ interference over the diameter, d joint, D outside of hub, i bore of axle (0: solid). A slot cuts the ring: for a
 * split hub this is no hold to count on.
 * Thin ring of mean radius R under two opposite line loads W [N/m]: M = W R/π at the load, -(1/2 - 1/π) W R between;
 * σ = 6 M / t². Source: elasticity texts; worked values in checks/rows/hub-hold.json.
 */
export type Elastic = { readonly modulus: number; readonly poisson: number };
export type PressFit = {
  readonly diameter: number;
  readonly outside: number;
  readonly bore: number;
  readonly interference: number;
  readonly hub: Elastic;
  readonly axle: Elastic;
};

/** Pressure in the joint [Pa]. */
export function pressFitPressure({ diameter, outside, bore, interference, hub, axle }: PressFit): number {
  const [d2, o2, i2] = [diameter ** 2, outside ** 2, bore ** 2];
  const hubGives = ((o2 + d2) / (o2 - d2) + hub.poisson) / hub.modulus;
  const axleGives = ((d2 + i2) / (d2 - i2) - axle.poisson) / axle.modulus;
  return interference / diameter / (hubGives + axleGives);
}

/** Axial force [N] and torque [N·m] that a pressure holds over a length, and the hoop stress at the bore of the hub [Pa]. */
export const pressFitHold = (
  pressure: number,
  seat: { readonly diameter: number; readonly outside: number; readonly length: number; readonly friction: number },
): { readonly axial: number; readonly torque: number; readonly hoop: number } => {
  const axial = seat.friction * pressure * Math.PI * seat.diameter * seat.length;
  const [d2, o2] = [seat.diameter ** 2, seat.outside ** 2];
  return { axial, torque: (axial * seat.diameter) / 2, hoop: (pressure * (o2 + d2)) / (o2 - d2) };
};

/** Bending moment per length in a ring under two opposite line loads [N·m/m]: at the load, and a quarter turn on. */
export const ringMoment = (load: number, radius: number): { readonly atLoad: number; readonly between: number } => ({
  atLoad: (load * radius) / Math.PI,
  between: -(0.5 - 1 / Math.PI) * load * radius,
});

/** Bending stress at the load in a tube squeezed by two jaws [Pa]: `force` [N] over `length`, outside diameter, wall. */
export const tubeStress = (force: number, length: number, outside: number, wall: number): number =>
  (6 * ringMoment(force / length, (outside - wall) / 2).atLoad) / wall ** 2;
