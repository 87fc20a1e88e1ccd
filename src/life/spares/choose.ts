/**
 * Which spares to carry under a budget of money and kilograms, so that the most likely all goes on: exact.
 *
 *   largest Σ v(n);  Σ money(n) ≤ M,  Σ mass(n) ≤ K;  v = ln of the chance that n spares of a kind are enough
 *
 * Kinds are independent, so chances multiply and their logarithms add up; of each kind one number of spares is chosen. The
 * search goes kind by kind and turns back where not even the best of the rest can do better: for any prices λ, μ of a unit of
 * budget, what is still open brings at most Σ max (v - λ money - μ mass) + λ M + μ K (Lagrange; Everett 1963, memory).
 * Of equals the one that takes fewer.
 */
export type Choice = {
  readonly value: number; // ln of the chance
  readonly money: number; // to spend; what lies in the box costs nothing
  readonly mass: number; // to carry, kg
};
/** The first of each kind must cost nothing and weigh nothing; a later one is worth more than those before. */
export type Choices = readonly (readonly Choice[])[];
export type SpareBudget = { readonly money: number; readonly kilograms: number }; // either may be Infinity

export type Chosen = {
  readonly taken: readonly number[];
  readonly value: number;
  readonly money: number;
  readonly mass: number;
};

/** @returns which of each kind, in the order given */
export function chooseSpares(kinds: Choices, budget: SpareBudget): Chosen {
  mustBeSound(kinds);
  const room = { money: ample(budget.money, kinds, 'money'), mass: ample(budget.kilograms, kinds, 'mass') };
  // Most to gain first: a bad start is seen to be one early.
  const order = kinds.map((_, k) => k).sort((a, b) => gainOf(kinds[b] ?? []) - gainOf(kinds[a] ?? []));
  const sorted = order.map(k => kinds[k] ?? []);
  const bound = boundsOf(sorted, room);
  const taken = new Array<number>(sorted.length).fill(0);
  let best = { value: Number.NEGATIVE_INFINITY, taken: [...taken], money: 0, mass: 0 };
  const visit = (k: number, value: number, money: number, mass: number): void => {
    const kind = sorted[k];
    if (kind === undefined) {
      if (value > best.value + SAME) best = { value, taken: [...taken], money, mass };
      return;
    }
    if (value + bound(k, room.money - money, room.mass - mass) <= best.value + SAME) return;
    for (let n = kind.length - 1; n >= 0; n--) {
      const one = kind[n] as Choice;
      if (money + one.money > room.money + SAME || mass + one.mass > room.mass + SAME) continue;
      taken[k] = n;
      visit(k + 1, value + one.value, money + one.money, mass + one.mass);
    }
    taken[k] = 0;
  };
  visit(0, 0, 0, 0);
  const placed = new Array<number>(kinds.length).fill(0);
  order.forEach((k, n) => {
    placed[k] = best.taken[n] as number;
  });
  return { taken: placed, value: best.value, money: best.money, mass: best.mass };
}
/** Last bits of doubles decide nothing. */
const SAME = 1e-12;

const gainOf = (kind: readonly Choice[]): number => (kind.at(-1)?.value ?? 0) - (kind[0]?.value ?? 0);

/** A budget that buys everything is no bound: then what everything costs is as good. */
const ample = (budget: number, kinds: Choices, of: 'money' | 'mass'): number =>
  Math.min(
    budget,
    kinds.reduce((sum, kind) => sum + Math.max(0, ...kind.map(one => one[of])), 0),
  );

type Room = { readonly money: number; readonly mass: number };

/** The most that kinds k … can still bring. */
function boundsOf(kinds: Choices, room: Room): (k: number, money: number, mass: number) => number {
  const tables = pricesFor(kinds, room).map(prices => {
    const rest = new Float64Array(kinds.length + 1);
    for (let k = kinds.length - 1; k >= 0; k--)
      rest[k] = (rest[k + 1] as number) + Math.max(...(kinds[k] ?? []).map(one => one.value - priceOf(one, prices)));
    return { ...prices, rest };
  });
  return (k, money, mass) => {
    let least = Number.POSITIVE_INFINITY;
    for (const table of tables)
      least = Math.min(least, (table.rest[k] as number) + table.money * money + table.mass * mass);
    return least;
  };
}
const priceOf = (one: Room, price: Room): number => price.money * one.money + price.mass * one.mass;

/**
 * Prices of a unit of money and of mass worth trying: the best for the whole problem, and those a little off, which serve better further
 * down. Found by halving: where too much is spent at a price, it is too low. Any prices give a bound that holds.
 */
function pricesFor(kinds: Choices, room: Room): readonly Room[] {
  const dear = (of: 'money' | 'mass'): number => {
    const gains = kinds.flatMap(kind =>
      kind.map(one => (one[of] > 0 ? (one.value - (kind[0]?.value ?? 0)) / one[of] : 0)),
    );
    return Math.max(0, ...gains);
  };
  const spent = (price: Room, of: 'money' | 'mass'): number =>
    kinds.reduce((sum, kind) => {
      const best = kind.reduce((a, b) => (b.value - priceOf(b, price) > a.value - priceOf(a, price) ? b : a));
      return sum + best[of];
    }, 0);
  const settle = (price: Room, of: 'money' | 'mass'): Room => {
    let [low, high] = [0, dear(of)];
    if (spent({ ...price, [of]: 0 }, of) <= room[of]) return { ...price, [of]: 0 };
    for (let turn = 0; turn < 40; turn++) {
      const middle = (low + high) / 2;
      if (spent({ ...price, [of]: middle }, of) > room[of]) low = middle;
      else high = middle;
    }
    return { ...price, [of]: high };
  };
  let price: Room = { money: 0, mass: 0 };
  for (let round = 0; round < 12; round++) price = settle(settle(price, 'money'), 'mass');
  const off = [0.5, 0.8, 1, 1.25, 2];
  const pairs = off.flatMap(a => off.map(b => ({ money: a * price.money, mass: b * price.mass })));
  return [{ money: 0, mass: 0 }, ...pairs];
}

function mustBeSound(kinds: Choices): void {
  for (const [k, kind] of kinds.entries()) {
    const [first] = kind;
    if (!(first && first.money === 0 && first.mass === 0))
      throw new Error(`chooseSpares: the first of kinds[${k}] must cost and weigh nothing`);
    for (const [n, { value, money, mass }] of kind.entries())
      if (!(Number.isFinite(value) && money >= 0 && mass >= 0 && (n === 0 || value > (kind[n - 1]?.value ?? value))))
        throw new Error(
          `chooseSpares: kinds[${k}][${n}] must be worth more than those before and cost 0 or more, got ${value} for ${money} and ${mass}`,
        );
  }
}
