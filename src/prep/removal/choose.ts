/**
 * Which jobs to do in the minutes there are: branch and bound over taking or leaving each job, the most important first.
 * A branch is left when what could still be won in each measure, at the least that each job adds, does not beat the best
 * choice so far: a fractional knapsack per measure, one after the other. What a job comes after is taken with it.
 */
import type { WorkJob } from './bare-work.ts';
import { compare, type Importance } from './importance.ts';
import type { Prices } from './prices.ts';
import { SAME } from './search.ts';

export type Selection = {
  readonly taken: ReadonlySet<number>;
  /** Sum in each measure. */
  readonly worth: readonly number[];
  /** Proven: the same as `worth`. Else no choice in these minutes has more, each measure looked at alone. */
  readonly atMost: readonly number[];
  readonly minutes: number;
  /** No choice in these minutes is more, and none that is as much takes fewer. */
  readonly proven: boolean;
};

export type Question = {
  readonly jobs: readonly WorkJob[];
  readonly importance: Importance;
  readonly prices: Prices;
  readonly window: number;
  /** Sets of jobs to price before the best choice so far is given. */
  readonly effort: number;
};

type Best = { readonly taken: ReadonlySet<number>; readonly worth: readonly number[]; readonly minutes: number };
type Node = {
  readonly taken: ReadonlySet<number>;
  readonly left: ReadonlySet<number>;
  readonly worth: readonly number[];
  readonly least: number;
};

/** Jobs looked at on the way, in all, before the search gives its best: a second or two. */
const VISITS = 500_000;

/** undefined when not even closing up fits. */
export const choose = (question: Question): Selection | undefined => {
  const { jobs, importance, prices, window } = question;
  const count = jobs.map(job => importance.of(job));
  const alone = jobs.map((_, n) => Math.max(1e-6, prices.atLeast([n]) - prices.atLeast([])));
  const order = jobs
    .map((_, n) => n)
    .sort((a, b) => rank(a) - rank(b) || worth(b) / minutesOf(b) - worth(a) / minutesOf(a) || a - b);
  const numberOf = new Map(jobs.map((job, n) => [job.id, n]));
  const earlier = jobs.map((_, n) => closureOf(n, k => jobs[k]?.after.flatMap(id => numberOf.get(id) ?? []) ?? []));
  const behind: number[][] = jobs.map(() => []);
  for (const [k, set] of earlier.entries()) for (const n of set) if (n !== k) behind[n]?.push(k);

  const nothing = prices.of(new Set());
  if (!(nothing.most <= window + SAME)) return undefined;
  const zero = Array.from({ length: importance.count }, () => 0);
  let best: Best = { taken: new Set(), worth: zero, minutes: nothing.most };
  let doubtful = zero.map(() => Number.NEGATIVE_INFINITY); // the most among sets that a better plan might fit in
  const lastAsk = prices.asked() + question.effort;
  let visits = VISITS / (jobs.length + 1);
  let stopped = false;

  const root: Node = { taken: new Set(), left: new Set(), worth: zero, least: nothing.least };
  fill(root);
  visit(root);
  const proven = !stopped && compare(doubtful, best.worth) < 0;
  const room = window - nothing.least;
  const atMost = proven ? best.worth : offersOf(root).map(offers => knapsack(offers, room).most);
  return { ...best, atMost, proven };

  /** A first choice: as many of the next as fit at once, twice as many after each success, half after each failure. */
  function fill(start: Node): void {
    let node = start;
    let block = 1;
    for (let at = 0; at < order.length && prices.asked() < lastAsk && visits > 0; visits--) {
      const next = take(node, order.slice(at, at + block));
      if (next && next.most <= window + SAME) {
        node = next;
        at += block;
        block *= 2;
      } else if (block > 1) block = Math.floor(block / 2);
      else at++;
    }
  }

  function visit(start: Node): void {
    const stack: Node[] = [start];
    for (let node = stack.pop(); node; node = stack.pop()) {
      if (prices.asked() >= lastAsk || visits-- <= 0) {
        stopped = true;
        return;
      }
      if (!promising(node)) continue;
      const next = order.find(n => !node?.taken.has(n) && !node?.left.has(n));
      if (next === undefined) continue;
      stack.push({ ...node, left: new Set([...node.left, next, ...(behind[next] ?? [])]) });
      const more = take(node, [next]);
      if (more) stack.push(more);
    }
  }

  /** The node with more jobs taken and all they come after; undefined when that surely does not fit. */
  function take(node: Node, more: readonly number[]): (Node & { readonly most: number }) | undefined {
    const own = more.reduce((sum, n) => sum + (node.taken.has(n) ? 0 : (jobs[n]?.minutes ?? 0)), 0);
    if (node.least + own > window + SAME) return undefined;
    const taken = new Set([...node.taken, ...more, ...more.flatMap(n => [...(earlier[n] ?? [])])]);
    if ([...taken].some(n => node.left.has(n)) || prices.atLeast(taken) > window + SAME) return undefined;
    const price = prices.of(taken);
    if (price.least > window + SAME) return undefined;
    const sum = [...zero];
    for (const n of taken) sum[rank(n)] = (sum[rank(n)] ?? 0) + worth(n);
    if (price.most <= window + SAME) {
      const apart = compare(sum, best.worth);
      if (apart > 0 || (apart === 0 && price.most < best.minutes - SAME))
        best = { taken, worth: sum, minutes: price.most };
      if (price.least < price.most - SAME && compare(sum, doubtful) > 0 && compare(sum, best.worth) === 0)
        doubtful = sum;
    } else if (compare(sum, doubtful) > 0) doubtful = sum;
    return { taken, left: node.left, worth: sum, least: Math.max(node.least, price.least), most: price.most };
  }

  /** Could some choice below this node still be better than the best? */
  function promising(node: Node): boolean {
    const offers = offersOf(node);
    let room = window - node.least;
    for (let k = 0; k < importance.count; k++) {
      const wanted = (best.worth[k] ?? 0) - (node.worth[k] ?? 0);
      const { most, minutesFor } = knapsack(offers[k] ?? [], room);
      if (most < wanted - SAME) return false;
      if (most > wanted + SAME) return true;
      room -= minutesFor(wanted);
    }
    return window - room < best.minutes - SAME;
  }

  /** What each undecided job adds at the very least: its own minutes and a share of parts that only undecided jobs use. */
  function offersOf(node: Node): Offer[][] {
    const undecided = order.filter(n => !node.taken.has(n) && !node.left.has(n));
    const paid = new Set(prices.mayBeside);
    for (const n of node.taken) for (const p of prices.may(n)) paid.add(p);
    const users = new Map<number, number>();
    for (const n of undecided) for (const p of prices.sure(n)) users.set(p, (users.get(p) ?? 0) + 1);
    const offers: Offer[][] = zero.map(() => []);
    for (const n of undecided) {
      let minutes = jobs[n]?.minutes ?? 0;
      for (const p of prices.sure(n)) if (!paid.has(p)) minutes += prices.cost(p) / (users.get(p) ?? 1);
      offers[rank(n)]?.push({ worth: worth(n), minutes });
    }
    return offers;
  }

  function rank(n: number): number {
    return count[n]?.rank ?? 0;
  }
  function worth(n: number): number {
    return count[n]?.worth ?? 0;
  }
  function minutesOf(n: number): number {
    return alone[n] ?? 0;
  }
};

type Offer = { readonly worth: number; readonly minutes: number };

/** The most that fits when a job may be done in part, and the least minutes that bring so much. */
const knapsack = (
  offers: readonly Offer[],
  room: number,
): { readonly most: number; readonly minutesFor: (wanted: number) => number } => {
  const ordered = [...offers].sort((a, b) => b.worth * a.minutes - a.worth * b.minutes);
  const whole = offers.every(offer => Number.isInteger(offer.worth));
  let most = 0;
  let left = room;
  for (const { worth, minutes } of ordered) {
    if (left < 0) break;
    const part = minutes <= left ? 1 : left / minutes;
    most += worth * part;
    if (part < 1) break;
    left -= minutes;
  }
  return {
    most: whole ? Math.floor(most + 1e-6) : most,
    minutesFor: wanted => {
      let minutes = 0;
      let missing = wanted;
      for (const offer of ordered) {
        if (missing <= SAME) break;
        const part = offer.worth <= missing ? 1 : missing / offer.worth;
        minutes += offer.minutes * part;
        missing -= offer.worth * part;
      }
      return minutes;
    },
  };
};

const closureOf = (start: number, next: (n: number) => readonly number[]): ReadonlySet<number> => {
  const all = new Set(next(start));
  for (const n of all) for (const more of next(n)) all.add(more); // a set grows while it is walked
  return all;
};
