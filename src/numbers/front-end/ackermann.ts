/** Inner against outer front wheel in a turn. Angles [rad], above 0. */

/**
 * Inner angle that turns about the same point as an outer one.  cot inner = cot outer - w / L.
 * w kingpin spacing at hub height, L wheelbase, same unit. Rear axle taken as a line that does not slip: a live axle does,
 * and turns about another point. No such point: not a number. Source: ackermann.
 */
export function idealInner(outer: number, spacing: number, wheelbase: number): number {
  if (outer === 0) return 0;
  const inner = Math.atan2(1, 1 / Math.tan(outer) - spacing / wheelbase);
  return outer > 0 && outer < Math.PI / 2 ? inner : Number.NaN;
}

/**
 * Share of the ideal difference, reckoned from the outer wheel.  (inner - outer) / (ideal inner for that outer - outer).
 * 0 parallel, 1 ideal, below 0 the outer turns more. Not a number straight ahead. Source: ackermann.
 */
export function ackermannShare(inner: number, outer: number, spacing: number, wheelbase: number): number {
  const wanted = idealInner(outer, spacing, wheelbase) - outer;
  return wanted > 0 ? (inner - outer) / wanted : Number.NaN;
}
