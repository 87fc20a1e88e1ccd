/**
 * The order that the kart itself asks for when every part that can come off is off and every item is due. The plan
 * works under the same rules; here they are tried on all of the kart at once, so that no plan can run into a loop.
 */
import type { Item, Kart } from './model.ts';
import type { Place, Report } from './problem.ts';
import { mayBeOff, rounds, wayIn } from './ways.ts';

/** `from` comes before `to`. Steps are named `take off X`, `refit X`, and an item by its id (a joint's is its making). */
export type Before = { readonly from: string; readonly to: string; readonly why: string };

type Body = Pick<Kart, 'parts' | 'joints' | 'items'>;
const off = (part: string): string => `take off ${part}`;
const on = (part: string): string => `refit ${part}`;

/**
 * Every "before" of the kart. Two exceptions keep adjusting possible: an item that opens a joint comes before that
 * joint is made even if the joint belongs to a part that disturbs the item; and an item for the complete kart does not
 * wait for joints that itself or another such item opens.
 */
export function order(kart: Body): readonly Before[] {
  const edges: Before[] = [];
  const before = (from: string, to: string, why: string): void => {
    if (from !== to) edges.push({ from, to, why });
  };
  const round = rounds(kart.parts);
  const items = Object.values(kart.items);
  const complete = items.filter(item => item.complete);
  const openedComplete = new Set(complete.flatMap(item => item.opens));

  for (const part of Object.values(kart.parts)) {
    if (!part.removable) continue;
    const made = [on(part.id), ...part.joints];
    before(off(part.id), on(part.id), 'what is off goes back');
    for (const joint of part.joints) before(on(part.id), joint, `${joint} holds it`);
    for (const q of wayIn(part, round)) {
      before(off(q), off(part.id), `${part.id} is behind ${q}`);
      for (const step of made) before(step, on(q), `${part.id} is behind ${q}`);
    }
    const own = items.filter(item => item.part === part.id && lapsesWhenDisturbed(item) && !needs(kart, item, part.id));
    for (const item of [...part.disturbs.flatMap(id => kart.items[id] ?? []), ...own])
      for (const step of made) if (!item.opens.includes(step)) before(step, item.id, `${part.id} disturbs ${item.id}`);
  }
  for (const item of items) {
    for (const q of item.needsOff[0] ?? []) {
      before(off(q), item.id, `${item.id} needs ${q} off`);
      before(item.id, on(q), `${item.id} needs ${q} off`);
    }
    for (const id of item.disturbs) before(item.id, id, `${item.id} disturbs ${id}`);
    for (const joint of item.opens) before(item.id, joint, `${item.id} opens ${joint}`);
  }
  for (const item of complete) {
    const why = `${item.id} is done on the complete kart`;
    for (const part of Object.values(kart.parts)) if (part.removable) before(on(part.id), item.id, why);
    for (const joint of Object.keys(kart.joints)) if (!openedComplete.has(joint)) before(joint, item.id, why);
  }
  return edges;
}

const lapsesWhenDisturbed = (item: Item): boolean =>
  item.joint === undefined && item.when.some(lapse => lapse.on === 'disturbed');

const needs = (kart: Body, item: Item, part: string): boolean =>
  item.needsOff.some(way => mayBeOff(kart, way).has(part));

/** Reports each loop that leaves no possible order, in words. */
export function checkOrder(kart: Body, places: ReadonlyMap<string, Place>, report: Report): void {
  const next = new Map<string, Before[]>();
  for (const edge of order(kart)) next.set(edge.from, [...(next.get(edge.from) ?? []), edge]);
  const done = new Set<string>();
  const way: Before[] = [];
  const open = new Set<string>();
  const visit = (step: string): void => {
    if (done.has(step)) return;
    open.add(step);
    for (const edge of next.get(step) ?? []) {
      way.push(edge);
      if (open.has(edge.to)) tell(way.slice(way.findIndex(e => e.from === edge.to)));
      else visit(edge.to);
      way.pop();
    }
    open.delete(step);
    done.add(step);
  };
  const tell = (loop: readonly Before[]): void => {
    const steps = loop.map(edge => edge.from);
    const place = steps.flatMap(step => places.get(step) ?? [])[0] ?? places.get(part(steps[0] ?? ''));
    report(place ?? { file: undefined, line: 1, column: 1, path: [] }, {
      expected: 'an order in which all can be done',
      got: `a loop: ${loop.map(e => `"${e.from}" before "${e.to}" (${e.why})`).join(', ')}`,
      remedy: 'take out the disturbance, the way in or the opened joint that is not so in practice',
    });
  };
  for (const step of next.keys()) visit(step);
}

const part = (step: string): string => step.replace(/^(take off|refit) /, '');
