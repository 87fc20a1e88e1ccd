/** Torque and preload, each from the other; SI throughout. */

/**
 * Short form.  T = K d F
 * T torque [N·m]; K nut factor [1]; d major diameter [m]; F preload [N]. K bundles pitch, thread and head friction and
 * changes from bolt to bolt: always a range, never one number. Source: nut-factor.
 */
export const torqueByNutFactor = (o: {
  readonly factor: number;
  readonly diameter: number;
  readonly preload: number;
}): number => o.factor * o.diameter * o.preload;
export const preloadByNutFactor = (o: {
  readonly factor: number;
  readonly diameter: number;
  readonly torque: number;
}): number => o.torque / (o.factor * o.diameter);
export const nutFactor = (o: {
  readonly torque: number;
  readonly diameter: number;
  readonly preload: number;
}): number => o.torque / (o.diameter * o.preload);

/** What the long forms need: F preload [N], P pitch [m], d2 pitch diameter [m], Dk mean bearing diameter [m], friction [1]. */
export type Turning = {
  readonly preload: number;
  readonly pitch: number;
  readonly pitchDiameter: number;
  readonly bearingDiameter: number;
  readonly threadFriction: number;
  readonly headFriction: number;
};

/** Mean diameter at which the head rubs.  Dk = (dw + dh)/2, both diameters [m]. Source: vdi-2230. */
export const meanBearing = (o: { readonly face: number; readonly hole: number }): number => (o.face + o.hole) / 2;

/**
 * Long form, statics of the wedge.  T = F (d2/2 tan(φ + ρ) + μh Dk/2);  tan φ = P/(π d2);  tan ρ = μt / cos 30°
 * Valid for a 60° profile and ρ + φ below 90°. Source: vdi-2230 (the exact form behind its linear one).
 */
export function tighteningTorque(o: Turning): number {
  const { lead, rub } = angles(o);
  return o.preload * ((o.pitchDiameter / 2) * Math.tan(lead + rub) + (o.headFriction * o.bearingDiameter) / 2);
}

/** Linear form.  MA = FM (0.159 P + 0.577 d2 μt + Dk/2 μh). Within 0.7 % of the exact one for friction 0.10 to 0.14. Source: vdi-2230. */
export const tighteningTorqueLinear = (o: Turning): number =>
  o.preload *
  (o.pitch / (2 * Math.PI) +
    (o.pitchDiameter / 2 / COS30) * o.threadFriction +
    (o.bearingDiameter / 2) * o.headFriction);

/**
 * Torque that takes it off again.  Toff = F (d2/2 tan(ρ - φ) + μh Dk/2)
 * Below 0 the joint unwinds by itself. A check in the tightening direction reads breakaway friction, not preload.
 * Source: vdi-2230.
 */
export function releaseTorque(o: Turning): number {
  const { lead, rub } = angles(o);
  return o.preload * ((o.pitchDiameter / 2) * Math.tan(rub - lead) + (o.headFriction * o.bearingDiameter) / 2);
}

/** Moment with which the thread itself would unwind.  F P / 2π [N·m]. */
export const unwindingMoment = (o: Pick<Turning, 'preload' | 'pitch'>): number => (o.preload * o.pitch) / (2 * Math.PI);

/** Where the torque goes: shares of the whole for stretching the bolt, thread friction and head friction. */
export function torqueShares(o: Turning): { readonly stretch: number; readonly thread: number; readonly head: number } {
  const whole = tighteningTorqueLinear(o);
  const stretch = unwindingMoment(o) / whole;
  const head = (o.preload * o.headFriction * o.bearingDiameter) / 2 / whole;
  return { stretch, head, thread: 1 - stretch - head };
}

const COS30 = Math.cos(Math.PI / 6);
const angles = (o: Turning) => ({
  lead: Math.atan(o.pitch / (Math.PI * o.pitchDiameter)),
  rub: Math.atan(o.threadFriction / COS30),
});

/**
 * Preload at a share of yield in tension and twist together.
 *   FM = As ν Rp / √(1 + 3 (3/2 (d2/d0) (P/(π d2) + 1.155 μt))²),  d0 = √(4 As/π)
 * As stress area [m²]; ν share of yield, usually 0.9 [1]; Rp yield strength [Pa]; d2 pitch diameter [m]; P pitch [m]; μt
 * thread friction [1]. Valid for a bolt tightened by its thread, below yield. Source: vdi-2230.
 */
export function preloadAtYield(o: {
  readonly area: number;
  readonly pitchDiameter: number;
  readonly pitch: number;
  readonly yield: number;
  readonly share: number;
  readonly threadFriction: number;
}): number {
  const core = Math.sqrt((4 * o.area) / Math.PI);
  const twist = 1.5 * (o.pitchDiameter / core) * (o.pitch / (Math.PI * o.pitchDiameter) + 1.155 * o.threadFriction);
  return (o.area * o.share * o.yield) / Math.sqrt(1 + 3 * twist ** 2);
}
