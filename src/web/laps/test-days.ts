/** The record as tests: the sessions of a day at one track are runs, and what the set-up had otherwise than at the first is on the kart. */
import type { Fact, FactOf } from '../../book/index.ts';
import { isComparable, type LapSession, lapSessions, type TestLap, type TestRun } from '../../laps/index.ts';
import type { Snapshot } from '../session.ts';

export type DayRun = {
  readonly session: LapSession;
  /** Changes against the first run, as the set-up in the record has them: 'rear track 1400 mm'. */
  readonly on: readonly string[];
};
export type TestDay = { readonly key: string; readonly name: string; readonly runs: readonly DayRun[] };

/** Newest first; a day with one session tells nothing of a change. */
export function testDays({ facts: lines }: Snapshot): readonly TestDay[] {
  const facts = lines.flatMap(({ fact, struck }) => (struck === null ? [fact] : []));
  const groups = new Map<string, LapSession[]>();
  for (const session of lapSessions(facts)) {
    if (session.times.length === 0) continue;
    const key = [session.event ?? session.at.slice(0, 10), session.track ?? ''].join(', ').replace(/, $/, '');
    groups.set(key, [...(groups.get(key) ?? []), session]);
  }
  const changes = facts.filter((fact): fact is FactOf<'set-up'> => fact.kind === 'set-up').toSorted(byTime);
  return [...groups]
    .filter(([, sessions]) => sessions.length > 1)
    .map(([key, sessions]) => ({ key, name: key, runs: runsOf(sessions, changes) }))
    .toReversed();
}

const byTime = (a: Fact, b: Fact): number => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.seq - b.seq);

function runsOf(sessions: readonly LapSession[], changes: readonly FactOf<'set-up'>[]): readonly DayRun[] {
  const standing = sessions.map(({ at }) => settingsAt(changes, at));
  const base = standing[0] ?? new Map<string, string>();
  return sessions.map((session, n) => ({
    session,
    on: [...(standing[n] ?? [])].flatMap(([setting, value]) =>
      base.get(setting) === value ? [] : [`${setting} ${value}`],
    ),
  }));
}

function settingsAt(changes: readonly FactOf<'set-up'>[], at: string): ReadonlyMap<string, string> {
  const settings = new Map<string, string>();
  for (const change of changes)
    if (change.at <= at) for (const [setting, value] of Object.entries(change.changes)) settings.set(setting, value);
  return settings;
}

/** A way out ages the track; a lap with a doubt or a mark was driven, and neither is compared. */
export const testLaps = ({ times }: LapSession): readonly TestLap[] =>
  times.flatMap((lap): readonly TestLap[] => {
    if (lap.way === 'in') return [];
    if (lap.way === 'out') return [{ time: lap.time, out: true }];
    return [{ time: lap.time, ...(!isComparable(lap) && { marked: true }) }];
  });

export const testRuns = (runs: readonly DayRun[]): readonly TestRun[] =>
  runs.map(({ session, on }) => ({ on, laps: testLaps(session) }));
