/**
 * From the foot to the ground, without losses: pedal, bar, master cylinder, caliper, disc, tyre.
 *
 * i = a / b;  s = (e/2 + o) / e;  p = 4 F / (π m²);  N = p n π k²/4;  T = 2 μ N r;  X = T / R
 * a pad of the pedal to pivot, b push rod to pivot [m]; e distance between the clevises of the bar, o bearing from the
 * middle toward the front clevis [m]; m bore of the master, k diameter of a caliper piston [m]; n pistons on one side
 * of the disc (a floating caliper presses as hard on the other); μ pad on disc [1]; r effective radius, R rolling radius
 * [m]. Source: force balance (checks/rows/brakes.json).
 */
export const pedalRatio = (padToPivot: number, rodToPivot: number): number => padToPivot / rodToPivot;

/** Share of the push-rod force that goes to the front master [1]. */
export const barShare = (spacing: number, offset: number): number => (spacing / 2 + offset) / spacing;

/** Where the bearing must stand for a share [m], toward the front clevis. */
export const barOffset = (spacing: number, share: number): number => (share - 0.5) * spacing;

/** Area of round pistons [m²], from their diameter [m]. */
export const pistonArea = (diameter: number, count = 1): number => (count * Math.PI * diameter ** 2) / 4;

/** Pressure over the air around [Pa], from the force on a master cylinder [N] and its bore [m]. */
export const masterPressure = (force: number, bore: number): number => force / pistonArea(bore);

/** Torque of one caliper [N·m]; area: pistons of one side of the disc. */
export const caliperTorque = (c: {
  readonly pressure: number;
  readonly area: number;
  readonly friction: number;
  readonly radius: number;
}): number => 2 * c.friction * c.pressure * c.area * c.radius;

/** Effective radius of a worn-in pad, even wear: the mean of its outer and inner radius [m]. */
export const radiusEvenWear = (outer: number, inner: number): number => (outer + inner) / 2;

/** Effective radius of a new pad, even pressure: 2/3 (o³ - i³)/(o² - i²) [m]; from memory. */
export const radiusEvenPressure = (outer: number, inner: number): number =>
  ((2 / 3) * (outer ** 3 - inner ** 3)) / (outer ** 2 - inner ** 2);

/** Front share of the bar that gives a front share of braking force, from newtons at the ground per newton at each master. */
export const barShareFor = (wanted: number, gain: { readonly front: number; readonly rear: number }): number =>
  (wanted * gain.rear) / (gain.front * (1 - wanted) + wanted * gain.rear);
