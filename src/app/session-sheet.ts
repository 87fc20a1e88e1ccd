/** One session on one page: its laps, the conditions, pressures, temperatures, the set-up, and what changed since the session before. */
import type { FactOf } from '../book/index.ts';
import type { LapSession } from '../laps/index.ts';
import { type Difference, type Outing, type Pressures, type Setting, setupSheet } from '../prep/index.ts';
import { type At, given } from './asking.ts';
import { type OutingWithLaps, outingsOf } from './outings.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';
import { suggestion } from './words.ts';

export type SessionSheet = {
  readonly kart: string;
  readonly invented: boolean;
  readonly session: Outing;
  readonly ran: boolean; // false: no run was written down, and its minutes are those of its laps
  readonly laps: LapSession | null; // null: none came into the book
  readonly weather: Pick<
    FactOf<'weather'>,
    'at' | 'celsius' | 'pascal' | 'pressureIs' | 'humidity' | 'trackCelsius' | 'note'
  > | null;
  readonly tyres: string | null;
  readonly cold: Pressures;
  readonly hot: Pressures;
  readonly treads: FactOf<'treads probed'>['celsius'] | null; // °C
  readonly plug: FactOf<'plug read'>['says'] | null;
  readonly litres: number | null; // used
  readonly settings: readonly Setting[];
  readonly before: Outing | null;
  /** Of the set-up, since the session before. */
  readonly changed: readonly Difference[];
  /** Written down between the session before and the one after. */
  readonly notes: readonly string[];
};

/** Of the newest session, or the newest that goes by the name or has the id. */
export async function sessionSheetOf(
  queries: Queries,
  name: string,
  { session, ...at }: At & { readonly session?: string } = {},
): Promise<SessionSheet> {
  const kart = await queries.kart(name, at);
  const facts = (await queries.facts(name, at)).flatMap(({ fact, struck }) => (struck ? [] : [fact]));
  const sessions = outingsOf(kart, facts);
  const place = placeOf(sessions, session);
  const one = sessions[place] as OutingWithLaps;
  const [before, after] = [sessions[place - 1]?.outing, sessions[place + 1]?.outing];
  const { outing, laps, ran, weather, tyres, cold, hot, treads, plug, fuel } = one;
  const then = facts.filter(fact => fact.at <= outing.at);
  const against = before && { label: before.label, at: before.at };
  const { settings, differences } = setupSheet(kart, then, given({ against }));
  const between = facts.filter(fact => fact.at > (before?.at ?? '') && (after === undefined || fact.at < after.at));
  return {
    ...{ kart: name, invented: kart.invented, session: outing, ran, laps },
    weather: weather ? weatherOf(weather) : null,
    ...{ tyres: tyres?.set ?? null, cold, hot, treads: treads?.celsius ?? null },
    ...{ plug: plug?.says ?? null, litres: fuel?.litres ?? null },
    ...{ settings, before: before ?? null, changed: before ? differences : [] },
    notes: between.flatMap(fact => (fact.kind === 'note' ? [fact.text] : [])),
  };
}

/** By its whole name, with or without the mark between event and session, or by one of the two. */
export const goesBy = (label: string, wanted: string): boolean => {
  const name = label.toLowerCase();
  return [name, name.replace(' › ', ' '), ...name.split(' › ')].includes(wanted.trim().toLowerCase());
};

function placeOf(sessions: readonly OutingWithLaps[], name: string | undefined): number {
  const wanted = name?.trim().toLowerCase();
  const place = sessions.findLastIndex(
    ({ outing: { label, fact } }) => wanted === undefined || fact === wanted || goesBy(label, wanted),
  );
  if (place >= 0) return place;
  const known = [...new Set(sessions.map(({ outing }) => outing.label))];
  throw new Refusal([
    refuse(
      'unknown event',
      'session',
      name === undefined
        ? 'Expected a session, and nothing has run.'
        : `Expected a session of the record, got "${name}".`,
      known.length === 0
        ? 'Bring in laps, or write down a run, first.'
        : `The last sessions: ${known.slice(-5).join(', ')}.${suggestion(name ?? '', known)}`,
    ),
  ]);
}

function weatherOf(fact: FactOf<'weather'>): SessionSheet['weather'] {
  const { at, celsius, pascal, pressureIs, humidity, trackCelsius, note } = fact;
  return { at, ...given({ celsius, pascal, pressureIs, humidity, trackCelsius, note }) };
}
