/**
 * Fixes into one recording whose time only runs forward. A clock may err for some rows, begin anew, or be another
 * receiver's: rows that fall behind wait until enough of them stand in order, and are counted out if that never happens.
 */
import { COLUMNS, type Trace, type Zero } from '../model.ts';
import { type Fix, Rows } from './rows.ts';
import type { Reason, Tally } from './tally.ts';

/** So many rows in order are a recording of their own and no slip of the clock. */
const STEADY = 20;
/** 25 a second for 23 hours: 150 MB in memory, which grows by doubling. */
export const MOST_FIXES = 2 ** 21;
const RADIANS = Math.PI / 180;
/** 1e-5 degree is a metre, and 0°, 0° lies in the open sea. */
const NO_PLACE = 1e-5;
/** A row said twice has the same place; 1e-7 degree is a centimetre. */
const SAME_PLACE = 1.5e-7;

type Range = { readonly from: number; readonly to: number };

export class Gather {
  readonly #tally: Tally;
  readonly #most: number;
  readonly #rows = new Rows();
  readonly #starts: number[] = [];
  #waiting: Fix[] = [];

  constructor(tally: Tally, most = MOST_FIXES) {
    this.#tally = tally;
    this.#most = most;
  }

  get count(): number {
    return this.#rows.count;
  }

  take(fix: Fix): void {
    const why = wrongWith(fix) ?? this.#place(fix);
    if (why) this.#tally.add(why, fix.line);
  }

  /** The log and the line of each fix, or nothing when fewer than two are left. */
  recording(zero: Zero): { readonly trace: Trace; readonly lines: Float64Array } | undefined {
    this.#forget();
    const kept = this.#apart();
    const time = this.#rows.picked('time', kept);
    if (time.length < 2) return undefined;
    const radians = (name: 'lat' | 'lon') => this.#rows.picked(name, kept).map(degrees => degrees * RADIANS);
    const said = COLUMNS.map(name => [name, this.#rows.picked(name, kept)] as const);
    const there = Object.fromEntries(said.filter(([, column]) => column.some(Number.isFinite)));
    const trace = { zero, time, lat: radians('lat'), lon: radians('lon'), ...there };
    return { trace, lines: this.#rows.picked('line', kept) };
  }

  #forget(): void {
    for (const fix of this.#waiting) this.#tally.add('backwards', fix.line);
    this.#waiting = [];
  }

  /** Why it has no place in the log, if it has none. */
  #place(fix: Fix): Reason | undefined {
    if (this.#rows.count + this.#waiting.length >= this.#most) return 'too many';
    const last = this.#rows.count - 1;
    const late = last < 0 ? 1 : fix.time - this.#rows.at('time', last);
    if (last < 0) this.#starts.push(0);
    if (late > 0) {
      this.#forget();
      this.#rows.add(fix);
    } else if (late === 0) return again(fix, this.#rows.at('lat', last), this.#rows.at('lon', last));
    else return this.#wait(fix);
    return undefined;
  }

  #wait(fix: Fix): Reason | undefined {
    const last = this.#waiting.at(-1);
    if (last && fix.time === last.time) return again(fix, last.lat, last.lon);
    if (last && fix.time < last.time) this.#forget();
    this.#waiting.push(fix);
    if (this.#waiting.length === STEADY) this.#promote();
    return undefined;
  }

  /** Those that waited stand in order: either a few before them had leapt ahead, or here begins another recording. */
  #promote(): void {
    const [fixes, first] = [this.#waiting, this.#waiting[0] as Fix];
    this.#waiting = [];
    const start = this.#starts.at(-1) ?? 0;
    let sound = this.#rows.count;
    while (sound > start && this.#rows.at('time', sound - 1) >= first.time) sound--;
    const leapt = this.#rows.count - sound;
    if (leapt >= STEADY) this.#starts.push(this.#rows.count);
    else {
      for (let row = sound; row < this.#rows.count; row++) this.#tally.add('ahead', this.#rows.at('line', row));
      this.#rows.cut(sound);
    }
    for (const fix of fixes) this.#rows.add(fix);
  }

  /** Of recordings that overlap in time the longest stays; what stays is put in order of time. */
  #apart(): readonly Range[] {
    const from = (range: Range) => this.#rows.at('time', range.from);
    const to = (range: Range) => this.#rows.at('time', range.to - 1);
    const all = this.#starts.map((start, n) => ({ from: start, to: this.#starts[n + 1] ?? this.#rows.count }));
    const kept: Range[] = [];
    for (const range of all.toSorted((a, b) => b.to - b.from - (a.to - a.from)))
      if (kept.every(other => to(range) < from(other) || from(range) > to(other))) kept.push(range);
      else this.#tally.add('overlap', this.#rows.at('line', range.from), range.to - range.from);
    return kept.toSorted((a, b) => from(a) - from(b));
  }
}

function wrongWith({ time, lat, lon }: Fix): Reason | undefined {
  if (!(Number.isFinite(time) && Number.isFinite(lat) && Number.isFinite(lon))) return 'no number';
  if (!(Math.abs(lat) <= 90 && Math.abs(lon) <= 180)) return 'off the earth';
  return Math.abs(lat) < NO_PLACE && Math.abs(lon) < NO_PLACE ? 'no place' : undefined;
}

/** What a fix of the same time as another is. */
const again = (fix: Fix, lat: number, lon: number): 'repeated' | 'two places' =>
  Math.abs(fix.lat - lat) <= SAME_PLACE && Math.abs(fix.lon - lon) <= SAME_PLACE ? 'repeated' : 'two places';
