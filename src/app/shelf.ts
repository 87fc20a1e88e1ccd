/**
 * The facts of a store, kept by kart and brought up to date before every answer, because another process may have
 * written in between. Asks nothing of the store but `read`, so a browser can hand in its own list.
 */
import { type ChainEnd, type Fact, type FactOf, fold, knownAt, type State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { BookStore, KartReader, Kept } from './ports.ts';
import { fromKartFile, Refusal, refuse } from './problem.ts';
import { CLOCK_SLACK_MS } from './when.ts';
import { suggestion } from './words.ts';

export type Source = Pick<BookStore, 'read'>;

/** A kart as it stood at one moment: its file then, its state then. `past` when that moment was asked for. */
export type Standing = { readonly kart: Kart; readonly state: State; readonly now: string; readonly past?: string };

/** A state, and how many facts of the kart there were and of how many it is. */
type Folded = { readonly all: number; readonly known: number; readonly state: State };

const BATCH = 5000;

export class Shelf {
  readonly #source: Source;
  readonly #reader: KartReader;
  readonly #facts = new Map<string, Fact[]>();
  readonly #ids = new Map<string, Fact>();
  readonly #ends = new Map<string, ChainEnd>();
  readonly #states = new Map<string, Folded>();
  #row = 0;
  #reading: Promise<void> = Promise.resolve();

  constructor(source: Source, reader: KartReader) {
    this.#source = source;
    this.#reader = reader;
  }

  /** Reads what arrived since the last time. Calls queue up, so no fact is taken twice. */
  refresh(): Promise<void> {
    const next = this.#reading.then(() => this.#catchUp());
    this.#reading = next.catch(() => undefined); // a failed read is told to its caller; the next one tries again
    return next;
  }

  async #catchUp(): Promise<void> {
    for (;;) {
      const kept: readonly Kept[] = await this.#source.read(this.#row, BATCH);
      for (const { row, fact } of kept) {
        this.#row = Math.max(this.#row, row);
        if (this.#ids.has(fact.id)) continue;
        this.#ids.set(fact.id, fact);
        this.#ends.set(fact.device, { seq: fact.seq, hash: fact.hash }); // rows never show a chain with a hole
        const list = this.#facts.get(fact.kart);
        if (list) list.push(fact);
        else this.#facts.set(fact.kart, [fact]);
      }
      if (kept.length < BATCH) return;
    }
  }

  names(): readonly string[] {
    return [...this.#facts.keys()].sort();
  }

  all(): readonly Fact[] {
    return [...this.#ids.values()];
  }

  /** The last fact of each device. */
  ends(): ReadonlyMap<string, ChainEnd> {
    return this.#ends;
  }

  fact(id: string): Fact | undefined {
    return this.#ids.get(id);
  }

  /** The facts of a kart in the order of their arrival. Throws `Refusal` when the book knows no such kart. */
  facts(name: string): readonly Fact[] {
    const facts = this.#facts.get(name);
    if (facts) return facts;
    const known = this.names();
    const remedy =
      known.length === 0
        ? 'The book is empty: make a kart file with `new`, and name it with --kart.'
        : `Karts in this book: ${known.join(', ')}.${suggestion(name, known)}`;
    throw new Refusal([refuse('unknown kart', 'kart', `Expected a kart of this book, got "${name}".`, remedy)]);
  }

  /** The text of the kart file in force now, undefined when none has been filed. */
  filedText(name: string): string | undefined {
    return filedIn(this.facts(name), this.state(name))?.text;
  }

  /**
   * The state of a kart, at a moment if one is given. Several questions are asked about one moment or moments close by,
   * so the last state of each kart is kept: a later moment takes in the same facts and perhaps more, never others.
   */
  state(name: string, at?: string): State {
    const all = this.facts(name);
    const known = at === undefined ? all : knownAt(all, at);
    const last = this.#states.get(name);
    if (last?.all === all.length && last.known === known.length) return last.state;
    const state = fold(known);
    this.#states.set(name, { all: all.length, known: known.length, state });
    return state;
  }

  /** The kart file in force at the end of `facts`, undefined when none has been filed. */
  async filed(facts: readonly Fact[], state: State): Promise<Kart | undefined> {
    const filed = filedIn(facts, state);
    if (!filed) return undefined;
    const read = await this.#reader.read(filed.text);
    if (read.ok) return read.kart;
    throw new Refusal(read.problems.map(one => fromKartFile(one)));
  }

  /**
   * When something happens that a device writes down at `clock`: then, but not before what the kart's book already
   * holds. A clock a few minutes behind another's would else write into the past. Further ahead than two clocks may
   * differ, a fact says nothing about now.
   */
  happens(name: string, clock: Date): string {
    const now = clock.toISOString();
    const limit = new Date(clock.getTime() + CLOCK_SLACK_MS).toISOString();
    const ahead = (this.#facts.get(name) ?? []).reduce(
      (last, fact) => (fact.at > last && fact.at <= limit ? fact.at : last),
      now,
    );
    return ahead === now ? now : new Date(Date.parse(ahead) + 1).toISOString();
  }

  /**
   * The kart and its state. When a moment was asked for, `past`, by what was known then; else by all the book holds,
   * whatever the clock here says: a device whose clock is behind must not hide a fail that was written on another.
   */
  async at(name: string, now: string, past?: string): Promise<Standing> {
    const facts = this.facts(name);
    const state = this.state(name, past);
    const kart = await this.filed(facts, state);
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

const filedIn = (facts: readonly Fact[], state: State): FactOf<'kart filed'> | undefined =>
  facts.find((fact): fact is FactOf<'kart filed'> => fact.id === state.filed?.fact && fact.kind === 'kart filed');
