/**
 * The slowing that fits a logged speed trace best, by least squares on the speeds through the closed form of coast.ts.
 *
 *   minimise Σ (v_i - v(t_i; v0, a0, a2))²;  s² = Σ r²/(n - 3);  cov = s² (JᵀJ)⁻¹
 *
 * v0 speed at the first time [m/s], r residual [m/s], n points, J derivatives of v by (v0, a0, a2). Damped Gauss-Newton
 * (Levenberg, Marquardt) in the logarithms, so that both stay above 0; ends after 200 steps. Source: coast-down, student-t.
 * Valid: errors of the logger alike and independent; smoothed traces make the interval too narrow.
 */
import { coastSpeed, type Slowing } from './coast.ts';

export type TracePoint = { readonly time: number; readonly speed: number }; // [s], [m/s]
export type CoastFit = Slowing & {
  readonly points: number;
  readonly start: number; // v0 [m/s]
  readonly scatter: number; // of the speeds about the curve [m/s]
  readonly u0: number; // standard uncertainty of a0
  readonly u2: number;
};

const STEPS = 200;
type Three = readonly [number, number, number];

/** Undefined where a trace does not tell the two apart. Times rising, speeds above 0, five points or more. */
export function fitCoast(trace: readonly TracePoint[]): CoastFit | undefined {
  const begin = trace[0]?.time ?? 0;
  const points = trace.map(({ time, speed }) => ({ time: time - begin, speed }));
  let at: Three | undefined = firstGuess(points);
  if (at === undefined || points.length < 5) return undefined;
  let [squares, damping] = [squaresOf(points, at), 1e-3];
  for (let n = 0; n < STEPS && damping < 1e12; n++) {
    const { normal, slope } = normalOf(points, at);
    const step: Three | undefined = solve3(damped(normal, damping), slope);
    const next: Three | undefined = step && [at[0] + step[0], at[1] + step[1], at[2] + step[2]];
    const better: number = next ? squaresOf(points, next) : Number.POSITIVE_INFINITY;
    if (step && next && better <= squares) {
      const done = step.every(each => Math.abs(each) < 1e-13);
      [at, squares, damping] = [next, better, damping / 10];
      if (done) break;
    } else damping *= 10;
  }
  return described(points, at, squares);
}

function described(points: readonly TracePoint[], at: Three, squares: number): CoastFit | undefined {
  const [v0, a0, a2] = [Math.exp(at[0]), Math.exp(at[1]), Math.exp(at[2])];
  const { normal } = normalOf(points, at);
  const scatter = Math.sqrt(squares / (points.length - 3));
  const spread = [1, 2].map(i => solve3(normal, [0, i === 1 ? 1 : 0, i === 2 ? 1 : 0])?.[i] ?? Number.NaN);
  const [u0, u2] = spread.map(each => scatter * Math.sqrt(each));
  if (u0 === undefined || u2 === undefined || !Number.isFinite(u0 + u2 + a0 + a2)) return undefined;
  return { points: points.length, start: v0, a0, a2, scatter, u0: u0 * a0, u2: u2 * a2 };
}

const speedAt = (t: number, [v0, a0, a2]: Three): number =>
  coastSpeed(t, Math.exp(v0), { a0: Math.exp(a0), a2: Math.exp(a2) });

const squaresOf = (points: readonly TracePoint[], at: Three): number =>
  points.reduce((sum, { time, speed }) => sum + (speed - speedAt(time, at)) ** 2, 0);

/** A line through slowing against the square of speed, over thirds of the trace: near enough to begin. */
function firstGuess(points: readonly TracePoint[]): Three | undefined {
  const [first, middle, last] = [points[0], points[Math.floor(points.length / 2)], points.at(-1)];
  if (!first || !middle || !last) return undefined;
  const part = (a: TracePoint, b: TracePoint): readonly [number, number] => [
    ((a.speed + b.speed) / 2) ** 2,
    (a.speed - b.speed) / (b.time - a.time),
  ];
  const [fast, slow] = [part(first, middle), part(middle, last)];
  const rate = (fast[1] + slow[1]) / 2;
  const gain = (fast[1] - slow[1]) / (fast[0] - slow[0]);
  const a2 = gain > 0 ? gain : rate / (10 * fast[0]);
  const a0 = Math.max(slow[1] - a2 * slow[0], rate / 20);
  return rate > 0 ? [Math.log(first.speed), Math.log(a0), Math.log(a2)] : undefined;
}

/** JᵀJ and Jᵀr in the logarithms, derivatives by central difference. */
function normalOf(points: readonly TracePoint[], at: Three) {
  const normal = [0, 0, 0].map(() => [0, 0, 0]);
  const slope = [0, 0, 0];
  const h = 1e-6;
  for (const { time, speed } of points) {
    const row = at.map((_, i) => {
      const moved = (by: number): Three => [
        at[0] + (i === 0 ? by : 0),
        at[1] + (i === 1 ? by : 0),
        at[2] + (i === 2 ? by : 0),
      ];
      return (speedAt(time, moved(h)) - speedAt(time, moved(-h))) / (2 * h);
    });
    const off = speed - speedAt(time, at);
    row.forEach((a, i) => {
      slope[i] = (slope[i] ?? 0) + a * off;
      row.forEach((b, j) => {
        const line = normal[i];
        if (line) line[j] = (line[j] ?? 0) + a * b;
      });
    });
  }
  return { normal, slope };
}

const damped = (matrix: readonly (readonly number[])[], by: number) =>
  matrix.map((row, i) => row.map((each, j) => (i === j ? each * (1 + by) : each)));

/** Three linear equations by determinants; undefined where they do not tell. */
function solve3(m: readonly (readonly number[])[], right: readonly number[]): Three | undefined {
  const whole = determinant(m);
  const size = m.reduce((product, row, i) => product * Math.abs(row[i] ?? 0), 1);
  if (!(Math.abs(whole) > 1e-13 * size)) return undefined;
  const part = (column: number): number =>
    determinant(m.map((row, i) => row.map((each, j) => (j === column ? (right[i] ?? 0) : each)))) / whole;
  return [part(0), part(1), part(2)];
}

function determinant(m: readonly (readonly number[])[]): number {
  const at = (i: number, j: number): number => m[i]?.[j] ?? Number.NaN;
  return (
    at(0, 0) * (at(1, 1) * at(2, 2) - at(1, 2) * at(2, 1)) -
    at(0, 1) * (at(1, 0) * at(2, 2) - at(1, 2) * at(2, 0)) +
    at(0, 2) * (at(1, 0) * at(2, 1) - at(1, 1) * at(2, 0))
  );
}
