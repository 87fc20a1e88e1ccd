/**
 * How each item of a kart stands against the record: holds, has lapsed and why, failed, was never seen. No look is
 * taken at what comes after unless a horizon is given; then what would lapse during it counts as lapsed `ahead`.
 * Unknown falls on the careful side: an item nobody ever passed does not hold. What was done afresh and has not run since
 * is not asked for again ahead of an event longer than its life: doing it once more would change nothing.
 */
import { type Defect, type Impact, type Mark, partAge, type Run, type State } from '../book/index.ts';
import {
  changesKart,
  disturbersOf,
  type Item,
  type ItemId,
  type JointId,
  type Kart,
  type Lapse,
  type PartId,
  replacesPart,
} from '../kart/index.ts';

export const CAUSES = [
  'part off',
  'joint open',
  'failed',
  'asked',
  'impact',
  'disturbed',
  'fitted',
  'wet',
  'first run',
  'event',
  'session',
  'after session',
  'hours',
  'laps',
  'days',
  'never',
  'not possible',
  'second look',
] as const;
export type Cause = (typeof CAUSES)[number];

/** What is still to come: run-minutes, laps, and the instant (RFC 3339) up to which it must hold. */
export type Horizon = {
  readonly now: string;
  readonly event?: string;
  readonly minutes?: number;
  readonly laps?: number;
  readonly until?: string;
  /** What comes before it: running that will have been done, and the instant at which it begins. */
  readonly before?: { readonly minutes: number; readonly laps: number; readonly at: string };
};

export type Standing = {
  readonly item: Item;
  readonly holds: boolean;
  readonly ahead: boolean; // holds now, lapses within the horizon
  readonly cause?: Cause;
  readonly why: string;
  readonly facts: readonly string[];
};

const later = (a: Mark | undefined, b: Mark | undefined): Mark | undefined => (!a ? b : !b ? a : b.pos > a.pos ? b : a);
const day = (at: string): string => at.slice(0, 10);
const hours = (minutes: number): string => `${(minutes / 60).toFixed(1)} h`;
const DAY_MS = 86_400_000;

/** The fact that last opened this joint, if it has not been made since; undefined when it is made or was never touched. */
export const openedBy = (kart: Kart, state: State, id: JointId): Mark | undefined => {
  const joint = kart.joints[id];
  if (!joint) return undefined;
  const made = state.joints[id]?.made;
  const part = state.parts[joint.part];
  let opened = later(part?.off, state.joints[id]?.loosened);
  for (const opener of disturbersOf(kart).openers.get(id) ?? []) opened = later(opened, lastDone(kart, state, opener));
  return opened && opened.pos > (made?.pos ?? -1) ? opened : undefined;
};

/** When this item last changed the kart. */
const lastDone = (kart: Kart, state: State, id: ItemId): Mark | undefined => {
  const item = kart.items[id];
  const seen = state.items[id];
  if (!item || !seen) return undefined;
  return later(seen.set, changesKart(item) ? seen.pass : undefined);
};

/** The last thing that disturbed the item, whether or not it was checked since. */
export const disturbedBy = (kart: Kart, state: State, id: ItemId): { mark: Mark; what: string } | undefined => {
  const who = disturbersOf(kart);
  let found: { mark: Mark; what: string } | undefined;
  const consider = (mark: Mark | undefined, what: string): void => {
    if (mark && (!found || mark.pos > found.mark.pos)) found = { mark, what };
  };
  for (const p of who.parts.get(id) ?? []) {
    consider(state.parts[p]?.off, `${p} was taken off`);
    consider(state.parts[p]?.back, `${p} was put back`);
  }
  const own = kart.items[id]?.part;
  if (own !== undefined && who.whileOff.get(own)?.includes(id)) consider(state.parts[own]?.off, `${own} was taken off`);
  for (const i of who.items.get(id) ?? []) consider(lastDone(kart, state, i), `${kart.items[i]?.title ?? i} was set`);
  consider(state.items[id]?.set, 'it was set');
  for (const d of state.defects) if (d.item === id) consider(d.mended, `"${d.defect}" was mended`);
  return found;
};

export const standings = (kart: Kart, state: State, horizon: Horizon): Standing[] =>
  Object.values(kart.items).map(item => standing(kart, state, item, horizon));

export const standing = (kart: Kart, state: State, item: Item, horizon: Horizon): Standing => {
  const seen = state.items[item.id];
  const pass = seen?.pass;
  const lapsed = (cause: Cause, why: string, marks: readonly (Mark | undefined)[] = [], ahead = false): Standing => ({
    item,
    holds: false,
    ahead,
    cause,
    why: why.charAt(0).toUpperCase() + why.slice(1),
    facts: marks.flatMap(m => (m ? [m.fact] : [])),
  });

  if (item.joint) {
    const opened = openedBy(kart, state, item.joint);
    if (opened)
      return lapsed('joint open', `${item.part}: opened on ${day(opened.at)} and not made since.`, [opened, pass]);
  }
  const fail = seen?.fail;
  if (fail && fail.pos > (pass?.pos ?? -1)) return lapsed('failed', `Failed on ${day(fail.at)}: ${fail.why}.`, [fail]);

  const broke = failedSince(state, item, pass);
  if (broke) {
    const { at, defect, mended } = broke;
    const since = mended ? ` Since then: ${mended.how}; not looked at again.` : '';
    return lapsed('failed', `${item.part} failed while it ran on ${day(at)}: ${defect}.${since}`, [broke, pass]);
  }
  const asked = seen?.asked;
  if (asked && asked.pos > (pass?.pos ?? -1))
    return lapsed('asked', `Asked for on ${day(asked.at)}: ${asked.why}.`, [asked]);

  const hit = after(state.impacts, pass).find(one => reaches(kart, item, one));
  if (hit && item.when.some(w => w.on === 'impact'))
    return lapsed('impact', `A ${hit.severity} at the ${hit.corner} on ${day(hit.at)}, not looked at since.`, [hit]);

  const not = seen?.notPossible;
  if (not && not.pos > (pass?.pos ?? -1))
    return lapsed('not possible', `Could not be done on ${day(not.at)}: ${not.why}.`, [not]);

  const disturbed = disturbedBy(kart, state, item.id);
  if (disturbed && disturbed.mark.pos > (pass?.pos ?? -1))
    return lapsed('disturbed', `${disturbed.what} on ${day(disturbed.mark.at)}; not checked since.`, [
      disturbed.mark,
      pass,
    ]);

  const runs = after(state.runs, pass);
  const fresh = state.parts[item.part]?.fresh;
  const byUse = item.when.every(w => w.on === 'hours' || w.on === 'laps' || w.on === 'days');
  if (!pass && !(fresh && byUse)) {
    // What only running shows (a hot pressure) cannot be done on a kart that has not run.
    if (state.runs.length === 0 && item.when.every(w => w.on === 'after session' || w.on === 'first run'))
      return { item, holds: true, ahead: false, why: 'To be done once it has run.', facts: [] };
    return lapsed('never', 'No record that it was ever passed.');
  }

  let soon: Standing | undefined;
  for (const w of item.when) {
    const found = lapse(kart, state, item, w, runs, horizon);
    if (!found) continue;
    const result = lapsed(w.on, found.why, [...found.marks, pass], found.ahead);
    if (!found.ahead) return result;
    soon ??= result;
  }
  if (soon) return soon;
  if (item.secondLook && pass && !pass.secondLook)
    return lapsed('second look', `Passed on ${day(pass.at)} by ${pass.by}; nobody has taken the second look.`, [pass]);
  return {
    item,
    holds: true,
    ahead: false,
    why: pass ? `Passed on ${day(pass.at)} by ${pass.by}.` : 'Within its life.',
    facts: pass ? [pass.fact] : [],
  };
};

/** The part of an item failed since it last passed. Replacing it is done with that; every other look at the part is not. */
const failedSince = (state: State, item: Item, pass: Mark | undefined): Defect | undefined =>
  item.joint
    ? undefined
    : after(state.defects, pass).findLast(d => d.failed && d.part === item.part && !(d.mended && replacesPart(item)));

type Found = { readonly why: string; readonly marks: readonly (Mark | undefined)[]; readonly ahead: boolean };

const lapse = (
  kart: Kart,
  state: State,
  item: Item,
  w: Lapse,
  runs: readonly Run[],
  horizon: Horizon,
): Found | undefined => {
  const pass = state.items[item.id]?.pass;
  const part = state.parts[item.part];
  const now = (why: string, ...marks: (Mark | undefined)[]): Found => ({ why, marks, ahead: false });
  switch (w.on) {
    case 'event': {
      const other = runs.find(r => r.event !== horizon.event);
      return other && now(`Due each event: it has run at ${other.event} since the last pass.`, other);
    }
    case 'session':
    case 'after session': {
      const first = runs[0];
      if (!first) return undefined;
      return now(
        w.on === 'session'
          ? 'Due before every session: it has run since the last pass.'
          : 'Due after a session: it has run since the last pass.',
        first,
      );
    }
    case 'first run': {
      const first = runs.find(r => isFirst(state, item, r));
      return first && now(`Due after the first run: it ran at ${first.event} on ${day(first.at)}.`, first);
    }
    case 'wet': {
      const wet = runs.find(r => r.wet);
      return wet && now(`It ran in the wet on ${day(wet.at)}.`, wet);
    }
    case 'fitted': {
      const fresh = part?.fresh;
      if (!fresh || fresh.pos < (pass?.pos ?? -1)) return undefined;
      // An item done with the part off was done before it went on: it counts if done since the old one came off.
      const from = part?.freshFrom;
      if (pass && from && pass.pos > from.pos && disturbersOf(kart).mayNeedOff(item.id).has(item.part))
        return undefined;
      return now(`Another ${item.part} was fitted on ${day(fresh.at)}.`, fresh);
    }
    case 'hours': {
      const limit = w.limit * 60;
      const used = usedSince(state, item.part, pass).minutes;
      if (used >= limit) return now(`${hours(used)} of running since it was last done; limit ${w.limit} h.`);
      const coming = horizon.minutes ?? 0;
      const by = used + (horizon.before?.minutes ?? 0);
      return by > 0 && by + coming > limit
        ? {
            why: `${hours(by)} run${then(horizon)}; the ${hours(coming)} to come would pass its ${w.limit} h.`,
            marks: [],
            ahead: true,
          }
        : undefined;
    }
    case 'laps': {
      const used = usedSince(state, item.part, pass).laps;
      if (used >= w.limit) return now(`${used} laps since it was last done; limit ${w.limit}.`);
      const coming = horizon.laps ?? 0;
      const by = used + (horizon.before?.laps ?? 0);
      return by > 0 && by + coming > w.limit
        ? {
            why: `${by} laps run${then(horizon)}; the ${coming} to come would pass its ${w.limit}.`,
            marks: [],
            ahead: true,
          }
        : undefined;
    }
    case 'days': {
      const from = later(pass, part?.fresh);
      if (!from) return undefined;
      const age = (t: string): number => (Date.parse(t) - Date.parse(from.at)) / DAY_MS;
      if (age(horizon.now) >= w.limit) return now(`Last done on ${day(from.at)}; limit ${w.limit} days.`);
      const until = horizon.until ?? horizon.now;
      return age(horizon.before?.at ?? horizon.now) >= 1 && age(until) > w.limit
        ? {
            why: `Last done on ${day(from.at)}; its ${w.limit} days run out before ${day(until)} is over.`,
            marks: [],
            ahead: true,
          }
        : undefined;
    }
    case 'impact':
    case 'disturbed':
      return undefined; // both are looked at for every item, before the clocks
  }
};

const then = ({ before }: Horizon): string => (before ? ' by then' : '');

/** Run-minutes and laps since the item was last done, or since another part went on with what it had run before. */
const usedSince = (state: State, part: PartId, pass: Mark | undefined): { minutes: number; laps: number } => {
  const fresh = state.parts[part]?.fresh;
  if (pass && pass.pos > (fresh?.pos ?? -1))
    return { minutes: state.minutes - pass.minutes, laps: state.laps - pass.laps };
  return partAge(state, part);
};

/** What came after a mark; all is in order, so look from the back. */
const after = <T extends Mark>(all: readonly T[], mark: Mark | undefined): readonly T[] => {
  if (!mark) return all;
  let i = all.length;
  while (i > 0 && (all[i - 1]?.pos ?? -1) > mark.pos) i--;
  return all.slice(i);
};

/** Is this the first run of its event, or the first since the item's part was put on, or its joint made? */
const isFirst = (state: State, item: Item, run: Run): boolean => {
  const before = state.runs[state.runs.indexOf(run) - 1];
  if (!before || before.event !== run.event) return true;
  const touched = [
    state.parts[item.part]?.back,
    item.joint ? state.joints[item.joint]?.made : undefined,
    state.items[item.id]?.set,
  ];
  return touched.some(m => m && m.pos > before.pos && m.pos < run.pos);
};

/** A knock is looked for at its own corner and on what belongs to no corner; a hit or crash reaches everything. */
const reaches = (kart: Kart, item: Item, impact: Impact): boolean => {
  if (impact.severity !== 'knock') return true;
  const corner = kart.parts[item.part]?.corner ?? 'whole';
  return corner === 'whole' || impact.corner === 'whole' || corner === impact.corner;
};
