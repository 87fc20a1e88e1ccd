/**
 * Least squares with columns that are free and columns whose size a spread given beforehand holds near nothing.
 *
 *   y = X b + U c + e,  e ~ N(0, s² I),  c ~ N(0, s² diag(λ²));  c = λ d
 *   M = [X'X, X'U λ; λ U'X, I + λ U'U λ],  M (b, d) = (X'y, λ U'y)
 *   rss = (y - X b)' V⁻¹ (y - X b) = y'y - (X'y, λ U'y)' M⁻¹ (X'y, λ U'y);  |V| |X' V⁻¹ X| = |M|;  V = I + U λ² U'
 *
 * λ spread of a held column over that of a lap [1], one each; s² times the upper left of M⁻¹ is the covariance of b.
 * Source: Henderson's mixed model equations (memory); checked against the same with V inverted as a whole in numpy.
 */
export type Columns = {
  readonly free: readonly (readonly number[])[];
  readonly held: readonly (readonly number[])[];
};
export type Sums = { readonly free: number; readonly sums: readonly (readonly number[])[] };
export type Solved = {
  readonly free: readonly number[]; // b
  readonly held: readonly number[]; // c
  readonly logDet: number; // ln |V| |X' V⁻¹ X|
  readonly rss: number;
  /** Variance of each free one over s². */
  readonly variances: readonly number[];
};

/** Sums of products of every column with every other, the values last: all that solving needs. */
export function sumsOf({ free, held }: Columns, values: readonly number[]): Sums {
  const columns = [...free, ...held, values];
  const sums = columns.map(a => columns.map(b => a.reduce((sum, each, n) => sum + each * (b[n] as number), 0)));
  return { free: free.length, sums };
}

/** Undefined where a free column is made of the others. @param ratios λ of each held column */
export function solveMixed({ free, sums }: Sums, ratios: readonly number[]): Solved | undefined {
  const size = sums.length; // the last row holds the values
  const scale = Array.from({ length: size }, (_, n) => (n < free || n === size - 1 ? 1 : (ratios[n - free] as number)));
  const matrix = sums.map((row, i) =>
    row.map((sum, j) => sum * (scale[i] as number) * (scale[j] as number) + (i === j && isHeld(i, free, size) ? 1 : 0)),
  );
  const root = choleskyOf(matrix);
  if (root === undefined) return undefined;
  const at = (i: number, j: number): number => (root[i] as number[])[j] as number;
  const unknowns = size - 1;
  const found = new Array<number>(unknowns).fill(0);
  for (let i = unknowns - 1; i >= 0; i--) {
    let rest = at(size - 1, i);
    for (let j = i + 1; j < unknowns; j++) rest -= at(j, i) * (found[j] as number);
    found[i] = rest / at(i, i);
  }
  let logDet = 0;
  for (let i = 0; i < unknowns; i++) logDet += 2 * Math.log(at(i, i));
  return {
    free: found.slice(0, free),
    held: found.slice(free).map((d, n) => d * (ratios[n] as number)),
    logDet,
    rss: at(size - 1, size - 1) ** 2,
    variances: Array.from({ length: free }, (_, n) => inverseAt(at, n, unknowns)),
  };
}

const isHeld = (i: number, free: number, size: number): boolean => i >= free && i < size - 1;

/** Element n, n of M⁻¹: the square of column n of the root's inverse. */
function inverseAt(at: (i: number, j: number) => number, n: number, size: number): number {
  const column = new Array<number>(size).fill(0);
  let sum = 0;
  for (let i = n; i < size; i++) {
    let rest = i === n ? 1 : 0;
    for (let j = n; j < i; j++) rest -= at(i, j) * (column[j] as number);
    column[i] = rest / at(i, i);
    sum += (column[i] as number) ** 2;
  }
  return sum;
}

/** Below this share of its own square a column is made of those before it. */
const NOTHING = 1e-10;

/** Lower triangle L, L L' = M. The last pivot may be nothing: values that are met exactly. */
function choleskyOf(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const size = matrix.length;
  const root: number[][] = [];
  for (let i = 0; i < size; i++) {
    const row = new Array<number>(size).fill(0);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? row : (root[j] as number[]);
      let rest = matrix[i]?.[j] as number;
      for (let k = 0; k < j; k++) rest -= (row[k] as number) * (other[k] as number);
      if (j < i) row[j] = rest / (other[j] as number);
      else if (i === size - 1) row[j] = Math.sqrt(Math.max(rest, 0));
      else if (rest > NOTHING * (matrix[i]?.[i] as number)) row[j] = Math.sqrt(rest);
      else return undefined;
    }
    root.push(row);
  }
  return root;
}
