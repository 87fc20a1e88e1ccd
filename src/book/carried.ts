/**
 * The state of one kart carried forward, as on a new page of a paper ledger: what the facts up to a place in the order come to, and
 * the last facts after it one by one (SPEC B34). A fact that arrives in between those is counted in; one that reaches further
 * back cannot be, and then the state is not known here until all facts have been read.
 */
import type { Fact } from './fact.ts';
import { happened, tallyOf } from './fold.ts';
import { compareFacts, inOrder, type Place } from './order.ts';
import type { State } from './state.ts';
import { type Struck, struckFacts } from './strikes.ts';
import { Tally } from './tally.ts';

/** So many of the last facts at least: phones that meet are some sessions apart, and what is struck is mostly of the same day. */
const TAIL = 200;

/** All of it as plain data. */
export type Balance = {
  /** Of the facts up to `place`. */
  readonly state: State;
  readonly place: Place | null;
  /** Ids that strikes name, whether those strikes count or not. */
  readonly named: readonly string[];
  /** The facts after `place`, in order. */
  readonly tail: readonly Fact[];
};

export class Carried {
  readonly #base: Tally;
  readonly #struck: Map<string, Struck>;
  readonly #named: Set<string>;
  readonly #tail: Fact[];
  readonly #least: number;
  #place: Place | null;
  /** Of everything; undefined when the tail is to be counted anew. */
  #tally: Tally | undefined;
  #state: State | undefined;
  #known = true;

  private constructor(
    base: Tally,
    struck: Map<string, Struck>,
    { place, named, tail }: Omit<Balance, 'state'>,
    least: number,
  ) {
    this.#base = base;
    this.#struck = struck;
    this.#place = place;
    this.#named = new Set(named);
    this.#tail = [...tail];
    this.#least = least;
  }

  /** From all facts of a kart. */
  static of(facts: readonly Fact[], least = TAIL): Carried {
    const ordered = inOrder(facts);
    const struck = struckFacts(ordered);
    const [before, tail] = [ordered.slice(0, -least), ordered.slice(-least)];
    const base = tallyOf(before, struck);
    const named = ordered.flatMap(fact => (fact.kind === 'struck' ? [fact.fact] : []));
    return new Carried(base, new Map(struck), { place: placeOf(before.at(-1)), named, tail }, least);
  }

  static from(balance: Balance, least = TAIL): Carried {
    const struck = new Map(Object.entries(balance.state.struck));
    return new Carried(new Tally(struck, balance.state), struck, balance, least);
  }

  /** What later facts do not change. */
  balance(): Balance | undefined {
    if (!this.#known) return undefined;
    const struck = Object.assign(Object.create(null), Object.fromEntries(this.#struck));
    const state = { ...this.#base.state(), struck };
    return { state, place: this.#place, named: [...this.#named], tail: [...this.#tail] };
  }

  /** As `fold` of all facts gives it; undefined when that takes the facts themselves. */
  get state(): State | undefined {
    if (!this.#known) return undefined;
    this.#tally ??= this.#counted();
    this.#state ??= this.#tally.state();
    return this.#state;
  }

  /** When the last thing happened, whether it counts or not; tells nothing where the state is not known. */
  get lastAt(): string | undefined {
    return (this.#tail.at(-1) ?? this.#place)?.at;
  }

  /** A fact that is not in there yet. */
  add(fact: Fact): void {
    this.#known &&= this.#reaches(fact);
    if (!this.#known) return;
    this.#state = undefined;
    let at = this.#tail.length;
    while (at > 0 && compareFacts(this.#tail[at - 1] as Fact, fact) > 0) at--;
    if (fact.kind === 'struck') {
      this.#named.add(fact.fact);
      this.#struck.set(fact.fact, { by: fact.by, why: fact.why });
      this.#tally = undefined;
    } else if (happened(fact) && at === this.#tail.length) this.#tally?.add(fact);
    else this.#tally = undefined;
    this.#tail.splice(at, 0, fact);
    if (this.#tail.length > 2 * this.#least) this.#carry();
  }

  /** Can it be counted in with what is held here? */
  #reaches(fact: Fact): boolean {
    if ((this.#place !== null && compareFacts(fact, this.#place) <= 0) || this.#named.has(fact.id)) return false;
    if (fact.kind !== 'struck') return true;
    const struck = this.#tail.find(one => one.id === fact.fact);
    return struck !== undefined && struck.kind !== 'struck' && !this.#named.has(fact.fact);
  }

  #counted(): Tally {
    const tally = new Tally(this.#struck, this.#base.state());
    this.#count(tally, this.#tail);
    return tally;
  }

  #carry(): void {
    const old = this.#tail.splice(0, this.#tail.length - this.#least);
    this.#count(this.#base, old);
    this.#place = placeOf(old.at(-1));
  }

  #count(into: Tally, facts: readonly Fact[]): void {
    for (const fact of facts) if (happened(fact) && !this.#struck.has(fact.id)) into.add(fact);
  }
}

const placeOf = (fact: Fact | undefined): Place | null =>
  fact
    ? { at: fact.at, recorded: fact.recorded, device: fact.device, seq: fact.seq, id: fact.id, hash: fact.hash }
    : null;
