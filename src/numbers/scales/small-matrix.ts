export type Matrix = readonly (readonly number[])[];

/**
 * Solves M v = right for a few unknowns by elimination, the largest pivot first.
 * Throws where M is not square or has no inverse: the caller's choice of columns was wrong.
 */
export function solve(matrix: Matrix, right: readonly number[]): readonly number[] {
  const size = right.length;
  const rows = matrix.map((row, r) => [...row, right[r] ?? 0]);
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let r = column + 1; r < size; r++)
      if (Math.abs(cell(rows, r, column)) > Math.abs(cell(rows, pivot, column))) pivot = r;
    const [upper, lower] = [rows[column], rows[pivot]];
    if (upper === undefined || lower === undefined || !(Math.abs(lower[column] ?? 0) > 1e-14))
      throw new Error(`solve: matrix must have an inverse, got none at column ${column}`);
    [rows[column], rows[pivot]] = [lower, upper];
    for (let r = 0; r < size; r++) {
      if (r === column) continue;
      const factor = cell(rows, r, column) / cell(rows, column, column);
      if (factor !== 0) rows[r] = (rows[r] ?? []).map((value, c) => value - factor * cell(rows, column, c));
    }
  }
  return rows.map((row, r) => (row[size] ?? Number.NaN) / (row[r] ?? Number.NaN));
}

const cell = (rows: Matrix, row: number, column: number): number => rows[row]?.[column] ?? Number.NaN;
