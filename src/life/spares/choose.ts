/**
 * Which spares to carry under a budget of money and kilograms, so that the most likely all goes on: exact.
 *
 *   largest Σ v(n);  Σ money(n) ≤ M,  Σ mass(n) ≤ K;  v = ln of the chance that n spares of a kind are enough
 *
 * Kinds are independent, so chances multiply and their logarithms add up; of each kind one number of spares is chosen. The
 * table goes kind by kind. It drops what another beats in money, mass and value, and what cannot reach a choice already
 * known: for any prices λ, μ of a unit of budget, what is still open brings at most Σ max (v - λ money - μ mass) + λ M + μ K
 * (Lagrange; Everett 1963, memory). Of equals the one that takes fewer.
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
  // A budget that buys everything is no bound: what it is counted in then sets nothing apart.
  const [money, mass] = [weighed(kinds, 'money', budget.money), weighed(kinds, 'mass', budget.kilograms)];
  const room = { money: money.room, mass: mass.room };
  const costs = (one: Choice): Choice => ({ value: one.value, money: money.of(one), mass: mass.of(one) });
  // Most to gain first: a bad start is seen to be one early.
  const order = kinds.map((_, k) => k).sort((a, b) => gainOf(kinds[b] ?? []) - gainOf(kinds[a] ?? []));
  const sorted = order.map(k => (kinds[k] ?? []).map(costs));
  const prices = pricesFor(sorted, room);
  const bound = boundsOf(sorted, prices);
  const enough = quickly(sorted, room, prices[0] as Room);
  let states: readonly State[] = [{ value: 0, money: 0, mass: 0 }];
  for (const [k, kind] of sorted.entries()) {
    const next: State[] = [];
    for (const before of states)
      for (const [n, one] of kind.entries()) {
        const [spent, carried] = [before.money + one.money, before.mass + one.mass];
        if (spent > room.money + SAME || carried > room.mass + SAME) continue;
        const value = before.value + one.value;
        if (value + bound(k + 1, room.money - spent, room.mass - carried) < enough - SAME) continue;
        next.push({ value, money: spent, mass: carried, n, before });
      }
    states = unbeaten(next);
  }
  const best = states.reduce((a, b) => (b.value > a.value + SAME ? b : a));
  const taken = new Array<number>(kinds.length).fill(0);
  let at: State | undefined = best;
  for (let k = order.length - 1; k >= 0; k--) {
    taken[order[k] as number] = at?.n ?? 0;
    at = at?.before;
  }
  const total = (of: 'money' | 'mass'): number => taken.reduce((sum, n, k) => sum + (kinds[k]?.[n]?.[of] ?? 0), 0);
  return { taken, value: best.value, money: total('money'), mass: total('mass') };
}
/** Last bits of doubles decide nothing. */
const SAME = 1e-12;

type State = Choice & { readonly n?: number; readonly before?: State };

const gainOf = (kind: readonly Choice[]): number => (kind.at(-1)?.value ?? 0) - (kind[0]?.value ?? 0);

function weighed(kinds: Choices, what: 'money' | 'mass', budget: number) {
  const all = kinds.reduce((sum, kind) => sum + Math.max(0, ...kind.map(one => one[what])), 0);
  return all <= budget ? { room: 0, of: () => 0 } : { room: budget, of: (one: Choice) => one[what] };
}

/** Without those that another beats in money, mass and value; of equals the first. */
function unbeaten(states: readonly State[]): readonly State[] {
  const sorted = states.toSorted((a, b) => a.money - b.money || a.mass - b.mass || b.value - a.value);
  const kept: State[] = [];
  /** Of those kept, the ones no other kept one beats in mass and value: by rising mass, and so by rising value. */
  const edge: State[] = [];
  for (const state of sorted) {
    let [low, high] = [0, edge.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((edge[middle] as State).mass <= state.mass + SAME) low = middle + 1;
      else high = middle;
    }
    const lighter = edge[low - 1];
    if (lighter && lighter.value >= state.value - SAME) continue;
    kept.push(state);
    let beaten = low;
    while (beaten < edge.length && (edge[beaten] as State).value <= state.value) beaten++;
    edge.splice(low, beaten - low, state);
  }
  return kept;
}

/** A good choice to begin with: one spare more at a time, the most for what it uses up. */
function quickly(kinds: Choices, room: Room, price: Room): number {
  const taken = kinds.map(() => 0);
  const used = { money: 0, mass: 0 };
  for (;;) {
    let best: { readonly k: number; readonly worth: number } | undefined;
    for (const [k, kind] of kinds.entries()) {
      const [now, next] = [kind[taken[k] as number], kind[(taken[k] as number) + 1]];
      if (!now || !next) continue;
      const more = { money: next.money - now.money, mass: next.mass - now.mass };
      if (used.money + more.money > room.money || used.mass + more.mass > room.mass) continue;
      const worth = (next.value - now.value) / (priceOf(more, price) + 1e-9);
      if (!best || worth > best.worth) best = { k, worth };
    }
    if (!best) return kinds.reduce((sum, kind, k) => sum + (kind[taken[k] as number]?.value ?? 0), 0);
    const [from, to] = [kinds[best.k]?.[taken[best.k] as number], kinds[best.k]?.[(taken[best.k] as number) + 1]];
    used.money += (to?.money ?? 0) - (from?.money ?? 0);
    used.mass += (to?.mass ?? 0) - (from?.mass ?? 0);
    taken[best.k] = (taken[best.k] as number) + 1;
  }
}

type Room = { readonly money: number; readonly mass: number };

/** The most that kinds k … can still bring. */
function boundsOf(kinds: Choices, all: readonly Room[]): (k: number, money: number, mass: number) => number {
  const tables = all.map(prices => {
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
  const off = [0.6, 1, 1.6];
  return [
    price,
    { money: 0, mass: 0 },
    ...off.flatMap(a => off.map(b => ({ money: a * price.money, mass: b * price.mass }))),
  ];
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
