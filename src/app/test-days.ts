/** The record as tests: the runs of a day on one track, with what the set-up had otherwise than at the first, and their laps. */
import type { Fact } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { isComparable, type LapSession, lapSessions, type TestLap, type TestRun } from '../laps/index.ts';
import { amountOf, settingName } from '../prep/index.ts';

export type DayRun = TestRun & { readonly session: LapSession; readonly outing: number };
export type TestDay = {
  readonly day: string; // '2026-05-12'
  readonly event: string | null;
  readonly track: string | null;
  readonly wet: boolean;
  readonly runs: readonly DayRun[];
};

/** Outings of one day on one track, dry and wet apart, oldest first. */
export function testDays(facts: readonly Fact[], kart: Kart): readonly TestDay[] {
  const days = new Map<string, [LapSession, ...LapSession[]]>();
  for (const session of lapSessions(facts)) {
    if (session.times.length === 0) continue;
    const { at, track, wet } = session;
    const key = JSON.stringify([at.slice(0, 10), track, wet ?? false]);
    const there = days.get(key);
    if (there) there.push(session);
    else days.set(key, [session]);
  }
  const written = writtenSettings(facts, kart);
  return [...days.values()].map(sessions => {
    const [{ at, event, track, wet }] = sessions;
    return { day: at.slice(0, 10), event, track, wet: wet ?? false, runs: runsOf(sessions, written) };
  });
}

/** Every change that some run of the day had. */
export const changesIn = ({ runs }: TestDay): readonly string[] => [...new Set(runs.flatMap(({ on }) => on))];

type Written = { readonly name: string; readonly value: string; readonly resolution: number; readonly at: string };

/** Set-ups written down and dimensions that were set, under the names of the set-up sheet; struck ones are not among them. */
function writtenSettings(facts: readonly Fact[], kart: Kart): readonly Written[] {
  const struck = new Set(facts.flatMap(fact => (fact.kind === 'struck' ? [fact.fact] : [])));
  return facts
    .filter(({ id }) => !struck.has(id))
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.seq - b.seq))
    .flatMap((fact): readonly Written[] => {
      const { at } = fact;
      if (fact.kind === 'set-up')
        return Object.entries(fact.changes).map(([name, value]) => ({ name, value, resolution: 0, at }));
      if (fact.kind !== 'set' || fact.reading === undefined) return [];
      const { text, resolution = 0 } = fact.reading;
      return [{ name: settingName(kart, fact.item), value: text, resolution, at }];
    });
}

type Standing = ReadonlyMap<string, string>; // by setting

/** Against the first run of the day: each other value of a setting is a change. */
function runsOf(sessions: readonly LapSession[], written: readonly Written[]): readonly DayRun[] {
  const known = levelsIn(written.filter(({ at }) => at <= (sessions.at(-1)?.at ?? '')));
  const standing = sessions.map(({ at }) => standingAt(known, at));
  const base = baseOf(standing);
  return sessions.flatMap((session, n) => {
    const on = [...(standing[n] ?? [])].flatMap(([name, value]) =>
      base.get(name) === value ? [] : [`${name} ${value}`],
    );
    return [...new Set(session.times.map(lap => lap.outing ?? 1))].map(outing => {
      const times = session.times.filter(lap => (lap.outing ?? 1) === outing);
      return { session, outing, on, laps: testLaps(times) };
    });
  });
}

/** One spelling a setting and one text a value: 1360 mm and 136 cm are one, and so are two readings that the instrument cannot tell apart. */
function levelsIn(written: readonly Written[]): readonly Written[] {
  const levels = new Map<string, Written[]>();
  return written.map(one => {
    const known = levels.get(one.name.trim().toLowerCase()) ?? [];
    levels.set(one.name.trim().toLowerCase(), known);
    const same = known.find(each => isSame(each, one));
    if (same === undefined) known.push({ ...one, name: known[0]?.name ?? one.name });
    return { ...one, ...(same ?? known.at(-1)), at: one.at };
  });
}

function isSame(a: Written, b: Written): boolean {
  const [one, other] = [amountOf(a.value), amountOf(b.value)];
  if (one === undefined || other === undefined || one.of !== other.of) return a.value.trim() === b.value.trim();
  const apart = Math.abs(one.si - other.si);
  return apart <= Math.max(a.resolution, b.resolution, 1e-9 * Math.abs(one.si));
}

const standingAt = (known: readonly Written[], until: string): Standing =>
  new Map(known.flatMap(({ name, value, at }) => (at <= until ? [[name, value] as const] : [])));

/** What a setting was before the book first names it nobody wrote down: then what it went back to at the end of the day. */
function baseOf(standing: readonly Standing[]): Standing {
  const base = new Map<string, string>();
  for (const name of new Set(standing.flatMap(each => [...each.keys()]))) {
    const values = standing.flatMap(each => each.get(name) ?? []);
    const [first, last] = [values[0], values.at(-1)];
    const value = standing[0]?.get(name) ?? (last === first ? undefined : last);
    if (value !== undefined) base.set(name, value);
  }
  return base;
}

/** A way out ages the track; a lap with a doubt or a mark was driven, and neither is compared. A way in is the end of both. */
function testLaps(times: LapSession['times']): readonly TestLap[] {
  const laps = times
    .filter(({ way }) => way !== 'in')
    .map((lap): TestLap => ({ time: lap.time, out: lap.way === 'out', marked: !isComparable(lap) }));
  // A stopwatch starts with the first full lap: the way out was driven all the same.
  return laps[0]?.out ? laps : [{ time: Number.NaN, out: true }, ...laps];
}
