/** The laps of the book, session by session, each with the run it belongs to. Read from facts alone: no raw file is needed. */
import { type Fact, type FactOf, inOrder, isFull, outingName, struckFacts, type TimedLap } from '../../book/index.ts';

/** A lap as it was driven; `number` counts the full ones from 1 and is null for a way out or in. */
export type SessionLap = TimedLap & { readonly number: number | null };

export type LapSession = {
  readonly fact: string; // the `laps`
  readonly run: string | null; // the `ran`; null when it names none, or that one was struck
  readonly at: string; // of the run where there is one
  readonly label: string; // 'Hollow Lane round 4 › Heat 1'
  readonly event: string | null;
  readonly session: string | null;
  readonly track: string | null;
  readonly wet: boolean | null;
  readonly name: string; // of the file
  readonly file: string | null; // sha-256 of the log
  readonly fileKept: boolean;
  readonly timed: 'by log' | 'by hand' | 'not said';
  readonly times: readonly SessionLap[]; // none where only a number of laps is known
  readonly laps: number;
  readonly best: SessionLap | null; // of the laps that may be compared
  readonly minutes: number | null; // of the run; where there is none, of moving
  readonly metres: number | null;
  readonly from: string | null; // when the log begins
  readonly gates: NonNullable<FactOf<'laps'>['gates']>;
};

/** Oldest first; of several laps of one run the one written last (SPEC B30). */
export function lapSessions(facts: readonly Fact[]): readonly LapSession[] {
  const ordered = counted(facts);
  const runs = new Map(ordered.flatMap(fact => (fact.kind === 'ran' ? [[fact.id, fact] as const] : [])));
  const all = ordered.filter((fact): fact is FactOf<'laps'> => fact.kind === 'laps');
  const newest = new Map(all.toSorted(byWriting).map(fact => [fact.run ?? fact.id, fact.id]));
  return all
    .filter(fact => newest.get(fact.run ?? fact.id) === fact.id)
    .map(fact => sessionOf(fact, runs.get(fact.run ?? '')))
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

/** A full lap that nothing stands against: both crossings were seen, the kart drove all of it, and nobody marked it. */
export const isComparable = (lap: TimedLap): boolean =>
  isFull(lap) && !lap.marked && (lap.doubts ?? []).every(doubt => doubt === 'hole inside');

/** The facts that count, in the order in which they happened. */
export function counted(facts: readonly Fact[]): readonly Fact[] {
  const ordered = inOrder(facts);
  const struck = struckFacts(ordered);
  return ordered.filter(fact => fact.kind !== 'struck' && !struck.has(fact.id));
}

const byWriting = (a: Fact, b: Fact): number =>
  a.recorded < b.recorded ? -1 : a.recorded > b.recorded ? 1 : a.seq - b.seq;

function sessionOf(fact: FactOf<'laps'>, run: FactOf<'ran'> | undefined): LapSession {
  let full = 0;
  const times = (fact.times ?? []).map(lap => ({ ...lap, number: isFull(lap) ? ++full : null }));
  const [event, session] = [run?.event ?? fact.event, run?.session ?? fact.session];
  const { at } = run ?? fact;
  const best = times
    .filter(isComparable)
    .reduce<SessionLap | null>((top, lap) => (top && top.time <= lap.time ? top : lap), null);
  return {
    ...{ fact: fact.id, run: run?.id ?? null, at },
    label: outingName({ event, session, at }),
    ...{ event: event ?? null, session: session ?? null, track: run?.track ?? fact.track ?? null },
    ...{ wet: run ? (run.wet ?? false) : null, name: fact.name },
    ...{ file: fact.file ?? null, fileKept: fact.file !== undefined && fact.fileKept !== false },
    ...{ timed: fact.timed ?? 'not said', times, laps: fact.laps, best },
    ...{ minutes: run?.minutes ?? fact.minutes ?? null, metres: fact.metres ?? null },
    ...{ from: fact.from ?? null, gates: fact.gates ?? [] },
  };
}
