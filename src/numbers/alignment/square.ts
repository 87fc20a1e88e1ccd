/** Whether the rear axle stands square to the kingpins, from four lengths. Lengths [m], angles [rad]. */

/** Where the axle stands. */
export type AxlePlace = {
  readonly wheelbase: number; // kingpin line to the middle of the axle
  readonly yaw: number; // left end of the axle rearward +
  readonly offset: number; // middle of the axle left of the middle of the kingpins
};
/** Left and right mark apart. */
export type Marks = { readonly kingpins: number; readonly axle: number };

export type FourLengths = {
  readonly sideLeft: number; // left kingpin to left axle mark
  readonly sideRight: number;
  readonly diagonalFromLeft: number; // left kingpin to right axle mark
  readonly diagonalFromRight: number;
};

/** The four lengths of an axle that stands there, all marks at one height. Coordinate geometry. Source: square-geometry. */
export function fourLengths({ wheelbase, yaw, offset }: AxlePlace, marks: Marks): FourLengths {
  const [k, x, y] = [marks.kingpins / 2, (marks.axle / 2) * Math.sin(yaw), (marks.axle / 2) * Math.cos(yaw)];
  return {
    sideLeft: Math.hypot(wheelbase + x, k - offset - y),
    sideRight: Math.hypot(wheelbase - x, k + offset - y),
    diagonalFromLeft: Math.hypot(wheelbase - x, k - offset + y),
    diagonalFromRight: Math.hypot(wheelbase + x, k + offset + y),
  };
}

/**
 * Where the axle stands, from four lengths; exact.
 * y0 = -(A + B) / 4wk;  L² = (ΣD² - wk² - wr²)/4 - y0²;  sin(ψ + atan(y0/L)) √(L² + y0²) = (B - A) / 4wr
 * A = D1² - D2², B = SL² - SR². Diagonals alone confuse yaw with offset. `misfit` [m²] is
 * D1² + D2² - SL² - SR² - 2 wk wr cos ψ: 0 when the lengths and marks belong to one figure.
 * No numbers when no axle has such lengths. Source: square-geometry.
 */
export function axlePlace(lengths: FourLengths, marks: Marks): AxlePlace & { readonly misfit: number } {
  const [d1, d2] = [lengths.diagonalFromLeft ** 2, lengths.diagonalFromRight ** 2];
  const [l, r] = [lengths.sideLeft ** 2, lengths.sideRight ** 2];
  const offset = -(d1 - d2 + l - r) / (4 * marks.kingpins);
  const wheelbase = Math.sqrt((d1 + d2 + l + r - marks.kingpins ** 2 - marks.axle ** 2) / 4 - offset ** 2);
  const sine = (l - r - d1 + d2) / (4 * marks.axle) / Math.hypot(wheelbase, offset);
  const yaw = Math.asin(sine) - Math.atan2(offset, wheelbase);
  return { wheelbase, yaw, offset, misfit: d1 + d2 - l - r - 2 * marks.kingpins * marks.axle * Math.cos(yaw) };
}
