/** Torque of the engine over its speed: measured points, straight lines between, nothing known outside of them. */

/** Engine speed [rad/s] and torque at the crankshaft [N·m], slowest first. */
export type TorquePoint = { readonly rotation: number; readonly torque: number };
export type TorqueCurve = readonly TorquePoint[];

/** Torque [N·m]; not a number outside of the points. */
export function torqueAt(curve: TorqueCurve, rotation: number): number {
  const next = curve.findIndex(point => point.rotation >= rotation);
  const [before, after] = [curve[next - 1], curve[next]];
  if (after === undefined) return Number.NaN;
  if (after.rotation === rotation) return after.torque;
  if (before === undefined) return Number.NaN;
  const share = (rotation - before.rotation) / (after.rotation - before.rotation);
  return before.torque + share * (after.torque - before.torque);
}

export const slowest = (curve: TorqueCurve): number => curve[0]?.rotation ?? Number.NaN;
export const fastest = (curve: TorqueCurve): number => curve.at(-1)?.rotation ?? Number.NaN;
