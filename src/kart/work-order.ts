/**
 * Is there an order in which everything could be done: every part off, every item due? The graph joins all ways in at
 * once, so a kart that passes has an order whichever ways a plan takes. The same rules W1 to W8 as in prep/work.ts.
 */
import { disturbersOf, replacesPart } from './disturb.ts';
import type { ItemId, Kart, PartId } from './model.ts';

/** The circle in words, each entry before the next and the last before the first; undefined when there is an order. */
export const circleInWork = (kart: Kart): readonly string[] | undefined => findCircle(workOrder(kart));

/** What comes straight after each step; a step is `take off PART`, `refit PART`, `do ITEM`, or `whole kart`. */
export const workOrder = (kart: Kart): ReadonlyMap<string, ReadonlySet<string>> => {
  const then = new Map<string, Set<string>>();
  const edge = (a: string, b: string): void => {
    if (a === b) return;
    const list = then.get(a);
    if (list) list.add(b);
    else then.set(a, new Set([b]));
  };
  const off = (p: PartId): string => `take off ${p}`;
  const back = (p: PartId): string => `refit ${p}`;
  const does = (i: ItemId): string => `do ${i}`;
  const who = disturbersOf(kart);
  const openedLate = new Set(Object.values(kart.items).flatMap(i => (i.complete ? i.opens : [])));

  for (const part of Object.values(kart.parts)) {
    edge(off(part.id), back(part.id));
    for (const j of part.joints) edge(back(part.id), does(j));
    for (const q of part.behind.flat()) {
      edge(off(q), off(part.id));
      edge(back(part.id), back(q));
      for (const j of part.joints) edge(does(j), back(q));
    }
  }
  for (const item of Object.values(kart.items)) {
    for (const p of item.needsOff.flat()) {
      edge(off(p), does(item.id));
      edge(does(item.id), back(p));
    }
    for (const p of who.parts.get(item.id) ?? []) {
      edge(back(p), does(item.id));
      if (!item.joint)
        for (const j of kart.parts[p]?.joints ?? []) if (!item.opens.includes(j)) edge(does(j), does(item.id));
    }
    for (const id of [...item.disturbs, ...item.opens]) edge(does(item.id), does(id));
    for (const id of item.disturbs)
      if (!kart.items[id]?.joint)
        for (const j of item.opens) if (!kart.items[id]?.opens.includes(j)) edge(does(j), does(id));
    for (const j of item.opens) {
      const holds = kart.joints[j]?.part;
      if (holds !== undefined && !who.mayNeedOff(item.id).has(holds)) edge(back(holds), does(item.id));
    }
    if (replacesPart(item))
      for (const other of Object.values(kart.items)) {
        if (other.part !== item.part || !other.when.some(w => w.on === 'fitted')) continue;
        edge(does(item.id), does(other.id));
        if (!who.mayNeedOff(other.id).has(item.part)) edge(back(item.part), does(other.id));
      }
    if (!item.complete && !openedLate.has(item.id)) {
      if (item.joint || item.needsOff.length > 0 || item.disturbs.length > 0 || item.opens.length > 0)
        edge(does(item.id), 'whole kart');
    } else if (item.complete) edge('whole kart', does(item.id));
  }
  for (const part of Object.values(kart.parts)) edge(back(part.id), 'whole kart');
  return then;
};

const findCircle = (then: ReadonlyMap<string, ReadonlySet<string>>): string[] | undefined => {
  const done = new Set<string>();
  const path: string[] = [];
  const onPath = new Set<string>();
  const visit = (node: string): string[] | undefined => {
    if (done.has(node)) return undefined;
    if (onPath.has(node)) return path.slice(path.indexOf(node));
    path.push(node);
    onPath.add(node);
    for (const next of then.get(node) ?? []) {
      const circle = visit(next);
      if (circle) return circle;
    }
    path.pop();
    onPath.delete(node);
    done.add(node);
    return undefined;
  };
  for (const node of then.keys()) {
    const circle = visit(node);
    if (circle) return circle;
  }
  return undefined;
};
