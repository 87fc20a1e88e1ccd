/** A log into the book: read to its end, cut into laps, and written as one run with its laps, or nothing of it. */
import type { Fact, FactOf } from '../book/index.ts';
import {
  type ChosenColumns,
  type CsvLayout,
  choiceFrom,
  gateForBook,
  gatesByTrack,
  type Imported,
  type LogProblem,
  motionOf,
  movingOf,
  type NotImported,
  timedOf,
  withMarks,
} from '../laps/index.ts';
import { given } from './asking.ts';
import { inBookAlready } from './check-laps.ts';
import { type Cut, cutLaps } from './cut-laps.ts';
import type { LapsIn, LapsRefused, LogSaid } from './laps.ts';
import {
  askedOfRun,
  eventAt,
  factsThatCount,
  type LapBook,
  type LapsDraft,
  lapsAmong,
  lapsWritten,
  runOf,
  sayOfRun,
  sessionSaid,
  type When,
  writtenAt,
} from './laps-run.ts';
import { readColumns, readGates } from './laps-said.ts';
import { type Problem, refuse, sentence } from './problem.ts';
import { type LogBytes, MOST_KEPT, type ReadLog, readLog } from './read-log.ts';
import type { WithFile } from './record.ts';

export async function importLaps(book: LapBook, kart: string, log: LogBytes, said: LogSaid): Promise<LapsIn> {
  const [gates, columns] = [readGates(said.gates ?? []), readColumns(said.columns ?? [])];
  const unread = [...gates.problems, ...columns.problems];
  if (unread.length > 0) return { kind: 'refused', problems: unread };
  const facts = await factsThatCount(book, kart);
  const whole = await readLog(log, { layout: choiceFrom(facts, columns.value) });
  if (whole === undefined) return { kind: 'cancelled' };
  const { read, hash } = whole;
  const { skipped } = read;
  const refused = (...problems: readonly Problem[]): LapsRefused => ({
    ...{ kind: 'refused', problems, skipped },
    ...given({ layout: read.layout }),
  });
  if (read.kind === 'not imported') return refused(notALog(read, said.name));
  const before = lapsAmong(facts).find(fact => fact.file === hash);
  if (before && !said.sure) return refused(inBookAlready(before, said.name));

  const motion = motionOf(read.trace);
  const moved = movingOf(motion);
  const when = whenOf(read, said);
  const event = eventAt(await book.state(kart), when.at ?? book.now(), said.event);
  const known = sessionSaid({ ...said, ...given({ run: said.run ?? before?.run }) }, event, facts);
  const cut = cutLaps(read.trace, motion, { given: gates.value, track: known.track, known: gatesByTrack(facts) });
  const laps = cut.laps?.laps.length ?? 0;
  const problems = askedOfRun(facts, known, when, book.now());
  const unknown = (said.without ?? []).filter(lap => !(Number.isInteger(lap) && lap >= 1 && lap <= laps));
  if (unknown.length > 0) return refused(noSuchLap(unknown, laps));
  if (laps === 0 && !said.sure) return refused(noLaps(cut, moved.minutes), ...problems);
  if (problems.length > 0) return refused(...problems);

  const about = { ...known, ...given({ track: cut.track }) };
  const { run, event: name, session, track, minutes = moved.minutes } = about;
  const payload: LapsDraft = {
    ...{ kind: 'laps', file: hash, name: said.name, laps, timed: 'by log' },
    ...(whole.file === undefined && { fileKept: false }),
    ...(cut.laps && { times: [...withMarks(timedOf(cut.laps, motion), said.without ?? [])] }),
    ...given({ run, event: name, session, track, from: when.from }),
    ...moved,
    ...(cut.gates.length > 0 && { gates: cut.gates.map(gateForBook) }),
    ...given({ columns: chosenOf(read.layout, columns.value) }),
  };
  const batch = run === undefined ? [runOf(about, { minutes, laps }, event), payload] : [payload];
  // Minutes that the log itself bears out are no slip of a hand, though it ran all day.
  const sure = said.sure || (run === undefined && minutes <= lengthOf(read) + 1 && minutes <= DAY);
  const done = await book.record(kart, batch, writtenAt({ ...said, sure }, when), fileOf(whole, read));
  if (done.kind === 'refused') return refused(...done.problems);
  const say = [
    ...read.notes,
    ...daySay(read, said, done.facts),
    ...(read.stopped ? [stoppedAt(read.stopped)] : []),
    ...(whole.file === undefined ? [TOO_LARGE] : []),
    ...cut.say,
    ...(cut.laps?.say ?? []),
    ...(run === undefined ? [] : sayOfRun(facts, run, laps)),
  ];
  return {
    ...(await lapsWritten(book, kart, done.facts, say)),
    ...given({ gate: cut.from }),
    log: {
      ...{ format: read.format, fixes: read.trace.time.length, bytes: whole.bytes, kept: whole.file !== undefined },
      ...{ skipped, stopped: read.stopped ?? null },
    },
  };
}

/** A log that says its day was driven then, whenever it comes in; else when the person says, or now. */
function whenOf({ trace: { zero, time } }: Imported, { at }: LogSaid): When {
  if (zero.kind === 'no date') return given({ at });
  const moment = (second = 0): string => new Date(Date.parse(`${zero.day}T00:00:00Z`) + second * 1000).toISOString();
  return { from: moment(time[0]), at: at ?? moment(time.at(-1)) };
}

/** A logger that is left on all day writes one log of all its sessions, min. */
const DAY = 24 * 60;

/** From its first fix to its last, min. */
const lengthOf = ({ trace: { time } }: Imported): number => ((time.at(-1) as number) - (time[0] as number)) / 60;

/** Of a log that names no day a person should know which one was taken. */
function daySay({ trace: { zero } }: Imported, { at }: LogSaid, facts: readonly Fact[]): readonly string[] {
  if (zero.kind === 'day') return [];
  const taken = `${(facts[0]?.at ?? '').slice(0, 16).replace('T', ' ')} UTC`;
  return [
    at === undefined
      ? `The log names no day: it is written as of now, ${taken}. Was it another day, strike it and bring it in again with that day.`
      : `The log names no day: it is written as of ${taken}, as you said.`,
  ];
}

/** What a person chose, with all it was chosen among: the next log with this header is read the same way. */
function chosenOf(layout: CsvLayout | undefined, chosen: ChosenColumns): FactOf<'laps'>['columns'] {
  if (layout === undefined || Object.keys(chosen).length === 0) return undefined;
  const roles = Object.entries(layout.columns).map(([role, { heading, unit }]) => [
    role,
    { heading, ...given({ unit }) },
  ]);
  return { signature: layout.signature, roles: Object.fromEntries(roles) };
}

const fileOf = ({ file, hash }: ReadLog, { format }: Imported): WithFile | undefined =>
  file && { hash, bytes: file, mediaType: MEDIA[format] };
const MEDIA = { csv: 'text/csv', gpx: 'application/gpx+xml', nmea: 'text/plain' } as const;

const TOO_LARGE = `The file is larger than the ${MOST_KEPT / 1e6} MB that the book keeps: its laps are in the book, the file is not. Keep it yourself.`;

const stoppedAt = ({ expected, got, line }: LogProblem): string =>
  `Reading stopped${line === undefined ? '' : ` at line ${line}`}: expected ${expected}, got ${got}. What stood before is used.`;

function notALog({ problem: { expected, got, remedy, line }, skipped, layout }: NotImported, name: string): Problem {
  const passed = skipped.map(({ count, say }) => ` Passed over: ${count} ${say}.`).join('');
  const headings = layout ? ` Its columns: ${layout.headings.slice(0, 30).join(', ')}.` : '';
  const where = line === undefined ? name : `${name}, line ${line}`;
  return refuse('log', where, `Expected ${expected}, got ${got}.${passed}`, `${sentence(remedy)}${headings}`);
}

const noSuchLap = (unknown: readonly number[], laps: number): Problem =>
  refuse(
    'wrong shape',
    'without',
    `Expected numbers of laps from 1 to ${laps}, got ${unknown.join(', ')}.`,
    'Give the laps that do not count by their number in this log.',
  );

const noLaps = (cut: Cut, minutes: number): Problem =>
  refuse(
    'no laps',
    'gate',
    `Expected full laps, got none: ${[...cut.say, ...(cut.laps?.say ?? [])].join(' ')}`,
    `Give another gate; or say again as sure, and ${minutes} min of running without laps are recorded.`,
  );
