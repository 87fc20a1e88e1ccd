/** What is due before the next event, and why: every lapse there is, with a look ahead over the event's running. */
import type { KartEvent, State } from '../book/index.ts';
import { GRADES, type Kart, replacesPart, SYSTEMS } from '../kart/index.ts';
import { type Horizon, type Standing, standings } from '../life/index.ts';
import { placeOnPath } from './load-path.ts';
import { mendsDue } from './mend.ts';
import type { Due } from './model.ts';

/** The event under way or the first to come: the earliest whose end is not before `now`. */
export const nextEvent = (state: State, now: string): KartEvent | undefined =>
  Object.values(state.events)
    .filter(e => e.until >= now)
    .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0))[0];

/** @param times how many such events to look over, for what lies open anyway */
export const horizonOver = (now: string, event: KartEvent | undefined, times = 1): Horizon =>
  event
    ? {
        now,
        event: event.event,
        minutes: event.runMinutes * times,
        laps: event.runLaps * times,
        until: times === 1 ? event.until : addDays(event.until, 28 * (times - 1)), // four weeks between events, common practice
      }
    : { now };

const addDays = (at: string, days: number): string => new Date(Date.parse(at) + days * 86_400_000).toISOString();

/** In the order that never changes: grade, then system as one walks round; after an impact what the blow went through, from the wheel on. */
export const dueList = (kart: Kart, state: State, at: { readonly now: string; readonly event?: KartEvent }): Due[] =>
  dueWithin(kart, state, horizonOver(at.now, at.event));

export const dueWithin = (kart: Kart, state: State, horizon: Horizon): Due[] =>
  standings(kart, state, horizon)
    .filter(s => !s.holds)
    .map(s => toDue(s, pathOf(kart, state, s)))
    .concat(mendsDue(kart, state))
    .sort(byUrgency);

/** An impact is the one fact that its items rest on. */
function pathOf(kart: Kart, state: State, { cause, facts, item }: Standing): number | undefined {
  if (cause !== 'impact') return undefined;
  const hit = state.impacts.find(one => facts.includes(one.fact));
  return hit && placeOnPath(kart.parts[item.part], hit.corner);
}

const toDue = (s: Standing, path: number | undefined): Due => ({
  item: s.item.id,
  title: s.item.title,
  part: s.item.part,
  system: s.item.system,
  grade: s.item.grade,
  why: s.why,
  cause: s.cause ?? 'never',
  facts: s.facts,
  ahead: s.ahead,
  ...(replacesPart(s.item) ? { renews: true } : {}),
  ...(path === undefined ? {} : { path }),
});

export const byUrgency = (a: Due, b: Due): number =>
  GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade) ||
  Number(b.cause === 'impact') - Number(a.cause === 'impact') ||
  pathRank(a) - pathRank(b) ||
  SYSTEMS.indexOf(a.system) - SYSTEMS.indexOf(b.system);

/** What no blow leads through comes after all that it does. */
export const pathRank = ({ path }: Due): number => path ?? Number.MAX_SAFE_INTEGER;
