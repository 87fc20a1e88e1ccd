/** Every time on the track, its laps with it: a run, or laps that no run was written down for. */
import type { Fact, FactOf } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { type LapSession, lapSessions } from '../laps/index.ts';
import { type TrackSession, trackRecord } from '../prep/index.ts';
import { given } from './asking.ts';

/** `ran` false: nobody wrote down how long the engine ran, and its minutes are those of its laps. */
export type OutingWithLaps = TrackSession & { readonly laps: LapSession | null; readonly ran: boolean };

/** Oldest first. @param facts that count */
export function outingsOf(kart: Kart, facts: readonly Fact[]): readonly OutingWithLaps[] {
  const sessions = lapSessions(facts);
  const alone = new Map(sessions.flatMap(one => (one.run === null ? [[one.fact, one] as const] : [])));
  const all = facts.map(fact => {
    const laps = alone.get(fact.id);
    return laps && fact.kind === 'laps' ? asRun(fact, laps) : fact;
  });
  return trackRecord(kart, all, facts.at(-1)?.at ?? '').sessions.map(session => {
    const own = session.outing.fact;
    const laps = alone.get(own) ?? sessions.find(({ run }) => run === own) ?? null;
    return { ...session, laps, ran: !alone.has(own) };
  });
}

function asRun(fact: FactOf<'laps'>, { minutes, times, laps }: LapSession): FactOf<'ran'> {
  const { v, id, kart, at, recorded, by, device, seq, prev, hash, event, session, track } = fact;
  const together = Number((times.reduce((sum, { time }) => sum + time, 0) / 60).toFixed(2));
  return {
    ...{ v, id, kart, at, recorded, by, device, seq, prev, hash },
    ...{ kind: 'ran', minutes: minutes ?? together, laps },
    ...given({ event, session, track }),
  };
}
