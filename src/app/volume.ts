/** One kart's part of the shelf: where its facts stand in the store, its state carried forward, and its facts while they are held. */
import { type Balance, Carried, type Fact, type FactOf, fold, type State } from '../book/index.ts';
import type { BookStore, Kept } from './ports.ts';
import { type KartLine, readKartLine } from './snapshot.ts';

export type Found = Pick<BookStore, 'pick'>;

/** So many are asked of the store at once. */
const ROWS = 5000;

export class Volume {
  readonly #store: Found;
  /** As it lies in the snapshot, until somebody asks. */
  #line: string | undefined;
  #rows: number[] = [];
  #carried: Carried | undefined;
  #held: Fact[] | undefined;
  #file: FactOf<'kart filed'> | undefined;

  /** @param line of a snapshot; left out, the kart is new here and holds the facts that come */
  constructor(store: Found, line?: string) {
    this.#store = store;
    this.#line = line;
    if (line === undefined) this.#held = [];
  }

  add({ row, fact }: Kept): void {
    this.#open();
    this.#rows.push(row);
    this.#held?.push(fact);
    this.#carried?.add(fact);
  }

  /** Rows of its facts, in the order of their arrival. */
  get rows(): readonly number[] {
    this.#open();
    return this.#rows;
  }

  /** How many facts are in memory. */
  get held(): number {
    return this.#held?.length ?? 0;
  }

  letGo(): void {
    if (this.#held) this.#carried ??= Carried.of(this.#held);
    this.#held = undefined;
  }

  /** All facts, in the order of their arrival; held from now on, until they are let go. */
  async facts(): Promise<readonly Fact[]> {
    if (this.#held) return this.#held;
    const rows = this.rows;
    const facts: Fact[] = [];
    while (facts.length < rows.length) {
      const wanted = rows.slice(facts.length, facts.length + ROWS);
      const kept = await this.#store.pick({ rows: wanted });
      if (kept.length !== wanted.length)
        throw new Error(`facts: the store must hold rows ${wanted[0]} to ${wanted.at(-1)}, got ${kept.length} of them`);
      for (const { fact } of kept) facts.push(fact);
    }
    // While the store was asked another question may have brought the same.
    this.#held ??= facts;
    return this.#held;
  }

  /** As all facts give it. */
  async state(): Promise<State> {
    this.#open();
    const known = this.#carried?.state;
    if (known) return known;
    const facts = await this.facts();
    this.#carried = Carried.of(facts);
    return this.#carried.state ?? fold(facts);
  }

  /** When the last thing happened. */
  async lastAt(): Promise<string | undefined> {
    await this.state();
    return this.#carried?.lastAt;
  }

  balance(): Balance | undefined {
    this.#open();
    return this.#carried?.balance();
  }

  /** The kart file that this fact of it holds. */
  async file(id: string): Promise<FactOf<'kart filed'> | undefined> {
    if (this.#file?.id !== id) {
      const fact = this.#held?.find(one => one.id === id) ?? (await this.#store.pick({ id }))[0]?.fact;
      if (fact?.kind === 'kart filed') this.#file = fact;
    }
    return this.#file?.id === id ? this.#file : undefined;
  }

  /** What a snapshot keeps of it: as it lies there already, or as it is now. */
  line(): string | KartLine {
    return this.#line ?? { rows: this.#rows.slice(), balance: this.balance() ?? null };
  }

  #open(): void {
    if (this.#line === undefined) return;
    const { rows, balance } = readKartLine(this.#line);
    this.#line = undefined;
    this.#rows = [...rows];
    if (balance) this.#carried = Carried.from(balance);
  }
}
