/**
 * What must come off so that everything can be reached, cheapest first: a closed set in an AND/OR graph. A part or an
 * item with alternatives needs one of them wholly off; a part that is off, or will be, pays once however many use it.
 * Exact branch and bound; beyond `effort` nodes the best set found so far is kept (Koc, Sabuncuoglu and Erel 2009 give
 * the AND/OR formulation; reaching even one target is hard in general, Goldwasser and Motwani 1997).
 */
import type { PartId } from '../kart/index.ts';

export type Wish = { readonly id: string; readonly ways: readonly (readonly PartId[])[] };

export type Reach = {
  /** Everything that is off at some time, what lay off already included. */
  readonly off: ReadonlySet<PartId>;
  /** The way chosen for each wish and each part of `off`, by id; parts are prefixed so that names cannot meet. */
  readonly wayOf: (kind: 'part' | 'wish', id: string) => readonly PartId[];
  readonly proven: boolean;
};

type Input = {
  readonly wishes: readonly Wish[];
  readonly lyingOff: readonly PartId[];
  readonly behind: (part: PartId) => readonly (readonly PartId[])[];
  readonly cost: (part: PartId) => number; // minutes to take off, refit and make good; 0 for what lies off already
  readonly effort?: number;
};

type Node = { readonly key: string; readonly part: PartId | undefined; readonly ways: readonly (readonly PartId[])[] };
type Choice = {
  readonly cost: number;
  readonly off: ReadonlySet<PartId>;
  readonly ways: ReadonlyMap<string, readonly PartId[]>;
};

const partKey = (id: PartId): string => `part ${id}`;
const wishKey = (id: string): string => `wish ${id}`;

/** undefined when no set of ways exists (a reach that goes in a circle; the kart file reader refuses those). */
export const reach = (input: Input): Reach | undefined => {
  const effort = input.effort ?? 20_000;
  let visited = 0;
  let best: Choice | undefined;
  const partNode = (id: PartId): Node => ({ key: partKey(id), part: id, ways: input.behind(id) });

  const search = (off: Set<PartId>, ways: Map<string, readonly PartId[]>, pending: Node[], cost: number): void => {
    visited++;
    if (best && (cost >= best.cost || visited > effort)) return;
    const open = [...pending];
    const undecided: Node[] = [];
    let spent = cost;
    /** Settles a node by one of its ways; what that newly takes off joins the open nodes. */
    const settle = (node: Node, way: readonly PartId[]): void => {
      ways.set(node.key, way);
      for (const p of way)
        if (!off.has(p)) {
          off.add(p);
          spent += input.cost(p);
          open.push(partNode(p));
        }
    };
    for (let node = open.pop(); node; node = open.pop()) {
      if (ways.has(node.key)) continue;
      if (node.ways.length === 0) settle(node, []);
      else {
        const allowed = node.ways.filter(w => !circular(node, w, ways));
        if (allowed.length === 0) return;
        const free = allowed.find(w => w.every(p => off.has(p)));
        if (free) settle(node, free);
        else if (allowed.length === 1 && allowed[0]) settle(node, allowed[0]);
        else undecided.push(node);
      }
      if (best && spent >= best.cost) return;
    }
    const [next, ...rest] = undecided;
    if (!next) {
      best = { cost: spent, off: new Set(off), ways: new Map(ways) };
      return;
    }
    const priced = next.ways
      .filter(w => !circular(next, w, ways))
      .map(way => ({ way, price: way.reduce((sum, p) => sum + (off.has(p) ? 0 : input.cost(p)), 0) }))
      .sort((a, b) => a.price - b.price);
    for (const { way } of priced) {
      const ways2 = new Map(ways).set(next.key, way);
      const off2 = new Set(off);
      const more: Node[] = [];
      let add = 0;
      for (const p of way)
        if (!off2.has(p)) {
          off2.add(p);
          add += input.cost(p);
          more.push(partNode(p));
        }
      search(off2, ways2, [...rest, ...more], spent + add);
    }
  };

  const start = new Set(input.lyingOff);
  search(
    start,
    new Map(),
    [
      ...input.lyingOff.map(partNode),
      ...input.wishes.map(w => ({ key: wishKey(w.id), part: undefined, ways: w.ways })),
    ],
    0,
  );
  const found = best as Choice | undefined;
  if (!found) return undefined;
  return {
    off: found.off,
    wayOf: (kind, id) => found.ways.get(kind === 'part' ? partKey(id) : wishKey(id)) ?? [],
    proven: visited <= effort,
  };
};

/** Would reaching this part by this way mean reaching it by way of itself? */
const circular = (node: Node, way: readonly PartId[], ways: ReadonlyMap<string, readonly PartId[]>): boolean => {
  if (node.part === undefined) return false;
  const seen = new Set<PartId>();
  const stack = [...way];
  for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
    if (p === node.part) return true;
    if (seen.has(p)) continue;
    seen.add(p);
    stack.push(...(ways.get(partKey(p)) ?? []));
  }
  return false;
};
