/** Times read off a stopwatch and typed in, in a row as they were driven: laps like those of a log, less sure. */
import { handTimedLaps } from '../laps/index.ts';
import { given } from './asking.ts';
import type { LapsIn, SessionSaid } from './laps.ts';
import {
  askedOfRun,
  eventAt,
  factsThatCount,
  type LapBook,
  type LapsDraft,
  lapsWritten,
  runOf,
  sayOfRun,
  sessionSaid,
  writtenAt,
} from './laps-run.ts';
import { refuse, sentence } from './problem.ts';

export async function lapsByHand(book: LapBook, kart: string, text: string, said: SessionSaid): Promise<LapsIn> {
  const read = handTimedLaps(text);
  const times = read.flatMap(each =>
    each.kind === 'lap' ? [{ time: each.time, spread: Number(each.spread.toFixed(4)) }] : [],
  );
  const wrong = read.flatMap((each, n) =>
    each.kind === 'lap'
      ? []
      : [refuse('reading', `times[${n}]`, `Expected ${each.expected}, got "${each.text}".`, sentence(each.remedy))],
  );
  if (read.length === 0)
    wrong.push(
      refuse('nothing to record', 'times', 'Expected lap times, got none.', 'Give them like 52.31 or 1:02.5.'),
    );
  if (wrong.length > 0) return { kind: 'refused', problems: wrong };

  const facts = await factsThatCount(book, kart);
  const when = given({ at: said.at });
  const event = eventAt(await book.state(kart), said.at ?? book.now(), said.event);
  const known = sessionSaid(said, event, facts);
  const problems = askedOfRun(facts, known, when, book.now());
  if (problems.length > 0) return { kind: 'refused', problems };
  const laps = times.length;
  const together = Number((times.reduce((sum, { time }) => sum + time, 0) / 60).toFixed(2));
  const { run, event: name, session, track, minutes = together } = known;
  const payload: LapsDraft = {
    ...{ kind: 'laps', name: session ?? 'stopwatch', laps, timed: 'by hand', times },
    ...given({ run, event: name, session, track }),
  };
  const batch = run === undefined ? [runOf(known, { minutes, laps }, event), payload] : [payload];
  const done = await book.record(kart, batch, writtenAt(said, when));
  if (done.kind === 'refused') return done;
  const alone = `The run counts ${together} min, the laps alone; say the minutes to count the ways out and in too.`;
  const say = run !== undefined ? sayOfRun(facts, run, laps) : known.minutes === undefined ? [alone] : [];
  return lapsWritten(book, kart, done.facts, say);
}
