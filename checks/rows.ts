/** Rows of numbers from outside the project, each compared with what the project says. */
import { expect, it } from 'vitest';
import type { Counted, Mark } from './tally.ts';

export type Given = Readonly<Record<string, number | string | readonly number[]>>;
export type Numbers = Readonly<Record<string, number | readonly number[]>>;

export type Row = {
  readonly id: string;
  readonly subject: string; // the subject, or the part of the core, that answers it
  readonly what: string;
  readonly given: Given;
  readonly expect: Numbers;
  /** relative: |got - expected| <= value |expected|. `why` says why so much is allowed. */
  readonly tolerance: { readonly kind: 'relative' | 'absolute'; readonly value: number; readonly why: string };
  readonly mark: Mark;
  readonly source: string;
  readonly note?: string;
  /** Why the project differs from the printed value, and by how much. The row then fails once it agrees. */
  readonly knownDifference?: string;
};

declare module 'vitest' {
  interface TaskMeta {
    row?: Counted;
  }
}

/** One test a row. `answer` computes, from what is given, every name that is expected. */
export function runRows(rows: readonly Row[], answer: (given: Given, row: Row) => Numbers): void {
  it('has rows to look at', () => expect(rows.length).toBeGreaterThan(0));
  for (const row of rows)
    it(`${row.id}: ${row.what} [${row.mark}]`, ({ task }) => {
      task.meta.row = { id: row.id, mark: row.mark, known: row.knownDifference !== undefined };
      const got = answer(row.given, row);
      const apart = Object.entries(row.expect).flatMap(([name, expected]) =>
        differences(name, got[name], expected, row),
      );
      if (row.knownDifference === undefined) expect(apart, row.source).toEqual([]);
      else expect(apart, 'agrees now: take the known difference out').not.toEqual([]);
    });
}

/** What lies further apart than the row allows; nothing, a text and a not-a-number are far apart. */
export function differences(
  name: string,
  got: number | readonly number[] | undefined,
  expected: number | readonly number[],
  { tolerance: { kind, value } }: Pick<Row, 'tolerance'>,
): readonly string[] {
  const [ours, theirs] = [[got ?? []].flat(), [expected].flat()];
  if (ours.length !== theirs.length) return [`${name}: expected ${theirs.length} numbers, got ${ours.length}`];
  return theirs.flatMap((wanted, n) => {
    const found = ours[n] ?? Number.NaN;
    // A printed value may lie exactly half a digit away: the last bits of a double decide nothing.
    const room = (kind === 'relative' ? value * Math.abs(wanted) : value) * (1 + 1e-9);
    return Math.abs(found - wanted) <= room ? [] : [`${name}: expected ${wanted}, got ${found}, allowed ${room}`];
  });
}

/** A number of a row, or a sentence that says which one is not there. */
export function number(given: Given, name: string): number {
  const value = given[name];
  if (typeof value !== 'number') throw new Error(`a row must give ${name} as a number, got ${String(value)}`);
  return value;
}
export function list(given: Given, name: string): readonly number[] {
  const value = given[name];
  if (!Array.isArray(value)) throw new Error(`a row must give ${name} as a list of numbers, got ${String(value)}`);
  return value;
}
