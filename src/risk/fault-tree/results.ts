/** Results of one operation on two nodes. A place taken anew forgets what was there: worked out again when asked. */
import { borrow, giveBack } from './arrays.ts';

const START = 1024;
const MOST = 1 << 22;
/** Each place holds the two nodes and the result; the fourth number only makes the step a power of two. */
const STEP = 4;

export class Results {
  #places = borrow(STEP * START);
  #kept = 0;

  /** What was kept, or -1. The first may not be 0. */
  get(a: number, b: number): number {
    const places = this.#places;
    const at = placeOf(a, b, places.length);
    return places[at] === a && places[at + 1] === b ? (places[at + 2] as number) : -1;
  }

  keep(a: number, b: number, result: number): number {
    if (++this.#kept * STEP > this.#places.length && this.#places.length < STEP * MOST) this.#grow();
    const at = placeOf(a, b, this.#places.length);
    this.#places[at] = a;
    this.#places[at + 1] = b;
    this.#places[at + 2] = result;
    return result;
  }

  /** The end of this operation. */
  release(): void {
    giveBack(this.#places);
  }

  #grow(): void {
    const before = this.#places;
    this.#places = borrow(2 * before.length);
    this.#kept = 0;
    for (let at = 0; at < before.length; at += STEP)
      if (before[at] !== 0) this.keep(before[at] as number, before[at + 1] as number, before[at + 2] as number);
    giveBack(before);
  }
}

const placeOf = (a: number, b: number, length: number): number => {
  const h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b);
  return ((h ^ (h >>> 15)) * STEP) & (length - 1);
};
