/**
 * How worn, how slack, how much in line, how hard pulled.
 *
 * stretch = l/(n p) - 1;  limit = min(3 %, 200 %/z);  F = P/v, v = n z p/(2π);  Fc = m' v²;  ripple = 1 - cos(π/z)
 * l length over n pitches p, pin to pin under light tension [m]; z teeth (of the larger sprocket for the limit, of the one
 * that drives for force and ripple); P power [W], n speed of that sprocket [rad/s], m' mass of a metre [kg/m].
 * Replace at 1.5 % on a fixed short drive: two chain makers' pages; order at 1 % and the slack band: common practice.
 */
export const ORDER_AT = 0.01;
export const REPLACE_AT = 0.015;

/** The most any chain may be stretched on a sprocket of so many teeth [1]. */
export const stretchLimit = (largest: number): number => Math.min(0.03, 2 / largest);

export type ChainWear = {
  readonly stretch: number; // [1]
  readonly limit: number; // [1] where it is replaced
  readonly verdict: 'goes on' | 'order one' | 'replace' | 'not known';
};

/** `half`: the length is known within ±; the worse end decides. */
export function chainWear(read: {
  readonly length: number;
  readonly half?: number;
  readonly pitches: number;
  readonly pitch: number;
  readonly largest: number;
}): ChainWear {
  const fresh = read.pitches * read.pitch;
  const stretch = read.length / fresh - 1;
  const worst = stretch + (read.half ?? 0) / fresh;
  const limit = Math.min(REPLACE_AT, stretchLimit(read.largest));
  const verdict = !Number.isFinite(worst + limit)
    ? 'not known'
    : !(worst < limit - 1e-12)
      ? 'replace'
      : !(worst < ORDER_AT - 1e-12)
        ? 'order one'
        : 'goes on';
  return { stretch, limit, verdict };
}

/** Total movement at mid-span, at the tightest place of a full turn [m]. Common practice; the same as the step that reads it. */
export const SLACK = { least: 0.01, most: 0.015 } as const;

/** Slack bands as published, as shares of the distance of the shafts [1]: they disagree. */
export const SLACK_SHARES = [
  [0.02, 0.03],
  [0.04, 0.06],
] as const;

/** Sprocket faces out of line [m]: target common practice, limit read for distances under 0.5 m. */
export const LINE = { target: 0.0005, most: 0.001 } as const;

/**
 * How far the engine must go away from the axle to change the slack [m]; below 0: toward it. A span C with the other one taut
 * moves s in total when it is s²/(2C) longer than straight, and moving the engine takes twice the move out of it.
 */
export const moveForSlack = (now: number, wanted: number, centre: number): number =>
  (now ** 2 - wanted ** 2) / (4 * centre);

/** Speed of the chain [m/s] on a sprocket turning at a speed [rad/s]. */
export const chainSpeed = (at: { readonly rotation: number; readonly teeth: number; readonly pitch: number }): number =>
  (at.rotation * at.teeth * at.pitch) / (2 * Math.PI);

/** Pull of the driving run [N]; `metre`: mass of a metre of chain [kg/m], for what its own speed adds. */
export const chainPull = (power: number, speed: number): number => power / speed;
export const ownPull = (metre: number, speed: number): number => metre * speed ** 2;

/** How much the chain's speed swings over one tooth [1]. */
export const ripple = (teeth: number): number => 1 - Math.cos(Math.PI / teeth);

/** Least wrap of the smaller sprocket, as read in a chain maker's answers [rad]. */
export const LEAST_WRAP = (120 * Math.PI) / 180;
