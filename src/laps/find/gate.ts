/** A gate: two points on either side of the track, and driving between them is a crossing. */
import type { Place, Plane, Point } from './plane.ts';

export type Gate = {
  readonly left: Place; // as the driver sees it
  readonly right: Place;
};

/** A gate on the map: its middle, which way it is driven, and how wide it is to either side. */
export type GateLine = {
  readonly middle: Point;
  readonly ahead: Point; // length 1
  readonly half: number; // m
};

/** Throws on a gate narrower than 1 m or wider than 200 m: two taps on one point, or on two tracks. */
export function lineOf({ left, right }: Gate, plane: Plane): GateLine {
  const [a, b] = [plane.forward(right.lat, right.lon), plane.forward(left.lat, left.lon)];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const width = Math.hypot(dx, dy);
  if (!(width >= 1 && width <= 200)) throw new Error(`lineOf: gate must be 1 m to 200 m wide, got ${width} m`);
  return {
    middle: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 },
    ahead: { x: dy / width, y: -dx / width },
    half: width / 2,
  };
}

export const turnedRound = ({ left, right }: Gate): Gate => ({ left: right, right: left });

/** The gate across a way ahead, `half` m to either side of its middle. */
export function gateAcross({ middle, ahead, half }: GateLine, plane: Plane): Gate {
  const side = (by: number): Place => plane.back({ x: middle.x - by * ahead.y, y: middle.y + by * ahead.x });
  return { left: side(half), right: side(-half) };
}
