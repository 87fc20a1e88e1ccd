/**
 * Nodes of decision diagrams, each kept once: a level and two nodes below it. Plain numbers in typed arrays with an
 * open-addressing table, because a tree may need hundreds of thousands. 0 and 1 are the two ends.
 */
export const ZERO = 0;
export const ONE = 1;
/** Level of the two ends: below every variable. */
export const END = 0x7fffffff;

/** Thrown past the node limit; analysis catches it and says that the tree is too large. */
export class TooLarge extends Error {}

export class Nodes {
  level = new Int32Array(START);
  high = new Int32Array(START);
  low = new Int32Array(START);
  size = 2;
  readonly #limit: number;
  #slots = new Int32Array(2 * START);

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

  #grow(): void {
    const room = 2 * this.level.length;
    if (room > this.#limit) throw new TooLarge(`more than ${this.#limit} nodes`);
    this.level = longer(this.level, room);
    this.high = longer(this.high, room);
    this.low = longer(this.low, room);
    const slots = new Int32Array(2 * room);
    const mask = slots.length - 1;
    for (let n = 2; n < this.size; n++) {
      let slot = hash(this.level[n] as number, this.high[n] as number, this.low[n] as number) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = n;
    }
    this.#slots = slots;
  }
}
const START = 1024;

/** Results of one operation on two nodes. A place taken anew forgets what was there: worked out again when asked. */
export class Results {
  #a = new Int32Array(START);
  #b = new Int32Array(START);
  #result = new Int32Array(START);
  #kept = 0;

  /** What was kept, or -1. Not both may be 0. */
  get(a: number, b: number): number {
    const at = mix(a, b) & (this.#a.length - 1);
    return this.#a[at] === a && this.#b[at] === b ? (this.#result[at] as number) : -1;
  }
  keep(a: number, b: number, result: number): number {
    if (++this.#kept > this.#a.length && this.#a.length < MOST_RESULTS) this.#grow();
    const at = mix(a, b) & (this.#a.length - 1);
    this.#a[at] = a;
    this.#b[at] = b;
    this.#result[at] = result;
    return result;
  }
  #grow(): void {
    const [a, b, result] = [this.#a, this.#b, this.#result];
    this.#a = new Int32Array(2 * a.length);
    this.#b = new Int32Array(2 * a.length);
    this.#result = new Int32Array(2 * a.length);
    this.#kept = 0;
    for (let n = 0; n < a.length; n++)
      if (a[n] !== 0 || b[n] !== 0) this.keep(a[n] as number, b[n] as number, result[n] as number);
  }
}
const MOST_RESULTS = 1 << 22;

function longer(from: Int32Array, length: number): Int32Array<ArrayBuffer> {
  const to = new Int32Array(length);
  to.set(from);
  return to;
}
const mix = (a: number, b: number): number => {
  const h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b);
  return (h ^ (h >>> 15)) >>> 0;
};
const hash = (level: number, high: number, low: number): number => {
  const h = Math.imul(level, 0xc2b2ae35) ^ Math.imul(high, 0x9e3779b1) ^ Math.imul(low, 0x85ebca6b);
  return (h ^ (h >>> 15)) >>> 0;
};
