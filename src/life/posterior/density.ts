/**
 * How well every Weibull life fits record and guess together, on a lattice of (ln shape, ln scale).
 *
 *   ln p(β, η) = L(record | β, η) + ln N(ln β; ln β₀, s_β) + ln N(ln η; ln η₀, s_η)
 *
 * The lattice is laid wide, then drawn in round what is not negligible until it no longer shrinks. Sums over it are
 * trapezoids of a smooth function that dies out at the edges, whose error falls off exponentially with the step.
 */
import type { Evidence } from '../weibull/index.ts';
import type { Prior } from './prior.ts';

export type Lattice = {
  readonly shapes: Float64Array; // ln shape of each row
  readonly scales: Float64Array; // ln scale of each column
  readonly weights: Float64Array; // row by row; they add up to 1
  readonly lnEvidence: number; // ln ∫ of it all, density in the unit of the ages
};

type Box = { readonly b: readonly [number, number]; readonly m: readonly [number, number] };

const ROWS = 81;
const COLUMNS = 161;
/** e^-45 of the top counts for nothing. */
const DEPTH = 45;

export function latticeOf(prior: Prior, of: Evidence): Lattice {
  let box = wideBox(prior, of);
  for (let turn = 0; turn < 60; turn++) {
    const seen = heights(prior, of, box);
    // A record that contradicts a narrow guess lies outside of where the guess was looked for.
    const off = turn < 30 ? topOffEdge(box, seen) : undefined;
    if (off) {
      box = off;
      continue;
    }
    const next = drawnIn(box, seen);
    const shrunk = size(next) < 0.7 * size(box);
    box = next;
    if (!shrunk) break;
  }
  const values = heights(prior, of, box);
  const top = values.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY);
  let sum = 0;
  for (let n = 0; n < values.length; n++) {
    const weight = Math.exp((values[n] as number) - top);
    values[n] = weight;
    sum += weight;
  }
  for (let n = 0; n < values.length; n++) values[n] = (values[n] as number) / sum;
  const cell = step(box.b, ROWS) * step(box.m, COLUMNS);
  return {
    shapes: nodes(box.b, ROWS),
    scales: nodes(box.m, COLUMNS),
    weights: values,
    lnEvidence: top + Math.log(sum * cell),
  };
}

/** Eight standard deviations of the guess; without one for the scale, all that a failure leaves open at the flattest shape. */
function wideBox({ shape, scale }: Prior, of: Evidence): Box {
  const around = (middle: number, half: number): readonly [number, number] => [middle - half, middle + half];
  const b = around(Math.log(shape.median), 8 * shape.spread);
  if (scale) return { b, m: around(Math.log(scale.median), 8 * scale.spread) };
  const flattest = Math.exp(b[0]);
  return { b, m: [of.top - 5 / flattest, of.top + (DEPTH + Math.log(of.units)) / flattest] };
}

const size = ({ b, m }: Box): number => (b[1] - b[0]) * (m[1] - m[0]);
const step = ([low, high]: readonly [number, number], count: number): number => (high - low) / (count - 1);
const nodes = (ends: readonly [number, number], count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, n) => ends[0] + n * step(ends, count));

/** Twice as wide on the side whose edge holds the top; undefined where the top lies inside. */
function topOffEdge({ b, m }: Box, values: Float64Array): Box | undefined {
  const top = values.indexOf(values.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY));
  const wider = ([low, high]: readonly [number, number], at: number, count: number) =>
    [at === 0 ? 2 * low - high : low, at === count - 1 ? 2 * high - low : high] as const;
  const [row, column] = [Math.floor(top / COLUMNS), top % COLUMNS];
  const inside = row > 0 && row < ROWS - 1 && column > 0 && column < COLUMNS - 1;
  return inside ? undefined : { b: wider(b, row, ROWS), m: wider(m, column, COLUMNS) };
}

/** The rows and columns that reach up to what counts, and two more on each side. */
function drawnIn(box: Box, values: Float64Array): Box {
  const floor = values.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY) - DEPTH;
  const [rows, columns] = [ends(ROWS), ends(COLUMNS)];
  for (let n = 0; n < values.length; n++) {
    if (!((values[n] as number) > floor)) continue;
    rows.take(Math.floor(n / COLUMNS));
    columns.take(n % COLUMNS);
  }
  const cut = (side: readonly [number, number], count: number, [low, high]: readonly [number, number]) => {
    const wide = step(side, count);
    return [side[0] + Math.max(0, low - 2) * wide, side[0] + Math.min(count - 1, high + 2) * wide] as const;
  };
  return { b: cut(box.b, ROWS, rows.found()), m: cut(box.m, COLUMNS, columns.found()) };
}

function ends(count: number) {
  let [low, high] = [count - 1, 0];
  return {
    take: (n: number): void => {
      low = Math.min(low, n);
      high = Math.max(high, n);
    },
    found: (): readonly [number, number] => [low, high],
  };
}

/** ln p at each node. For one shape the failed and the fine ones enter every scale through one sum. */
function heights(prior: Prior, of: Evidence, box: Box): Float64Array {
  const values = new Float64Array(ROWS * COLUMNS);
  const scales = nodes(box.m, COLUMNS);
  const guess = scales.map(m => (prior.scale ? lnNormal(m, prior.scale) : 0));
  nodes(box.b, ROWS).forEach((lnShape, row) => {
    const shape = Math.exp(lnShape);
    let sum = 0;
    for (const x of of.ages) sum += Math.exp(shape * x);
    for (const x of of.late) sum -= Math.exp(shape * x);
    const found = of.found.map(({ fine, at }) => ({
      fine: Math.exp(shape * fine),
      lnGap: shape * at + Math.log1p(-Math.exp(shape * (fine - at))),
    }));
    const level = lnNormal(lnShape, prior.shape) + of.failed * (lnShape - of.top) + (shape - 1) * of.ofFailed;
    for (let column = 0; column < COLUMNS; column++) {
      const lambda = -shape * ((scales[column] as number) - of.top);
      const rate = Math.exp(lambda);
      let value = level + of.failed * lambda - rate * sum + (guess[column] as number);
      for (const { fine, lnGap } of found) value += lnBetween(lambda + lnGap) - rate * fine;
      values[row * COLUMNS + column] = Number.isNaN(value) ? Number.NEGATIVE_INFINITY : value;
    }
  });
  return values;
}

/** ln(1 - e^-x) for ln x: nothing is lost where x is too small to be told from 0. */
const lnBetween = (lnX: number): number =>
  lnX < -12 ? lnX - Math.exp(lnX) / 2 : Math.log(-Math.expm1(-Math.exp(lnX)));

const lnNormal = (x: number, { median, spread }: { readonly median: number; readonly spread: number }): number =>
  -0.5 * ((x - Math.log(median)) / spread) ** 2 - Math.log(spread * Math.sqrt(2 * Math.PI));
