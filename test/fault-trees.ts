/** Small random fault trees, and what is known of one by trying every state of its events: slow, and written otherwise. */
import fc from 'fast-check';
import type { Basic, FaultTree, Gate } from '../src/risk/index.ts';

/** A tree from a shape: top, gates as [op or k, inputs], chances. */
export const faultTree = (
  top: string,
  gates: Readonly<Record<string, readonly ['and' | 'or' | number, ...string[]]>>,
  events: Readonly<Record<string, Basic>>,
): FaultTree => ({
  top,
  gates: new Map(
    Object.entries(gates).map(([name, [op, ...inputs]]): [string, Gate] => [
      name,
      typeof op === 'number' ? { op: 'atleast', k: op, inputs } : { op, inputs },
    ]),
  ),
  events: new Map(Object.entries(events)),
});

const EVENTS = 7;
const GATES = 7;

/** Gates that use events and gates before them, shared at will; some events are given, some never used. */
export const faultTrees = (basic: fc.Arbitrary<Basic>): fc.Arbitrary<FaultTree> =>
  fc
    .record({
      events: fc.array(basic, { minLength: 2, maxLength: EVENTS }),
      gates: fc.array(
        fc.record({
          op: fc.constantFrom('and', 'or', 'atleast'),
          k: fc.nat(4),
          inputs: fc.uniqueArray(fc.nat(EVENTS + GATES - 1), { minLength: 1, maxLength: 5 }),
        }),
        { minLength: 1, maxLength: GATES },
      ),
    })
    .map(({ events, gates }) => {
      const names = events.map((_, n) => `e${n}`);
      const made = gates.map(({ op, k, inputs }, g): [string, Gate] => {
        const below = [...names, ...gates.slice(0, g).map((_, n) => `g${n}`)];
        const used = [...new Set(inputs.map(input => below[below.length - 1 - (input % below.length)] ?? 'e0'))];
        return [
          `g${g}`,
          op === 'atleast'
            ? { op, k: 1 + (k % used.length), inputs: used }
            : { op: op === 'and' ? 'and' : 'or', inputs: used },
        ];
      });
      return {
        top: `g${gates.length - 1}`,
        gates: new Map(made),
        events: new Map(names.map((name, n) => [name, events[n]])),
      };
    });

export type States = {
  /** Chance of the top with these chances instead of the tree's. */
  readonly top: (others?: Readonly<Record<string, number>>) => number;
  /** Minimal sets of events that bring the top about, each sorted, smallest first. */
  readonly sets: readonly (readonly string[])[];
  /** Chance that one of the sets with this event has happened. */
  readonly involved: (event: string) => number;
};

/** Every state of the events that are not given, each tried. */
export function everyState(tree: FaultTree): States {
  const free = [...tree.events].filter(([, is]) => typeof is !== 'boolean').map(([name]) => name);
  const states = Array.from({ length: 2 ** free.length }, (_, n) => new Set(free.filter((_, e) => (n >> e) & 1)));
  const cut = states.filter(state => happens(tree, tree.top, state));
  const within = (small: ReadonlySet<string>, large: ReadonlySet<string>) =>
    [...small].every(event => large.has(event));
  const minimal = cut.filter(state => !cut.some(other => other.size < state.size && within(other, state)));
  const chanceOf = (among: readonly ReadonlySet<string>[], others: Readonly<Record<string, number>> = {}): number =>
    among.reduce((sum, state) => {
      const each = free.map(event => {
        const p = others[event] ?? Number(tree.events.get(event));
        return state.has(event) ? p : 1 - p;
      });
      return sum + each.reduce((product, p) => product * p, 1);
    }, 0);
  return {
    top: others => chanceOf(cut, others),
    sets: minimal.map(set => [...set].sort()).sort((a, b) => a.length - b.length || (a.join() < b.join() ? -1 : 1)),
    involved: event => {
      const holding = minimal.filter(set => set.has(event));
      return chanceOf(states.filter(state => holding.some(set => within(set, state))));
    },
  };
}

function happens(tree: FaultTree, name: string, state: ReadonlySet<string>): boolean {
  const gate = tree.gates.get(name);
  if (gate === undefined) return tree.events.get(name) === true || state.has(name);
  const happened = gate.inputs.filter(input => happens(tree, input, state)).length;
  return happened >= (gate.op === 'atleast' ? gate.k : gate.op === 'or' ? 1 : gate.inputs.length);
}
