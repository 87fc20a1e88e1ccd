/**
 * What a store holds, by kart and brought up to date before every answer, because another process may have written in
 * between. A long book is opened from a snapshot, and its facts stay in the store until a question needs them.
 */
import { type Balance, type ChainEnd, type Fact, fold, knownAt, type State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { BookStore, KartReader, Kept, Snapshots } from './ports.ts';
import { fromKartFile, Refusal, refuse } from './problem.ts';
import { type End, fittingHeader, headerLine, type KartLine, kartLine } from './snapshot.ts';
import { Volume } from './volume.ts';
import { FOLLOWS_MS } from './when.ts';
import { suggestion } from './words.ts';

export type Source = Pick<BookStore, 'read' | 'pick'>;

/** A kart as it stood at one moment: its file then, its state then. `past` when that moment was asked for. */
export type Standing = { readonly kart: Kart; readonly state: State; readonly now: string; readonly past?: string };

/** A state, and how many facts of the kart there were and of how many it is. */
type Folded = { readonly all: number; readonly known: number; readonly state: State };

export type ShelfParts = {
  readonly store: Source;
  readonly reader: KartReader;
  /** Left out: everything is read when the book is opened, and stays in memory. */
  readonly snapshots?: Snapshots;
};

const BATCH = 5000;
/** Facts in memory at once, some 700 bytes each, where a snapshot lets the others lie. */
const MOST_HELD = 100_000;
/** A snapshot is written again after so many facts, and when the book is closed after so many. */
const EVERY = 20_000;
const AT_CLOSE = 2000;

export class Shelf {
  readonly #store: Source;
  readonly #reader: KartReader;
  readonly #snapshots: Snapshots | undefined;
  readonly #volumes = new Map<string, Volume>();
  readonly #ends = new Map<string, End>();
  readonly #starts = new Map<string, string>();
  readonly #states = new Map<string, Folded>();
  #row = 0;
  /** Row of the last redaction that was seen. */
  #redaction = 0;
  #opened = false;
  /** Facts since the last snapshot. */
  #fresh = 0;
  #reading: Promise<void> = Promise.resolve();
  #keeping: Promise<void> | undefined;

  constructor({ store, reader, snapshots }: ShelfParts) {
    this.#store = store;
    this.#reader = reader;
    this.#snapshots = snapshots;
  }

  /** Reads what arrived since the last time. Calls queue up, so no fact is taken twice. */
  refresh(): Promise<void> {
    const next = this.#reading.then(() => this.#catchUp());
    this.#reading = next.catch(() => undefined); // a failed read is told to its caller; the next one tries again
    return next;
  }

  async #catchUp(): Promise<void> {
    if (!this.#opened) await this.#open();
    this.#opened = true;
    for (;;) {
      const kept: readonly Kept[] = await this.#store.read(this.#row, BATCH);
      if (await this.#redactedBefore(kept)) continue;
      for (const one of kept) if (one.row > this.#row) this.#take(one);
      if (this.#snapshots) this.#letGo();
      if (kept.length < BATCH) break;
    }
    if (this.#fresh >= EVERY) void this.keepSnapshot();
  }

  /** What was read before a redaction came lies otherwise in the store from now on: all of it is read again, and no snapshot of it stays. */
  async #redactedBefore(kept: readonly Kept[]): Promise<boolean> {
    const row = kept.reduce((last, one) => (one.fact.kind === 'redacted' ? one.row : last), 0);
    if (row <= this.#redaction) return false;
    this.#redaction = row;
    if (this.#row === 0) return false;
    await this.#keeping;
    await this.#snapshots?.remove();
    this.#clear();
    return true;
  }

  #clear(): void {
    for (const kept of [this.#volumes, this.#ends, this.#starts, this.#states]) kept.clear();
    this.#row = 0;
  }

  #take(kept: Kept): void {
    const { row, fact } = kept;
    this.#row = row;
    this.#fresh++;
    this.#ends.set(fact.device, { seq: fact.seq, hash: fact.hash, row }); // rows never show a chain with a hole
    if (fact.seq === 1) this.#starts.set(fact.device, fact.hash);
    let volume = this.#volumes.get(fact.kart);
    if (volume === undefined) {
      volume = new Volume(this.#store);
      this.#volumes.set(fact.kart, volume);
    }
    volume.add(kept);
  }

  async #open(): Promise<void> {
    const lines = await this.#snapshots?.read();
    if (lines === undefined) return;
    const header = await fittingHeader(lines, this.#store);
    if (header === undefined) return this.#snapshots?.remove();
    this.#row = header.row;
    for (const [device, end] of Object.entries(header.ends)) this.#ends.set(device, end);
    for (const [device, hash] of Object.entries(header.starts)) this.#starts.set(device, hash);
    for (const [n, name] of header.karts.entries()) this.#volumes.set(name, new Volume(this.#store, lines[n + 1]));
  }

  /** Writes a snapshot, one at a time; who appends or asks does not wait for it. */
  keepSnapshot(): Promise<void> {
    this.#keeping ??= this.#keep()
      .catch(() => undefined) // what was wrong with the book is told to whoever asks it; what is wrong with a cache, to nobody
      .finally(() => {
        this.#keeping = undefined;
      });
    return this.#keeping;
  }

  async #keep(): Promise<void> {
    if (!this.#snapshots) return;
    for (const volume of this.#volumes.values()) {
      if (volume.balance()) continue;
      await volume.state();
      this.#letGo();
    }
    // From here to the lines all at once, so that they are of one moment.
    this.#fresh = 0;
    const header = headerLine({
      row: this.#row,
      ends: Object.fromEntries(this.#ends),
      starts: Object.fromEntries(this.#starts),
      karts: [...this.#volumes.keys()],
    });
    const karts = [...this.#volumes.values()].map(volume => volume.line());
    await this.#snapshots.write(linesOf(header, karts));
  }

  /** Forgets what came from a snapshot: the next question reads the facts. */
  anew(): Promise<void> {
    this.#reading = this.#reading.then(() => {
      this.#clear();
      this.#opened = true;
    });
    return this.#reading;
  }

  /** When nothing more is asked. */
  async close(): Promise<void> {
    await this.#reading;
    await this.#keeping;
    if (this.#fresh >= AT_CLOSE) await this.keepSnapshot();
  }

  /** The facts of karts that nobody asked about for longest are left to the store. */
  #letGo(): void {
    let held = 0;
    for (const volume of this.#volumes.values()) held += volume.held;
    for (const volume of this.#volumes.values()) {
      if (held <= MOST_HELD) return;
      held -= volume.held;
      volume.letGo();
    }
  }

  names(): readonly string[] {
    return [...this.#volumes.keys()].sort();
  }

  /** The last fact of each device. */
  ends(): ReadonlyMap<string, ChainEnd> {
    return new Map([...this.#ends].map(([device, { seq, hash }]) => [device, { seq, hash }]));
  }

  /** Hashes of the first fact of each device. */
  starts(): readonly string[] {
    return [...this.#starts.values()];
  }

  async fact(id: string): Promise<Fact | undefined> {
    return (await this.#store.pick({ id }))[0]?.fact;
  }

  /** Facts of a kart that arrived after a row. */
  async after(name: string, row: number): Promise<readonly Kept[]> {
    const rows = (this.#volumes.get(name)?.rows ?? []).filter(one => one > row);
    const kept: Kept[] = [];
    for (let n = 0; n < rows.length; n += BATCH)
      kept.push(...(await this.#store.pick({ rows: rows.slice(n, n + BATCH) })));
    return kept;
  }

  /** Throws `Refusal` when the book knows no such kart. */
  #volume(name: string): Volume {
    const volume = this.#volumes.get(name);
    if (volume) return volume;
    const known = this.names();
    const remedy =
      known.length === 0
        ? 'The book is empty: make a kart file with `new`, and name it with --kart.'
        : `Karts in this book: ${known.join(', ')}.${suggestion(name, known)}`;
    throw new Refusal([refuse('unknown kart', 'kart', `Expected a kart of this book, got "${name}".`, remedy)]);
  }

  /** The facts of a kart in the order of their arrival. Throws `Refusal` when the book knows no such kart. */
  async facts(name: string): Promise<readonly Fact[]> {
    const volume = this.#volume(name);
    this.#volumes.delete(name); // asked last, let go last
    this.#volumes.set(name, volume);
    const facts = await volume.facts();
    if (this.#snapshots) this.#letGo();
    return facts;
  }

  /** The text of the kart file in force now, undefined when none has been filed. */
  async filedText(name: string): Promise<string | undefined> {
    const volume = this.#volume(name);
    const { filed } = await volume.state();
    return filed && (await volume.file(filed.fact))?.text;
  }

  /**
   * The state of a kart, at a moment if one is given. Several questions are asked about one moment or moments close by,
   * so the last such state of each kart is kept: a later moment takes in the same facts and perhaps more, never others.
   */
  async state(name: string, at?: string): Promise<State> {
    if (at === undefined) {
      const now = await this.#volume(name).state();
      if (this.#snapshots) this.#letGo();
      return now;
    }
    const all = await this.facts(name);
    const known = knownAt(all, at);
    const last = this.#states.get(name);
    if (last?.all === all.length && last.known === known.length) return last.state;
    const state = fold(known);
    this.#states.set(name, { all: all.length, known: known.length, state });
    return state;
  }

  /** The kart file in force in a state, undefined when none has been filed. */
  async filed(name: string, state: State): Promise<Kart | undefined> {
    const filed = state.filed && (await this.#volume(name).file(state.filed.fact));
    if (!filed) return undefined;
    const read = await this.#reader.read(filed.text);
    if (read.ok) return read.kart;
    throw new Refusal(read.problems.map(one => fromKartFile(one)));
  }

  /** The state of a kart as it is now, to lay facts on top; undefined where one happened after `at`. */
  async balance(name: string, at: string): Promise<Balance | undefined> {
    const volume = this.#volumes.get(name);
    const last = await volume?.lastAt();
    return volume && last !== undefined && last <= at ? volume.balance() : undefined;
  }

  /**
   * When something happens that a device writes down at `clock`: then, but not before what the kart's book already
   * holds. A clock behind another's would else write into the past, and a fail that is found today would not count against a
   * pass that a phone a day ahead wrote before. Further ahead than `FOLLOWS_MS`, a fact says nothing about now.
   */
  async happens(name: string, clock: Date): Promise<string> {
    const now = clock.toISOString();
    const limit = new Date(clock.getTime() + FOLLOWS_MS).toISOString();
    const last = (await this.#volumes.get(name)?.lastAt()) ?? now;
    if (last <= now) return now;
    const facts = last <= limit ? [] : await this.facts(name);
    const ahead = facts.reduce((late, { at }) => (at > late && at <= limit ? at : late), last <= limit ? last : now);
    return ahead === now ? now : new Date(Date.parse(ahead) + 1).toISOString();
  }

  /**
   * The kart and its state. When a moment was asked for, `past`, by what was known then; else by all the book holds,
   * whatever the clock here says: a device whose clock is behind must not hide a fail that was written on another.
   */
  async at(name: string, now: string, past?: string): Promise<Standing> {
    const state = await this.state(name, past);
    const kart = await this.filed(name, state);
    if (kart) return { kart, state, now, ...(past === undefined ? {} : { past }) };
    throw new Refusal([
      refuse(
        'unknown kart',
        'kart',
        `Expected a kart file in force at ${now}, and kart "${name}" had none then.`,
        'Ask for a later moment, or file its kart file first.',
      ),
    ]);
  }
}

/** Made text one by one, when it is its turn to be written. */
function* linesOf(header: string, karts: readonly (string | KartLine)[]): Generator<string> {
  yield header;
  for (const kart of karts) yield typeof kart === 'string' ? kart : kartLine(kart);
}
