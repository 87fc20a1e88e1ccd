/** The least cost under linear demands, exactly: a bounded simplex for a few rows and thousands of columns. */
import { type Matrix, solve } from './small-matrix.ts';

/** How much of one thing: from 0 to `most`, at a cost each, adding `adds[r]` to row r. */
export type Column = { readonly cost: number; readonly most: number; readonly adds: readonly number[] };

export type Optimum =
  | { readonly kind: 'optimum'; readonly values: readonly number[]; readonly cost: number }
  | { readonly kind: 'infeasible'; readonly short: number }; // the least total by which the rows are missed

const TINY = 1e-10; // of a slope or a step, beside numbers near 1
const PATIENCE = 30; // steps without gain before the rule that cannot go round in circles

type Tableau = {
  readonly columns: readonly Column[];
  readonly right: readonly number[];
  readonly basis: number[]; // which column stands in each row
  readonly full: boolean[]; // not in the basis, and at its most
};

/**
 * Minimises Σ cost v with Σ adds v = right in every row and 0 <= v <= most. The answer stands at a corner: at most as many
 * values as there are rows lie strictly between their ends. Finds one optimum where there are several.
 * Throws where the cost has no bottom, which takes an endless `most` with a cost below 0.
 */
export function minimise(columns: readonly Column[], right: readonly number[]): Optimum {
  const rows = right.length;
  // Phase 1: what is missing in each row is filled by a stopgap, and the stopgaps are driven out.
  const stopgaps = right.map(
    (value, row): Column => ({
      cost: 1,
      most: Number.POSITIVE_INFINITY,
      adds: Array.from({ length: rows }, (_, r) => (r === row ? (value < 0 ? -1 : 1) : 0)),
    }),
  );
  const first: Tableau = {
    columns: [...columns.map(column => ({ ...column, cost: 0 })), ...stopgaps],
    right,
    basis: right.map((_, row) => columns.length + row),
    full: [...columns, ...stopgaps].map(() => false),
  };
  descend(first);
  const missed = costOf(first);
  const scale = 1 + right.reduce((total, value) => total + Math.abs(value), 0);
  if (missed > 1e-9 * scale) return { kind: 'infeasible', short: missed };
  const second: Tableau = {
    ...first,
    columns: [...columns, ...stopgaps.map(column => ({ ...column, cost: 0, most: 0 }))],
  };
  descend(second);
  return { kind: 'optimum', values: valuesOf(second).slice(0, columns.length), cost: costOf(second) };
}

/** From corner to neighbouring corner, each no dearer, until none is cheaper. */
function descend(t: Tableau): void {
  const limit = 1000 + 50 * t.columns.length;
  let still = 0;
  for (let step = 0; step < limit; step++) {
    const entering = enter(t, still > PATIENCE);
    if (entering === undefined) return;
    still = move(t, entering) > TINY ? 0 : still + 1;
  }
  throw new Error(`minimise: columns must lead to an optimum within ${limit} steps, got none`);
}

/** The column that pays most for a unit of change; with `first`, the first that pays at all (Bland), which never circles. */
function enter(t: Tableau, first: boolean): number | undefined {
  const prices = solve(
    transpose(basisOf(t)),
    t.basis.map(n => at(t, n).cost),
  );
  const inside = new Set(t.basis);
  let best: number | undefined;
  let gain = TINY;
  for (let n = 0; n < t.columns.length; n++) {
    const { cost, most, adds } = at(t, n);
    if (inside.has(n) || most === 0) continue;
    const slope = cost - dot(prices, adds);
    const pays = t.full[n] ? slope : -slope;
    if (pays <= gain) continue;
    if (first) return n;
    best = n;
    gain = pays;
  }
  return best;
}

/** Brings a column in as far as its own end or the first of the others lets it; how far that was. */
function move(t: Tableau, entering: number): number {
  const direction = solve(basisOf(t), at(t, entering).adds);
  const held = basicValues(t);
  const sign = t.full[entering] ? -1 : 1;
  let far = at(t, entering).most;
  let leaving: { readonly row: number; readonly full: boolean } | undefined;
  t.basis.forEach((column, row) => {
    const falls = sign * (direction[row] ?? 0);
    if (Math.abs(falls) <= TINY) return;
    const value = held[row] ?? 0;
    const room = Math.max(0, falls > 0 ? value / falls : (at(t, column).most - value) / -falls);
    const sooner = room < far || (room === far && leaving !== undefined && column < (t.basis[leaving.row] ?? 0));
    if (!sooner) return;
    far = room;
    leaving = { row, full: falls < 0 };
  });
  if (far === Number.POSITIVE_INFINITY)
    throw new Error('minimise: cost must have a bottom, got one that falls for ever');
  if (leaving === undefined) t.full[entering] = !t.full[entering];
  else {
    t.full[t.basis[leaving.row] ?? 0] = leaving.full;
    t.full[entering] = false;
    t.basis[leaving.row] = entering;
  }
  return far;
}

function basicValues(t: Tableau): readonly number[] {
  const rest = [...t.right];
  for (let n = 0; n < t.columns.length; n++) {
    if (!t.full[n]) continue;
    const { adds, most } = at(t, n);
    for (let row = 0; row < rest.length; row++) rest[row] = (rest[row] ?? 0) - (adds[row] ?? 0) * most;
  }
  return solve(basisOf(t), rest);
}

function valuesOf(t: Tableau): readonly number[] {
  const held = basicValues(t);
  return t.columns.map(({ most }, n) => {
    const row = t.basis.indexOf(n);
    return row < 0 ? (t.full[n] ? most : 0) : Math.min(most, Math.max(0, held[row] ?? 0));
  });
}

const costOf = (t: Tableau): number =>
  valuesOf(t).reduce((total, value, n) => (value === 0 ? total : total + value * at(t, n).cost), 0);

const basisOf = (t: Tableau): Matrix => t.right.map((_, row) => t.basis.map(n => at(t, n).adds[row] ?? 0));
const transpose = (m: Matrix): Matrix => m.map((_, row) => m.map(line => line[row] ?? 0));
function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let n = 0; n < a.length; n++) sum += (a[n] ?? 0) * (b[n] ?? 0);
  return sum;
}

function at(t: Tableau, n: number): Column {
  const column = t.columns[n];
  if (column === undefined) throw new Error(`minimise: column must be one of ${t.columns.length}, got ${n}`);
  return column;
}
