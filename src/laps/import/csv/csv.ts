/** Separated values with a header line: the columns as proposed, or as a person or an earlier choice says. */
import type { LogProblem, Zero } from '../../model.ts';
import { clockOf, DAY, DayClock, dateOf, momentOf, zeroOf } from '../clock.ts';
import { Lines } from '../lines.ts';
import type { Reader, Sink } from '../reader.ts';
import type { Reason } from '../tally.ts';
import { cellsOf, numberOf } from './cells.ts';
import { type CsvLayout, isUnits, proposeLayout } from './layout.ts';
import { factorOf, type Role, unitsFor } from './words.ts';

/** The layout to read by, given the proposed one; undefined to read by that. */
export type LayoutChoice = (proposed: CsvLayout) => CsvLayout | undefined;

/** So many lines are looked at before the first is read. */
const HEAD = 100;
/** Seconds from 1970 of years 1980 to 2100; a stopwatch that shows as much has run for ten years. */
const UNIX = [315_532_800, 4_102_444_800] as const;
const NEEDED = ['time', 'lat', 'lon'] as const satisfies readonly Role[];

type Column = { readonly at: number; readonly factor: number };
type Plan = { readonly layout: CsvLayout; readonly width: number } & { readonly [role in Role]?: Column };

export class CsvReader implements Reader {
  readonly #sink: Sink;
  readonly #choose: LayoutChoice;
  readonly #lines: Lines;
  readonly #day = new DayClock();
  #head: { readonly line: string; readonly number: number }[] | undefined = [];
  #plan: Plan | undefined;
  #first: number | undefined; // day of second 0
  #units = false; // whether a line of units was met
  #unzoned = false;
  #problem: LogProblem | undefined;
  layout: CsvLayout | undefined;

  constructor(sink: Sink, choose: LayoutChoice = () => undefined) {
    this.#sink = sink;
    this.#choose = choose;
    this.#lines = new Lines(
      (line, number) => this.#line(line, number),
      number => sink.tally.add('too long', number),
    );
  }

  feed(text: string): void {
    if (this.#problem === undefined) this.#lines.feed(text);
  }
  end(): void {
    const last = this.#lines.end();
    if (this.#head && this.#problem === undefined) this.#begin();
    if (last) this.#sink.tally.add('unfinished', last.number);
  }
  zero(): Zero {
    return zeroOf(this.#first);
  }
  problem(): LogProblem | undefined {
    return this.#problem;
  }
  notes(): readonly string[] {
    return this.#unzoned ? ['The times name no zone; they are read as UTC.'] : [];
  }

  #line(line: string, number: number): void {
    if (this.#head) {
      this.#head.push({ line, number });
      if (this.#head.length === HEAD) this.#begin();
    } else if (this.#plan) this.#row(this.#plan, line, number);
  }

  #begin(): void {
    const head = this.#head ?? [];
    this.#head = undefined;
    const proposed = proposeLayout(head.map(({ line }) => line));
    this.layout = proposed && (this.#choose(proposed.layout) ?? proposed.layout);
    const plan = this.layout ? planOf(this.layout) : undefined;
    if (proposed === undefined || plan === undefined || !('layout' in plan)) {
      this.#problem = plan && !('layout' in plan) ? { ...plan, line: (proposed?.header ?? 0) + 1 } : NO_HEADER;
      return;
    }
    this.#plan = plan;
    for (const { number } of head.slice(0, proposed.header)) this.#sink.tally.add('before the header', number);
    for (const { line, number } of head.slice(proposed.header + 1)) this.#row(plan, line, number);
  }

  #row(plan: Plan, line: string, number: number): void {
    const cells = line.trim() === '' ? [] : cellsOf(line, plan.layout.separator);
    const why = this.#noRow(plan, cells);
    if (why) this.#sink.tally.add(why, number);
    else this.#fix(plan, cells, number);
  }

  #noRow({ width }: Plan, cells: readonly string[]): Reason | undefined {
    if (cells.length === 0) return 'blank';
    if (!this.#units && this.#sink.gather.count === 0 && isUnits(cells)) {
      this.#units = true;
      return 'units';
    }
    const more = cells.slice(width).some(cell => cell.trim() !== '');
    return cells.length < width || more ? 'fields' : undefined;
  }

  #fix(plan: Plan, cells: readonly string[], line: number): void {
    const { decimal } = plan.layout;
    const value = (column: Column | undefined): number =>
      column === undefined ? Number.NaN : numberOf(cells[column.at], decimal) * column.factor;
    this.#sink.gather.take({
      line,
      time: this.#time(plan, cells, decimal),
      lat: value(plan.lat),
      lon: value(plan.lon),
      speed: value(plan.speed),
      heading: value(plan.heading) * (Math.PI / 180),
      rotation: value(plan.rotation),
      height: value(plan.height),
      accuracy: value(plan.accuracy),
    });
  }

  /** Seconds after second 0, which is the first row's midnight where the file has days. */
  #time(plan: Plan, cells: readonly string[], decimal: '.' | ','): number {
    const { at, factor } = plan.time as Column;
    const cell = cells[at] ?? '';
    const number = numberOf(cell, decimal);
    if (Number.isFinite(number)) return this.#counted(number, factor);
    const clock = clockOf(cell);
    if (Number.isFinite(clock)) {
      const day = plan.date && dateOf(cells[plan.date.at] ?? '');
      return day === undefined ? this.#day.on(clock) : this.#dated(day, clock);
    }
    const moment = momentOf(cell);
    if (moment === undefined) return Number.NaN;
    this.#unzoned ||= !moment.zoned;
    return this.#dated(moment.day, moment.seconds);
  }

  #counted(number: number, factor: number): number {
    const seconds = number * factor;
    if (this.#first === undefined && (this.#sink.gather.count > 0 || !(seconds > UNIX[0] && seconds < UNIX[1])))
      return seconds;
    this.#first ??= Math.floor(seconds / DAY);
    return (number - (this.#first * DAY) / factor) * factor;
  }

  #dated(day: number, seconds: number): number {
    this.#first ??= day;
    return (day - this.#first) * DAY + seconds;
  }
}

const NO_HEADER: LogProblem = {
  expected: 'a header line that names its columns, with time, latitude and longitude among them',
  got: 'none in the first 100 lines',
  remedy: 'write the header as the first line, for example time_s;lat_deg;lon_deg;speed_kmh',
};

/** Where each column stands, or what is wrong with the layout. */
function planOf(layout: CsvLayout): Plan | LogProblem {
  const { columns, headings } = layout;
  const missing = NEEDED.filter(role => columns[role] === undefined);
  if (missing.length > 0)
    return {
      expected: `columns for ${missing.join(', ')}`,
      got: headings.map(heading => `"${heading}"`).join(', '),
      remedy: 'choose which column says it, or name it in the header',
    };
  const placed: { [role in Role]?: Column } = {};
  for (const [role, column] of Object.entries(columns) as [Role, { heading: string; unit?: string }][]) {
    const at = headings.indexOf(column.heading);
    const factor = column.unit === undefined ? (ASSUMED[role] ?? 1) : factorOf(role, column.unit);
    if (at < 0)
      return { expected: `a column "${column.heading}"`, got: headings.join(', '), remedy: 'choose one of these' };
    if (factor === undefined)
      return {
        expected: `a unit of ${role}`,
        got: `"${column.unit}"`,
        remedy: `use one of ${unitsFor(role).join(', ')}`,
      };
    placed[role] = { at, factor };
  }
  return { layout, width: headings.length, ...placed };
}

const ASSUMED: { readonly [role in Role]?: number } = { rotation: (2 * Math.PI) / 60 };
