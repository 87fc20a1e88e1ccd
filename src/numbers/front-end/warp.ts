/** Frame and tyres as springs in twist: what a warp of the front contacts does to the four loads. Stiffness [N·m/rad]. */

export type Springs = {
  readonly frame: number; // frame in twist between the axles [N·m/rad]; infinite for a rigid one
  readonly frontTyre: number; // one tyre [N/m]
  readonly rearTyre: number;
  readonly frontTrack: number; // middle of tyre to middle of tyre [m], not the overall width
  readonly rearTrack: number;
};

/**
 * Frame and both pairs of tyres in series [N·m/rad].  1/Ks = 1/Kt + 2/(kF tF²) + 2/(kR tR²).
 * Small twist, no play, tyres as springs. Source: spring-statics.
 */
export const seriesStiffness = ({ frame, frontTyre, rearTyre, frontTrack, rearTrack }: Springs): number =>
  1 / (1 / frame + 2 / (frontTyre * frontTrack ** 2) + 2 / (rearTyre * rearTrack ** 2));

/**
 * Load that a warp moves from one wheel of an axle to the other [N].  M = Ks z / tF;  front M / tF, rear M / tR.
 * z right contact above the left [m]. Above 0: front left and rear right gain, front right and rear left lose.
 * While all four wheels touch. Source: spring-statics.
 */
export function diagonalTransfer(
  stiffness: number,
  warp: number,
  { frontTrack, rearTrack }: Pick<Springs, 'frontTrack' | 'rearTrack'>,
): { readonly front: number; readonly rear: number } {
  const moment = (stiffness * warp) / frontTrack;
  return { front: moment / frontTrack, rear: moment / rearTrack };
}

/**
 * Series stiffness from a shim under one front wheel's scale [N·m/rad].  Ks = ΔF tF² / s.
 * ΔF gain of that scale [N], s shim [m]. Tyres are in it. Small shim; joints with friction: up and down, and the mean.
 * Source: spring-statics.
 */
export const stiffnessFromShim = (gain: number, shim: number, frontTrack: number): number =>
  (gain * frontTrack ** 2) / shim;

/** Frame alone from a series stiffness [N·m/rad]; not above 0 when the tyres alone are softer than what was measured. */
export const frameFromSeries = (series: number, springs: Omit<Springs, 'frame'>): number =>
  1 / (1 / series - 1 / seriesStiffness({ ...springs, frame: Number.POSITIVE_INFINITY }));
