/** Rows of numbers in one array that grows: eight bytes a number and nothing else. */
import type { Column } from '../model.ts';

/** One fix as a reader found it. Place in degrees, the rest as in a trace; NaN for what was not said. */
export type Fix = { readonly line: number; readonly time: number; readonly lat: number; readonly lon: number } & {
  readonly [column in Column]: number;
};

/** Where each number of a row stands. */
const AT = { line: 0, time: 1, lat: 2, lon: 3, speed: 4, heading: 5, rotation: 6, height: 7, accuracy: 8 } as const;
type Name = keyof typeof AT;
const WIDTH = Object.keys(AT).length;

export class Rows {
  #count = 0;
  #cells = new Float64Array(1024 * WIDTH);

  get count(): number {
    return this.#count;
  }
  /** Number by number: a loop over names takes longer than reading the line did. */
  add(fix: Fix): void {
    const at = this.#count++ * WIDTH;
    if (at === this.#cells.length) this.#grow();
    const cells = this.#cells;
    cells[at + AT.line] = fix.line;
    cells[at + AT.time] = fix.time;
    cells[at + AT.lat] = fix.lat;
    cells[at + AT.lon] = fix.lon;
    cells[at + AT.speed] = fix.speed;
    cells[at + AT.heading] = fix.heading;
    cells[at + AT.rotation] = fix.rotation;
    cells[at + AT.height] = fix.height;
    cells[at + AT.accuracy] = fix.accuracy;
  }
  at(name: Name, row: number): number {
    return this.#cells[row * WIDTH + AT[name]] as number;
  }
  /** Forget all rows from this one on. */
  cut(count: number): void {
    this.#count = Math.min(count, this.#count);
  }
  /** A column of the rows of these ranges, one after the other. */
  picked(name: Name, ranges: readonly { readonly from: number; readonly to: number }[]): Float64Array {
    const picked = new Float64Array(ranges.reduce((sum, { from, to }) => sum + to - from, 0));
    let at = 0;
    for (const { from, to } of ranges) for (let row = from; row < to; row++) picked[at++] = this.at(name, row);
    return picked;
  }

  #grow(): void {
    const more = new Float64Array(2 * this.#cells.length);
    more.set(this.#cells);
    this.#cells = more;
  }
}
