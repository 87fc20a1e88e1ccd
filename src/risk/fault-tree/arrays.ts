/**
 * Arrays of whole numbers that one diagram is done with, kept for the next: handing memory to and fro would take longer
 * than solving most trees. Lengths are powers of two.
 */
const spare = new Map<number, Int32Array<ArrayBuffer>[]>();
const KEPT_LENGTH = 1 << 17;
const KEPT_OF_A_LENGTH = 8;

/** All zero. */
export function borrow(length: number): Int32Array<ArrayBuffer> {
  return spare.get(length)?.pop()?.fill(0) ?? new Int32Array(length);
}

/** The caller must not touch it after. */
export function giveBack(array: Int32Array<ArrayBuffer>): void {
  const kept = spare.get(array.length) ?? [];
  if (array.length > KEPT_LENGTH || kept.length === KEPT_OF_A_LENGTH) return;
  kept.push(array);
  spare.set(array.length, kept);
}

/** The same in an array of this length; the old one is given back. */
export function longer(from: Int32Array<ArrayBuffer>, length: number): Int32Array<ArrayBuffer> {
  const to = borrow(length);
  to.set(from);
  giveBack(from);
  return to;
}
