import { Refusal, refuse } from './problem.ts';

export const DAMAGED =
  'Keep this book as it is, and restore the last backup into a new place, or take the facts from another device.';

/**
 * All rows of a store in the order it gives them, so many in memory at once. A damaged file can lead back to rows that came
 * before, and round for ever: that is said instead.
 * @throws Refusal where a row does not come after the one before
 */
export async function* inBatches<Row extends { readonly row: number }>(
  read: (after: number, most: number) => Promise<readonly Row[]>,
  most: number,
): AsyncGenerator<readonly Row[]> {
  for (let after = 0; ; ) {
    const rows = await read(after, most);
    if (rows.length === 0) return;
    for (const { row } of rows) {
      if (!(row > after))
        throw new Refusal([refuse('book', 'the facts', `Expected a row after ${after}, got row ${row}.`, DAMAGED)]);
      after = row;
    }
    yield rows;
  }
}
