/**
 * The minimal cut sets of a coherent function as a diagram of sets: below a node, high holds the sets with its event
 * (which is left out of them), low those without. Sets are counted and listed from it without ever being written out.
 * Sources: Rauzy 1993, Reliability Engineering and System Safety 40, "New algorithms for fault trees analysis" (memory);
 * Minato 1993, 30th Design Automation Conference, "Zero-suppressed BDDs for set manipulation" (memory).
 */
import type { Functions } from './functions.ts';
import { Nodes, ONE, ZERO } from './nodes.ts';
import { Results } from './results.ts';

export class CutSetDiagram {
  readonly nodes: Nodes;
  readonly #functions: Nodes;
  readonly #minimal: Int32Array; // by function, 0 where not worked out yet
  readonly #without = new Results();

  /** @param functions complete: none may be added after */
  constructor(functions: Functions, limit: number) {
    this.nodes = new Nodes(limit);
    this.#functions = functions.nodes;
    this.#minimal = new Int32Array(functions.nodes.size);
  }

  /** The smallest sets of events that bring `f` about: those that do without the event, and with it those that need it. */
  minimal(f: number): number {
    if (f === ZERO || f === ONE) return f;
    const kept = this.#minimal[f] as number;
    if (kept !== ZERO) return kept; // a function that can come about has a set
    const { level, high, low } = this.#functions;
    const rest = low[f] as number;
    const needing = this.#leftOut(this.minimal(high[f] as number), rest);
    const made = this.#made(level[f] as number, needing, this.minimal(rest));
    this.#minimal[f] = made;
    return made;
  }

  /** The end of this diagram. */
  release(): void {
    for (const table of [this.nodes, this.#without]) table.release();
  }

  /** Of these sets those that do not bring `f` about. */
  #leftOut(sets: number, f: number): number {
    if (sets === ZERO || f === ONE) return ZERO;
    if (f === ZERO || sets === ONE) return sets;
    const kept = this.#without.get(sets, f);
    if (kept >= 0) return kept;
    const { level, high, low } = this.nodes;
    const { level: levels, high: highs, low: lows } = this.#functions;
    const at = level[sets] as number;
    const under = levels[f] as number;
    if (at > under) return this.#without.keep(sets, f, this.#leftOut(sets, lows[f] as number));
    const same = at === under;
    const needing = this.#leftOut(high[sets] as number, same ? (highs[f] as number) : f);
    const rest = this.#leftOut(low[sets] as number, same ? (lows[f] as number) : f);
    return this.#without.keep(sets, f, this.#made(at, needing, rest));
  }

  #made(level: number, high: number, low: number): number {
    return high === ZERO ? low : this.nodes.node(level, high, low);
  }
}
