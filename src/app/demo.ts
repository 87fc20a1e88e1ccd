/**
 * The demo season, expanded: facts relative to the day the book is made, with the same ids each time. The format is
 * data/demo/README.md. Nothing is written that does not stand in the season's text.
 */
import { parse } from 'yaml';
import { z } from 'zod';
import { CHAIN_START, type ChainEnd, type Draft, type Fact, Ledger, sealNext } from '../book/index.ts';
import { type Item, type Kart, SYSTEMS } from '../kart/index.ts';
import { handTimedLaps } from '../laps/index.ts';
import { aimOf } from '../prep/index.ts';
import { formatQuantity } from '../quantity/index.ts';
import { dimensionOf, readReading } from './reading.ts';

export type DemoText = { readonly kart: string; readonly season: string };

const clockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'expected HH:MM');
const dayTime = z.strictObject({ day: z.int(), time: clockTime });
const words = z.array(z.string());
const when = { day: z.int().max(-1), time: clockTime, by: z.string().min(1) };
const said = { label: z.string().optional(), fact: z.looseObject({ kind: z.string() }) };
const entry = z.union([
  z.strictObject({ ...when, ...said }),
  z.strictObject({ ago: z.number().positive(), by: when.by, ...said }), // minutes before the book is made
  z.strictObject({
    ...when,
    'pass all': z.strictObject({
      systems: words.optional(),
      grades: words.optional(),
      lapses: words.optional(),
      actions: words.optional(),
      parts: words.optional(),
      items: words.optional(),
      except: words.optional(),
    }),
    readings: z.record(z.string(), z.string()).optional(),
    over: z.number().positive().optional(),
    'second look by': z.string().optional(),
    'second look at': clockTime.optional(),
  }),
]);
const season = z.strictObject({
  demo: z.literal(1),
  kart: z.string(),
  filed: z.strictObject(when),
  entries: z.array(entry),
});
type Entry = z.infer<typeof entry>;
type When = { readonly day: number; readonly time: string } | { readonly ago: number };
type PassAll = Extract<Entry, { 'pass all': unknown }>;

const DEVICE = 'demo';
const MINUTE_MS = 60_000;
const SPREAD_MIN = 60;
const BETWEEN_LOOKS_MS = 20_000;

/**
 * @param made the UTC day or instant at which the book is made; entries count back from it
 * @returns the facts in the order they were written, each device's chain whole
 * Throws when the season does not keep its format, naming the entry: it is shipped, so that is a bug.
 */
export function expandDemo(text: DemoText, kart: Kart, made: string): readonly Fact[] {
  const read = season.parse(parse(text.season));
  const desk = new Desk(kart, made);
  desk.write({ kind: 'kart filed', text: text.kart }, desk.instant(read.filed), read.filed.by);
  for (const [i, one] of read.entries.entries()) {
    try {
      if ('fact' in one) desk.write(desk.payload(one.fact), desk.instant(one), one.by, one.label);
      else desk.passAll(one);
    } catch (cause) {
      throw new Error(`expandDemo: entry ${i + 1} of the season must keep its format`, { cause });
    }
  }
  return desk.facts;
}

class Desk {
  readonly facts: Fact[] = [];
  readonly #ledger: Ledger;
  readonly #labels = new Map<string, string>();
  #end: ChainEnd = CHAIN_START;

  constructor(
    readonly kart: Kart,
    readonly made: string,
  ) {
    this.#ledger = new Ledger(kart.name);
  }

  instant(when: When): string {
    if ('ago' in when) return new Date(Date.parse(this.made) - when.ago * MINUTE_MS).toISOString();
    const { day, time } = when;
    const date = new Date(`${this.made.slice(0, 10)}T${time}:00.000Z`);
    date.setUTCDate(date.getUTCDate() + day);
    return date.toISOString();
  }

  write(payload: object, at: string, by: string, label?: string): void {
    const id = `demo-${String(this.facts.length + 1).padStart(4, '0')}`;
    const draft = { ...payload, id, kart: this.kart.name, at, recorded: at, by, device: DEVICE };
    const fact = sealNext(this.#end, draft as Draft); // throws for what is no payload of the book
    this.#end = fact;
    this.facts.push(fact);
    this.#ledger.add([fact]);
    if (label !== undefined) this.#labels.set(label, id);
  }

  /** A fact as written in the season: labels become ids, days instants, texts readings. */
  payload(raw: Readonly<Record<string, unknown>>): Record<string, unknown> {
    const ready: Record<string, unknown> = { ...raw };
    for (const [key, value] of Object.entries(raw)) {
      const at = dayTime.safeParse(value);
      if (at.success) ready[key] = this.instant(at.data);
      if ((key === 'found' || key === 'fact' || key === 'run') && typeof value === 'string' && value.startsWith('@'))
        ready[key] = this.#labels.get(value.slice(1)) ?? value;
    }
    if (raw.kind === 'laps' && typeof raw.times === 'string') Object.assign(ready, timedByHand(raw.times));
    if (raw.reading !== undefined) ready.reading = this.#reading(raw.reading, String(raw.item ?? raw.joint));
    return ready;
  }

  passAll(one: PassAll): void {
    const { parts } = this.#ledger.state;
    const items = itemsOf(this.kart, one['pass all']).filter(item => parts[item.part]?.on !== false);
    const start = Date.parse(this.instant(one));
    // Work is timed in proportion to what it takes; the first tick stands at the start.
    const whole = items.reduce((sum, { minutes }) => sum + minutes, 0) || 1;
    const perMinute = ((one.over ?? SPREAD_MIN) * MINUTE_MS) / whole;
    let spent = 0;
    const done = items.map(({ minutes }, i) => {
      if (i > 0) spent += minutes;
      return start + spent * perMinute;
    });
    const passes = items.map(item => this.#pass(item, one.readings?.[item.id]));
    const at = (ms: number): string => new Date(Math.round(ms)).toISOString();
    for (const [i, pass] of passes.entries()) this.write(pass, at(done[i] ?? start), one.by);

    const looker = one['second look by'];
    if (looker === undefined) return;
    const asked = one['second look at'];
    const last = done.at(-1) ?? start;
    const second =
      asked === undefined ? last + 30 * MINUTE_MS : Date.parse(this.instant({ day: one.day, time: asked }));
    const looks = passes.filter((_, i) => items[i]?.secondLook);
    for (const [i, look] of looks.entries())
      this.write({ ...look, secondLook: true }, at(second + i * BETWEEN_LOOKS_MS), looker);
  }

  #pass(item: Item, said: string | undefined): Record<string, unknown> {
    const text = said ?? usualReading(this.kart, item);
    const reading = text === undefined ? {} : { reading: this.#reading(text, item.id) };
    if (item.joint === undefined) return { kind: 'checked', item: item.id, result: 'pass', ...reading };
    const second = this.kart.joints[item.joint]?.second === undefined ? {} : { second: 'in place' };
    return { kind: 'made', joint: item.joint, ...reading, ...second };
  }

  #reading(input: unknown, item: string) {
    const read = readReading(input, this.kart.items[item], this.kart, item);
    if ('problem' in read) throw new Error(`${read.problem.where}: ${read.problem.message} ${read.problem.remedy}`);
    return read.reading;
  }
}

/** Times in a row, as off a stopwatch. */
function timedByHand(text: string) {
  const times = handTimedLaps(text).flatMap(one =>
    one.kind === 'lap' ? [{ time: one.time, spread: Number(one.spread.toFixed(4)) }] : [],
  );
  return { timed: 'by hand', times, laps: times.length };
}

function itemsOf(kart: Kart, filter: PassAll['pass all']): readonly Item[] {
  /** A list that is left out or empty matches all. */
  const among = (list: readonly string[] | undefined, ...values: readonly string[]): boolean =>
    list === undefined || list.length === 0 || values.some(value => list.includes(value));
  return Object.values(kart.items)
    .filter(item => among(filter.systems, item.system))
    .filter(item => among(filter.grades, item.grade))
    .filter(item => among(filter.actions, item.action))
    .filter(item => among(filter.parts, item.part))
    .filter(item => among(filter.lapses, ...item.when.map(lapse => lapse.on)))
    .filter(item => among(filter.items, item.id, item.part))
    .filter(item => !filter.except?.includes(item.id) && !filter.except?.includes(item.part))
    .toSorted((a, b) => SYSTEMS.indexOf(a.system) - SYSTEMS.indexOf(b.system));
}

/** Target, else the middle of the limits, else the one limit there is. */
function usualReading(kart: Kart, item: Item): string | undefined {
  const { target, min, max, unit } = aimOf(kart, item);
  if (item.measure === undefined || unit === null) return undefined;
  const joint = item.joint !== undefined; // a torque is given as its range; its middle is not written down as read
  const [low, high] = [min?.at.si, max?.at.si];
  const si = !joint && target ? target.si : low !== undefined && high !== undefined ? (low + high) / 2 : (low ?? high);
  return si === undefined ? undefined : formatQuantity(si, unit, undefined, dimensionOf(item, kart));
}
