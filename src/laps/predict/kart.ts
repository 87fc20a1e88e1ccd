/** What a lap is reckoned from: the kart as one point with grip, drag, an engine and gears. SI throughout. */

export type LapKart = {
  readonly mass: number; // kg, kart with driver and fuel
  readonly gravity: number; // m/s²
  readonly air: number; // kg/m³
  readonly grip: Grip;
  readonly brakeCap: number; // N, what brakes and foot can do at most
  readonly dragArea: number; // m², drag coefficient times frontal area
  readonly downforceArea: number; // m², above 0 presses down
  readonly rolling: number; // rolling resistance over load, 1
  readonly scrub: Scrub;
  readonly engine: Engine;
  readonly gearing: Gearing;
  readonly wheel: { readonly radius: number; readonly inertia: number }; // m, rolling · kg m², axle and all wheels
  readonly speedCap: number; // m/s, what stands for the limit of a straight
};

/** Friction = friction at the load of `atMass` times (load / that load)^-fall. */
export type Grip = {
  readonly side: number; // 1, in a bend
  readonly along: number; // 1, driving and braking
  readonly atMass: number; // kg
  readonly fall: number; // 1, 0 to below 1
  readonly driveShare: number; // of `along`, what the rear axle has
  readonly brakeShare: number; // of `along`, what all braked wheels have
};

/** A bend holds the kart back by mass · v² · curvature · (flat + tight · curvature): slip and the live axle. */
export type Scrub = { readonly flat: number; readonly tight: number }; // 1 · m

export type Engine = {
  readonly speeds: readonly number[]; // rad/s, rising
  readonly torques: readonly number[]; // N m at the crank; between them straight lines
  readonly scale: number; // on all torques
  readonly shiftBy: number; // rad/s, no gear but the last is held beyond
  readonly limit: number; // rad/s, no drive from here on
  readonly clutch: number; // rad/s, the first gear slips up to here
  readonly inertia: number; // kg m²
  readonly shiftTime: number; // s without drive
};

export type Gearing = {
  readonly primary: number;
  readonly gears: readonly number[]; // first to last
  readonly front: number; // teeth
  readonly rear: number;
  readonly efficiency: number; // crank to ground
};

/** Engine turns for one of the axle. */
export const ratioOf = ({ primary, front, rear }: Gearing, gear: number): number => (primary * gear * rear) / front;
