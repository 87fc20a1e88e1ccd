/**
 * The stack of lengths along the rear axle, one side at a time from the middle of the kart.
 * b  middle of the kart to the outer face of the bearing [m] (half of B, over both faces, when the axle is centred)
 * g  bearing face to the inner end of the hub [m]
 * L  hub, inner end to wheel mounting face [m]
 * e  mounting face outward to the outer edge of the tyre [m]
 */
export type Side = { readonly bearing: number; readonly hub: number; readonly outboard: number };

/**
 * Half of the overall rear width.  half = b + g + L + e;  W = left half + right half.
 * All [m]. Valid for wheels that stand straight on the axle, at axle height. Source: axle-stack.
 */
export const halfWidth = (side: Side, gap: number): number => side.bearing + gap + side.hub + side.outboard;

/**
 * Gap that puts the outer edge of the tyre at a half width.  g = half - b - L - e.
 * All [m]; below 0 there is no such gap: the hub would stand in the bearing. Source: axle-stack.
 */
export const gapFor = (side: Side, half: number): number => half - side.bearing - side.hub - side.outboard;

/** Narrowest overall width of a centred stack, hubs against the bearings.  W = 2 max(b + L + e).  [m]. Source: axle-stack. */
export const narrowest = (left: Side, right: Side): number => 2 * Math.max(halfWidth(left, 0), halfWidth(right, 0));

/**
 * Length of axle inside the hub.  n = min(L, s - g).  s axle end beyond the bearing face [m], A/2 - b for an axle of
 * length A in the middle. 0 or less: the hub is not on the axle. Source: axle-stack.
 */
export const engagement = (side: Side, gap: number, beyondBearing: number): number =>
  Math.min(side.hub, beyondBearing - gap);

/** At least this much axle inside a clamped hub, unless its maker says otherwise [m]. Source: hub-engagement. */
export const LEAST_ENGAGEMENT = 0.04;

/** Kart sizes the stack was checked for [m]; outside, a slip of the hand is likelier than such a kart. Common practice. */
export const USUAL = {
  width: [1, 1.5],
  bearing: [0.25, 0.45],
  hub: [0.04, 0.15],
  outboard: [0.06, 0.25],
  axle: [0.85, 1.15],
} as const satisfies Record<string, readonly [number, number]>;
