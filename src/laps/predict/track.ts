/** A track as pieces in a row, curvature linear along each: straights, arcs, and clothoids between them. */

/** A straight of a length [m], or a corner: radius [m], turn [degrees, left above 0], length of the clothoid at either end [m]. */
export type Element = readonly ['S', length: number] | readonly ['C', radius: number, turn: number, clothoid: number];

export type Piece = {
  readonly length: number; // m
  readonly from: number; // 1/m at its start, left above 0
  readonly to: number; // 1/m at its end
  readonly corner?: number; // which corner it belongs to, from 0
};
export type Track = { readonly pieces: readonly Piece[]; readonly closed: boolean };

/** Shorter than this an arc between two clothoids is none, m. */
const NO_ARC = 1e-9;

/** The length of the arc between the clothoids of a corner, m; below 0 they do not fit into the turn. */
export const arcOf = ([, radius, turn, clothoid]: Element & readonly ['C', ...unknown[]]): number =>
  (radius * Math.abs(turn) * Math.PI) / 180 - clothoid;

export function trackOf(elements: readonly Element[], closed = true): Track {
  const pieces: Piece[] = [];
  let corner = 0;
  for (const element of elements) {
    if (element[0] === 'S') {
      pieces.push({ length: element[1], from: 0, to: 0 });
      continue;
    }
    const [, radius, turn, clothoid] = element;
    const curvature = Math.sign(turn) / radius;
    const arc = arcOf(element);
    if (clothoid > 0) pieces.push({ length: clothoid, from: 0, to: curvature, corner });
    if (arc > NO_ARC) pieces.push({ length: arc, from: curvature, to: curvature, corner });
    if (clothoid > 0) pieces.push({ length: clothoid, from: curvature, to: 0, corner });
    corner++;
  }
  return { pieces, closed };
}

/** From curvature at points along a line, which comes back to its first point when it is closed. */
export function trackAlong(
  { at, curvature }: { readonly at: ArrayLike<number>; readonly curvature: ArrayLike<number> },
  { length }: { readonly length?: number } = {},
): Track {
  const pieces: Piece[] = [];
  const [from, to] = [(n: number) => at[n] as number, (n: number) => curvature[n] as number];
  for (let n = 0; n + 1 < at.length; n++) pieces.push({ length: from(n + 1) - from(n), from: to(n), to: to(n + 1) });
  const last = at.length - 1;
  const over = length === undefined ? 0 : length - (from(last) - from(0));
  if (over > 0) pieces.push({ length: over, from: to(last), to: to(0) });
  return { pieces, closed: length !== undefined };
}

export const lengthOf = ({ pieces }: Track): number => pieces.reduce((sum, { length }) => sum + length, 0);
