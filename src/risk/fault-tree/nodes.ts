/**
 * Nodes of decision diagrams, each kept once: a level and two nodes below it. Plain numbers in typed arrays with an
 * open-addressing table, because a tree may need hundreds of thousands. 0 and 1 are the two ends.
 */
import { borrow, giveBack, longer } from './arrays.ts';

export const ZERO = 0;
export const ONE = 1;
/** Level of the two ends: below every variable. */
const END = 0x7fffffff;

/** Thrown past the node limit; analysis catches it and says that the tree is too large. */
export class TooLarge extends Error {}

const START = 1024;

export class Nodes {
  level = borrow(START);
  high = borrow(START);
  low = borrow(START);
  size = 2;
  readonly #limit: number;
  #slots = borrow(2 * START);

  constructor(limit: number) {
    this.#limit = limit;
    this.level[ZERO] = this.level[ONE] = END;
  }

  /** The node with this level and these two below, made when it is new. What reduces a diagram is the caller's. */
  node(level: number, high: number, low: number): number {
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = hash(level, high, low) & mask;
    for (let found = slots[slot] as number; found !== 0; found = slots[slot] as number) {
      if (this.low[found] === low && this.high[found] === high && this.level[found] === level) return found;
      slot = (slot + 1) & mask;
    }
    if (this.size === this.level.length) {
      this.#grow();
      return this.node(level, high, low);
    }
    const made = this.size++;
    this.level[made] = level;
    this.high[made] = high;
    this.low[made] = low;
    slots[slot] = made;
    return made;
  }

  /** The end of this diagram. */
  release(): void {
    for (const array of [this.level, this.high, this.low, this.#slots]) giveBack(array);
  }

  #grow(): void {
    const room = 2 * this.level.length;
    if (room > this.#limit) throw new TooLarge(`more than ${this.#limit} nodes`);
    this.level = longer(this.level, room);
    this.high = longer(this.high, room);
    this.low = longer(this.low, room);
    giveBack(this.#slots);
    const slots = borrow(2 * room);
    const mask = slots.length - 1;
    for (let n = 2; n < this.size; n++) {
      let slot = hash(this.level[n] as number, this.high[n] as number, this.low[n] as number) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = n;
    }
    this.#slots = slots;
  }
}

const hash = (level: number, high: number, low: number): number => {
  const h = Math.imul(level, 0xc2b2ae35) ^ Math.imul(high, 0x9e3779b1) ^ Math.imul(low, 0x85ebca6b);
  return (h ^ (h >>> 15)) >>> 0;
};
