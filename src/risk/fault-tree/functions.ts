/**
 * Decision diagrams of coherent functions: at each node one event, below it what is left when it happens (high) and
 * when it does not (low). The same function is the same node.
 * Source: Bryant 1986, IEEE Transactions on Computers C-35, "Graph-based algorithms for Boolean function manipulation" (memory).
 */
import { Nodes, ONE, ZERO } from './nodes.ts';
import { Results } from './results.ts';

export class Functions {
  readonly nodes: Nodes;
  readonly #and = new Results();
  readonly #or = new Results();

  constructor(limit: number) {
    this.nodes = new Nodes(limit);
  }

  event(level: number): number {
    return this.nodes.node(level, ONE, ZERO);
  }

  // The lesser node first: then an end, ZERO before ONE, can only be the first.
  and(a: number, b: number): number {
    if (a > b) return this.and(b, a);
    if (a === ZERO || a === b) return a;
    if (a === ONE) return b;
    const kept = this.#and.get(a, b);
    if (kept >= 0) return kept;
    const { level, high, low } = this.nodes;
    const at = Math.min(level[a] as number, level[b] as number);
    const inA = level[a] === at;
    const inB = level[b] === at;
    const above = this.and(inA ? (high[a] as number) : a, inB ? (high[b] as number) : b);
    const below = this.and(inA ? (low[a] as number) : a, inB ? (low[b] as number) : b);
    return this.#and.keep(a, b, above === below ? above : this.nodes.node(at, above, below));
  }

  or(a: number, b: number): number {
    if (a > b) return this.or(b, a);
    if (a === ZERO) return b;
    if (a === ONE || a === b) return a;
    const kept = this.#or.get(a, b);
    if (kept >= 0) return kept;
    const { level, high, low } = this.nodes;
    const at = Math.min(level[a] as number, level[b] as number);
    const inA = level[a] === at;
    const inB = level[b] === at;
    const above = this.or(inA ? (high[a] as number) : a, inB ? (high[b] as number) : b);
    const below = this.or(inA ? (low[a] as number) : a, inB ? (low[b] as number) : b);
    return this.#or.keep(a, b, above === below ? above : this.nodes.node(at, above, below));
  }

  /** At least `k` of the inputs: 1 is "or", all is "and". Worked from the input deepest in the order upwards. */
  atLeast(k: number, inputs: readonly number[]): number {
    const { level } = this.nodes;
    const deepest = [...inputs].sort((a, b) => (level[b] as number) - (level[a] as number));
    if (k === 1) return deepest.reduce((all, one) => this.or(one, all), ZERO);
    if (k === inputs.length) return deepest.reduce((all, one) => this.and(one, all), ONE);
    // of[j]: at least j of the inputs so far
    let of: number[] = [ONE, ...Array.from({ length: k }, () => ZERO)];
    for (const one of deepest)
      of = of.map((without, j) => (j === 0 ? ONE : this.or(without, this.and(one, of[j - 1] as number))));
    return of[k] as number;
  }

  /** The end of these functions. */
  release(): void {
    for (const table of [this.nodes, this.#and, this.#or]) table.release();
  }
}
