/** The state of one kart, kept up to date while facts arrive in any order (SPEC B21). */
import type { Fact } from './fact.ts';
import { happened, tallyOf } from './fold.ts';
import { compareFacts, inOrder } from './order.ts';
import type { State } from './state.ts';
import type { Tally } from './tally.ts';

/**
 * A fact that comes last in order, strikes nothing and is not struck costs the same however long the book is; any other makes the
 * next `state` fold anew. Facts of other karts are passed over.
 */
export class Ledger {
  readonly kart: string;
  #facts: Fact[] = [];
  readonly #hashes = new Map<string, string>();
  readonly #targets = new Set<string>();
  #tally: Tally | undefined;
  #state: State | undefined;

  constructor(kart: string, facts: readonly Fact[] = []) {
    this.kart = kart;
    this.add(facts);
  }

  add(facts: readonly Fact[]): void {
    for (const fact of facts) if (fact.kart === this.kart) this.#addOne(fact);
  }

  /** Facts of this kart in order, each once. */
  get facts(): readonly Fact[] {
    this.#settle();
    return [...this.#facts];
  }

  /** A state that later facts do not change; the same object as long as none arrived. */
  get state(): State {
    this.#state ??= this.#settle().state();
    return this.#state;
  }

  #addOne(fact: Fact): void {
    const known = this.#hashes.get(fact.id);
    if (known === fact.hash) return;
    const last = this.#facts.at(-1);
    const plain = known === undefined && happened(fact) && !this.#targets.has(fact.id);
    const follows = this.#tally !== undefined && (last === undefined || compareFacts(last, fact) < 0);
    if (fact.kind === 'struck') this.#targets.add(fact.fact);
    this.#hashes.set(fact.id, fact.hash);
    this.#facts.push(fact);
    this.#state = undefined;
    if (plain && follows) this.#tally?.add(fact);
    else this.#tally = undefined;
  }

  #settle(): Tally {
    if (this.#tally === undefined) {
      this.#facts = [...inOrder(this.#facts)];
      this.#tally = tallyOf(this.#facts);
    }
    return this.#tally;
  }
}
