/**
 * From due items to all the work there is: what must come off for them, what that opens and disturbs, what those need
 * off in turn, until nothing is added; then the order that each piece of work must keep to. Nothing here picks a time.
 *
 * Rules, each an edge "before":
 *  W1 what is in the way comes off before, and goes back after, what is behind it
 *  W2 an item that needs parts off is done between their coming off and their going back
 *  W3 a joint is made after its part is back and before anything in its way goes back
 *  W4 what a part or an item disturbs is checked after it; a joint that an item opens (the clamp of a hub whose track is
 *     set) is made after that item, not before, and before what that item disturbs is checked
 *  W5 an item that needs the whole kart comes after every refit, every joint but those that such items open, and every
 *     item that needs parts off or disturbs another
 *  W6 a second look comes after its first, and before anything closes over it
 *  W7 what a newly fitted part asks for is done on the new part, and with it on where it can be; after a failure so is all
 *     that is done to the part, unless another rule asks for it before
 *  W8 an item that opens joints is done with their parts on, where it can be: brakes are bled with the calipers on
 */
import type { State } from '../book/index.ts';
import {
  changesKart,
  disturbersOf,
  type Item,
  type ItemId,
  type Kart,
  type Part,
  type PartId,
  replacesPart,
} from '../kart/index.ts';
import type { Due } from './model.ts';
import { reach } from './reach.ts';

export type Job =
  | {
      readonly key: string;
      readonly is: 'take-off' | 'refit';
      readonly part: Part;
      readonly why: string;
      readonly fresh: boolean;
      /** A part that failed is replaced by this refit itself: what asks for that. */
      readonly item?: Item;
    }
  | {
      readonly key: string;
      readonly is: 'item' | 'second-look';
      readonly item: Item;
      readonly why: string;
      readonly due: Due | undefined;
    };

export type Work = {
  readonly jobs: readonly Job[];
  /** before[i] lists the indices of the jobs that must be done before job i. */
  readonly before: readonly (readonly number[])[];
  readonly off: ReadonlySet<PartId>;
};

const offKey = (p: PartId): string => `take-off ${p}`;
const backKey = (p: PartId): string => `refit ${p}`;
const itemKey = (i: Item): string => (failure(i) ? backKey(i.part) : `${i.action} ${i.id}`); // once done it is a part fitted
const lookKey = (i: Item): string => `second-look ${i.id}`;

/** Minutes that taking this part off costs in all: off, back on, and every joint made again. */
export const partMinutes = (kart: Kart, id: PartId): number => {
  const part = kart.parts[id];
  if (!part) return 0;
  return (
    part.takeOff.minutes + part.refit.minutes + part.joints.reduce((sum, j) => sum + (kart.items[j]?.minutes ?? 0), 0)
  );
};

const lyingOff = (kart: Kart, state: State): PartId[] =>
  Object.keys(kart.parts).filter(p => state.parts[p]?.on === false);

/** Passed since the part came off: what is to be done while it is off has been done. */
const doneSince = (state: State, item: ItemId, part: PartId): boolean =>
  (state.items[item]?.pass?.pos ?? -1) > (state.parts[part]?.off?.pos ?? -1);

/** The part failed, and another one goes in its place: by its refit where it comes off, else where it is. */
const failure = (item: Item): boolean => item.mends !== undefined && replacesPart(item);

/** @throws Error when no way in exists; a kart that the reader accepted always has one. */
export const workFor = (kart: Kart, state: State, due: readonly Due[]): Work => {
  const who = disturbersOf(kart);
  const beside = lyingOff(kart, state);
  const dueOf = new Map(due.map(d => [d.item, d]));
  const whyOf = new Map<ItemId, string>(due.map(d => [d.item, d.why]));
  const wanted = new Set<ItemId>(due.map(d => d.item));
  const secondOnly = new Set<ItemId>(due.filter(d => d.cause === 'second look').map(d => d.item));
  const owe = (id: ItemId, why: () => string): boolean => {
    const again = secondOnly.delete(id); // what is disturbed now needs its first look again
    if (again) whyOf.set(id, why());
    if (wanted.has(id) || !kart.items[id]) return again;
    wanted.add(id);
    whyOf.set(id, why());
    return true;
  };

  const ways = () => {
    const found = reach({
      wishes: [...wanted].flatMap(id => {
        const item = kart.items[id];
        return item && item.needsOff.length > 0 ? [{ id, ways: item.needsOff }] : [];
      }),
      lyingOff: beside,
      behind: p => kart.parts[p]?.behind ?? [],
      cost: p => (beside.includes(p) ? 0 : partMinutes(kart, p)),
    });
    if (!found) throw new Error(`workFor: kart ${kart.name} must have a way in to every part, got a circle`);
    return found;
  };

  /** It lies off and has been replaced already: what goes back on is another one. */
  const replacedOff = (p: PartId): boolean =>
    beside.includes(p) &&
    Object.values(kart.items).some(i => i.part === p && replacesPart(i) && doneSince(state, i.id, p));
  /** What a part asks for once another one goes on; what was done on that one while it was off is not asked again. */
  const oweAnew = (p: PartId, but?: ItemId): boolean => {
    let grew = false;
    for (const other of Object.values(kart.items)) {
      if (other.part !== p || other.id === but || !other.when.some(w => w.on === 'fitted')) continue;
      if (beside.includes(p) && who.mayNeedOff(other.id).has(p) && doneSince(state, other.id, p)) continue;
      grew = owe(other.id, () => `Another ${p} goes on.`) || grew;
    }
    return grew;
  };

  let found = ways();
  for (let grew = true; grew; ) {
    grew = false;
    for (const p of found.off) {
      const part = kart.parts[p];
      if (!part) continue;
      for (const j of part.joints) grew = owe(j, () => `Opened when ${p} comes off.`) || grew;
      for (const id of who.whileOff.get(p) ?? [])
        if (!beside.includes(p) || !doneSince(state, id, p))
          grew = owe(id, () => `To be done while ${p} is off.`) || grew;
      if (replacedOff(p)) grew = oweAnew(p) || grew;
    }
    for (const [id, parts] of who.parts)
      for (const p of parts) if (found.off.has(p)) grew = owe(id, () => `Disturbed when ${p} comes off.`) || grew;
    for (const id of [...wanted]) {
      const item = kart.items[id];
      if (!item) continue;
      if (replacesPart(item)) grew = oweAnew(item.part, id) || grew;
      if (!changesKart(item) || secondOnly.has(id)) continue;
      for (const d of item.disturbs) grew = owe(d, () => `Disturbed by: ${item.title} (${item.part}).`) || grew;
      for (const j of item.opens) grew = owe(j, () => `Opened by: ${item.title} (${item.part}).`) || grew;
    }
    if (grew) found = ways();
  }

  const items = Object.values(kart.items).filter(i => wanted.has(i.id));
  const off = Object.values(kart.parts).filter(p => found.off.has(p.id));
  const usedBy = new Map<PartId, string[]>();
  const uses = (p: PartId, what: string): void => void usedBy.set(p, [...(usedBy.get(p) ?? []), what]);
  for (const i of items) for (const p of found.wayOf('wish', i.id)) uses(p, `${i.title.toLowerCase()} (${i.part})`);
  for (const q of off) for (const p of found.wayOf('part', q.id)) uses(p, `${q.id} to come off`);
  const renewed = new Set([
    ...items.filter(i => replacesPart(i) && !failure(i) && !secondOnly.has(i.id)).map(i => i.part),
    ...off.map(({ id }) => id).filter(replacedOff),
  ]);
  const failed = new Map(items.filter(failure).map(i => [i.part, i]));

  const jobs: Job[] = [];
  for (const part of off) {
    const failure = failed.get(part.id);
    const fresh = renewed.has(part.id) || failure !== undefined;
    const users = usedBy.get(part.id) ?? [];
    const reason =
      users.length === 0
        ? 'it lies off already'
        : `${users.slice(0, 2).join('; ')}${users.length > 2 ? ` and ${users.length - 2} more` : ''}`;
    if (!beside.includes(part.id))
      jobs.push({ key: offKey(part.id), is: 'take-off', part, why: `In the way of: ${reason}.`, fresh });
    const lies = beside.includes(part.id) ? 'It lies off the kart.' : `Came off for: ${reason}.`;
    jobs.push({
      key: backKey(part.id),
      is: 'refit',
      part,
      why: (failure && whyOf.get(failure.id)) ?? lies,
      fresh,
      ...(failure ? { item: failure } : {}),
    });
  }
  for (const item of items) {
    if (failure(item) && kart.parts[item.part]?.removable) continue; // its refit does all of it
    const why = whyOf.get(item.id) ?? '';
    const d = dueOf.get(item.id);
    if (!secondOnly.has(item.id)) jobs.push({ key: itemKey(item), is: 'item', item, why, due: d });
    if (item.secondLook)
      jobs.push({
        key: lookKey(item),
        is: 'second-look',
        item,
        why: 'Second look: another person, or alone on a separate walk-round.',
        due: d,
      });
  }

  const { offAt, backAt, itemAt, lookAt } = placesOf(jobs);
  const before: Set<number>[] = jobs.map(() => new Set<number>());
  const edge = (first: number | undefined, then: number | undefined): void => {
    if (first !== undefined && then !== undefined && first !== then) before[then]?.add(first);
  };
  for (const part of off) {
    edge(offAt.get(part.id), backAt.get(part.id));
    for (const q of found.wayOf('part', part.id)) {
      edge(offAt.get(q), offAt.get(part.id)); // W1
      edge(backAt.get(part.id), backAt.get(q));
      for (const j of part.joints) {
        const joint = kart.items[j];
        if (!joint) continue;
        edge(itemAt.get(joint.id), backAt.get(q)); // W3
        edge(lookAt.get(joint.id), backAt.get(q)); // W6
      }
    }
    for (const j of part.joints) {
      const joint = kart.items[j];
      if (joint) edge(backAt.get(part.id), itemAt.get(joint.id)); // W3
    }
  }
  const whole = items.filter(i => i.complete);
  const openedLate = new Set(Object.values(kart.items).flatMap(i => (i.complete ? i.opens : [])));
  for (const item of items) {
    edge(itemAt.get(item.id), lookAt.get(item.id)); // W6
    for (const p of found.wayOf('wish', item.id)) {
      for (const step of [itemAt.get(item.id), lookAt.get(item.id)]) {
        edge(offAt.get(p), step); // W2
        edge(step, backAt.get(p));
      }
    }
    for (const p of who.parts.get(item.id) ?? []) {
      if (!found.off.has(p)) continue;
      edge(backAt.get(p), itemAt.get(item.id)); // W4
      for (const j of kart.parts[p]?.joints ?? []) {
        const joint = kart.items[j];
        if (joint && !item.joint && !item.opens.includes(j)) edge(itemAt.get(joint.id), itemAt.get(item.id));
      }
    }
    for (const d of item.disturbs) {
      const other = kart.items[d];
      if (!other) continue;
      edge(itemAt.get(item.id), itemAt.get(other.id)); // W4
      for (const j of item.opens) {
        const joint = kart.items[j];
        if (joint && !other.joint && !other.opens.includes(j)) edge(itemAt.get(joint.id), itemAt.get(other.id));
      }
    }
    for (const j of item.opens) {
      const joint = kart.items[j];
      if (joint) edge(itemAt.get(item.id), itemAt.get(joint.id)); // W4
      const holds = kart.joints[j]?.part;
      if (holds !== undefined && !who.mayNeedOff(item.id).has(holds)) edge(backAt.get(holds), itemAt.get(item.id)); // W8
    }
    if (!item.when.some(w => w.on === 'fitted') || !renewed.has(item.part)) continue;
    if (!who.mayNeedOff(item.id).has(item.part)) edge(backAt.get(item.part), itemAt.get(item.id)); // W7
    for (const other of items)
      if (other.part === item.part && replacesPart(other) && !failure(other))
        edge(itemAt.get(other.id), itemAt.get(item.id));
  }
  const first = [...backAt.values()];
  for (const i of items) {
    if (i.complete || openedLate.has(i.id)) continue;
    const at = itemAt.get(i.id);
    if (at !== undefined && (i.joint || i.needsOff.length > 0 || i.disturbs.length > 0 || i.opens.length > 0))
      first.push(at);
  }
  for (const w of whole) for (const one of first) edge(one, itemAt.get(w.id)); // W5
  for (const [part, { id }] of failed) {
    const anew = backAt.get(part) ?? itemAt.get(id);
    for (const other of items) {
      if (other.part !== part || replacesPart(other) || who.mayNeedOff(other.id).has(part)) continue;
      const at = itemAt.get(other.id);
      if (anew !== undefined && at !== undefined && !waitsFor(before, anew, at)) edge(anew, at); // W7
    }
  }
  return { jobs, before: before.map(s => [...s]), off: found.off };
};

/** Whether a job comes after another whatever else is decided. */
function waitsFor(before: readonly ReadonlySet<number>[], job: number, other: number): boolean {
  const seen = new Set([job]);
  for (const one of seen) for (const first of before[one] ?? []) seen.add(first); // what is added while it runs is run through too
  return seen.has(other);
}

/** Where each job stands, by what it is done to. */
function placesOf(jobs: readonly Job[]) {
  const [offAt, backAt] = [new Map<PartId, number>(), new Map<PartId, number>()];
  const [itemAt, lookAt] = [new Map<ItemId, number>(), new Map<ItemId, number>()];
  jobs.forEach((job, n) => {
    if ('part' in job) (job.is === 'take-off' ? offAt : backAt).set(job.part.id, n);
    else (job.is === 'item' ? itemAt : lookAt).set(job.item.id, n);
  });
  return { offAt, backAt, itemAt, lookAt };
}
