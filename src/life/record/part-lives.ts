/**
 * The lives of all parts of a kind, from the books of the karts they were on: each with its hours, or laps, when it went
 * on, came off, was moved, failed or was found out.
 *
 * - A life ends when another one is fitted in its place. It ended by failing when the part failed while it ran, at the age
 *   it had then; a joint of it that let go says nothing of the part. It ended by a find when a defect of safety or reliability found
 *   on the part stood unmended then, or an item of the part (not the making of a joint) had last failed: somewhere between
 *   the last good look at it and the find. Else it was replaced fine.
 * - A defect that was mended is no end of a life: the part lives on, repaired (see ../trend).
 * - Hours carried in when it was fitted were not watched here: they count as outlived, no more.
 * - A part that lies beside the kart, or was moved to another, still runs as far as its record goes; on the other kart its next leg
 *   begins where this one ends.
 */
import { type Age, type Fact, type FactOf, inOrder, struckFacts } from '../../book/index.ts';
import type { Kart, PartId } from '../../kart/index.ts';
import type { Life } from '../life.ts';

/** What ages are counted in: one for a whole record. */
export type Exposure = 'hours' | 'laps';

export type KartBook = { readonly kart: Kart; readonly facts: readonly Fact[] };

export type PartLife = Life & {
  readonly part: PartId;
  readonly kart: string;
  readonly serial?: string;
  readonly now: boolean; // the one in that place today, on it or beside it
  /** The facts it rests on: fitted, last good look, found, taken off. */
  readonly facts: readonly string[];
};

/**
 * @param books of one owner's karts; the facts of each are those of that kart alone
 * @param kind as the kart file names it
 */
export function livesOf(books: readonly KartBook[], kind: string, exposure: Exposure = 'hours'): readonly PartLife[] {
  return books.flatMap(({ kart, facts }) => {
    const parts = Object.values(kart.parts).filter(part => part.kind === kind);
    if (parts.length === 0) return [];
    const struck = struckFacts(facts);
    const counted = inOrder(facts).filter(fact => fact.kind !== 'struck' && !struck.has(fact.id));
    return parts.flatMap(({ id }) => walk(kart, id, counted, exposure));
  });
}

type Bad = {
  readonly fact: string;
  readonly age: number;
  readonly fineAt: number;
  readonly looked: readonly string[];
  readonly ran?: true; // it failed as it ran, at that very age
};

/** One part in its place, as the facts go by. */
type Leg = {
  readonly from: number;
  readonly serial?: string;
  readonly begun: readonly string[];
  readonly fineAt: number; // age at the last good look
  readonly looked: readonly string[]; // the fact of it
  readonly bad: ReadonlyMap<string, Bad>; // by defect or item, as long as it stands
  readonly moved?: string | undefined; // the fact that took it to another kart
};

function walk(kart: Kart, part: PartId, facts: readonly Fact[], exposure: Exposure): readonly PartLife[] {
  const lives: PartLife[] = [];
  const amount = ({ minutes, laps }: Age): number => (exposure === 'hours' ? minutes / 60 : laps);
  let used: Age = { minutes: 0, laps: 0 };
  let on = true;
  let leg: Leg = fresh(0, undefined, []);
  const age = (): number => amount(used);
  const own = itemsOf(kart, part);
  for (const fact of facts) {
    if (fact.kind === 'ran' && on) used = { minutes: used.minutes + fact.minutes, laps: used.laps + (fact.laps ?? 0) };
    else if (fact.kind === 'found' && fact.part === part && (fact.item === undefined || own.has(fact.item)))
      leg = found(leg, fact, age());
    else if (fact.kind === 'failed' && fact.part === part && fact.joint === undefined)
      leg = failed(leg, fact, fact.afterMinutes === undefined || exposure === 'laps' ? age() : fact.afterMinutes / 60);
    else if (fact.kind === 'mended') leg = { ...leg, bad: without(leg.bad, fact.found) };
    else if (fact.kind === 'checked' && own.has(fact.item)) leg = checked(leg, fact, age());
    else if ((fact.kind === 'taken off' || fact.kind === 'moved') && fact.part === part) {
      on = false;
      if (fact.kind === 'moved') leg = { ...leg, moved: fact.id };
    } else if (fact.kind === 'fitted' && fact.part === part) {
      if (fact.fresh) lives.push(...closed(leg, age(), { part, kart: kart.name, now: false }, fact.id));
      const carried = { minutes: fact.carriedMinutes, laps: fact.carriedLaps };
      const before = fact.fresh ? { minutes: 0, laps: 0 } : used;
      used = { minutes: carried.minutes ?? before.minutes, laps: carried.laps ?? before.laps };
      if (fact.fresh) leg = fresh(age(), fact.serial, [fact.id]);
      // Hours put right by hand: what went before was not watched, or not right.
      else if (age() !== amount(before)) leg = { ...leg, from: age(), fineAt: age(), begun: [...leg.begun, fact.id] };
      leg = { ...leg, moved: undefined };
      on = true;
    }
  }
  return [...lives, ...closed(leg, age(), { part, kart: kart.name, now: true })];
}

const fresh = (from: number, serial: string | undefined, begun: readonly string[]): Leg => ({
  from,
  ...(serial === undefined ? {} : { serial }),
  begun,
  fineAt: from,
  looked: [],
  bad: new Map(),
});

/** Items whose fail says that the part itself is done; a joint that had come loose says that it was not made. */
const itemsOf = (kart: Kart, part: PartId): ReadonlySet<string> =>
  new Set(Object.values(kart.items).flatMap(item => (item.part === part && !item.joint ? [item.id] : [])));

function found(leg: Leg, fact: FactOf<'found'>, age: number): Leg {
  if (fact.grade !== 'safety' && fact.grade !== 'reliability') return leg;
  const { fineAt, looked } = leg;
  return { ...leg, bad: new Map(leg.bad).set(fact.id, { fact: fact.id, age, fineAt, looked }) };
}

/** Said to be older or younger than the record has it: the person who said it knew of runs that it lacks, or has too many. */
function failed(leg: Leg, { id }: FactOf<'failed'>, age: number): Leg {
  const { fineAt, looked } = leg;
  return { ...leg, bad: new Map(leg.bad).set(id, { fact: id, age, fineAt, looked, ran: true }) };
}

function checked(leg: Leg, fact: FactOf<'checked'>, age: number): Leg {
  if (fact.result === 'not possible' || fact.secondLook) return leg;
  const { fineAt, looked } = leg;
  if (fact.result === 'fail')
    return { ...leg, bad: new Map(leg.bad).set(fact.item, { fact: fact.id, age, fineAt, looked }) };
  return { ...leg, fineAt: age, looked: [fact.id], bad: without(leg.bad, fact.item) };
}

function without<T>(map: ReadonlyMap<string, T>, key: string): ReadonlyMap<string, T> {
  if (!map.has(key)) return map;
  const rest = new Map(map);
  rest.delete(key);
  return rest;
}

/** Nothing where the part has not run a minute since it was watched: that says nothing. */
function closed(
  leg: Leg,
  age: number,
  where: { readonly part: PartId; readonly kart: string; readonly now: boolean },
  by?: string,
): readonly PartLife[] {
  const base = {
    ...where,
    ...(leg.serial === undefined ? {} : { serial: leg.serial }),
    ...(leg.from > 0 ? { from: leg.from } : {}),
  };
  const [first] = [...leg.bad.values()].sort((a, b) => a.age - b.age);
  if (first?.ran) {
    // No running on record before it failed: nobody knows how long it lasted, and fine it was not.
    if (!(first.age > leg.from)) return [];
    return [{ ...base, fate: 'failed', age: first.age, facts: [...leg.begun, first.fact, ...(by ? [by] : [])] }];
  }
  // Found out before it ran: it was bad when it came, and the hours say nothing of it.
  if (first && first.age > leg.from) {
    const facts = [...leg.begun, ...first.looked, first.fact, ...(by ? [by] : [])];
    // A good look at the same hours did not see it: then the hours before are open.
    const fineAt = first.fineAt < first.age ? first.fineAt : leg.from;
    return [{ ...base, fate: 'found', age: first.age, fineAt, facts }];
  }
  if (!(age > leg.from) && !where.now) return [];
  const end = leg.moved ?? by;
  const facts = [...leg.begun, ...leg.looked, ...(end ? [end] : [])];
  return [{ ...base, fate: by && !leg.moved ? 'replaced' : 'running', age, now: where.now && !leg.moved, facts }];
}
