/** Two laps of the book side by side by distance, from the logs that were kept with it. */
import {
  choiceFrom,
  comparedOn,
  comparedSay,
  curvatureOf,
  type Driven,
  drivenOf,
  type GripUsed,
  gateFromBook,
  gripOf,
  jumpsOf,
  type Lap,
  type LapSession,
  type Laps,
  LogImport,
  lapSessions,
  lapsOf,
  layOn,
  medianLine,
  motionOf,
  type PieceCompared,
  type Plane,
  piecesOf,
  planeOf,
  type Smooth,
  smooth,
} from '../laps/index.ts';
import type { App } from './app.ts';
import type { At } from './asking.ts';
import { Refusal, refuse } from './problem.ts';

/** A lap: the session as the record names it, `#` and its number; the best of the session without them. */
export type CompareQuestion = At & { readonly a: string; readonly b: string };
export type CompareAnswer = {
  readonly laps: readonly {
    readonly session: string;
    readonly lap: number;
    readonly time: number; // s
    readonly spread: number; // s
    readonly jumps: number; // fixes of the log that jumped away and came back, left out
  }[];
  readonly difference: number; // s, b less a
  readonly pieces: readonly PieceCompared[];
  readonly sectors: readonly (number | null)[];
  /** A metre a point: m, s, m/s, 1/m. */
  readonly along: {
    readonly distance: readonly number[];
    readonly delta: readonly number[];
    readonly speedA: readonly number[];
    readonly speedB: readonly number[];
    readonly curvature: readonly number[];
    readonly curvatureSpread: readonly number[];
  };
  readonly driven: readonly Driven[]; // of the session of a, and of b where it is another
  readonly grip: GripUsed; // of the session of a
  readonly say: readonly string[];
};

type Book = Pick<App, 'facts' | 'getFile'>;

/** Throws `Refusal` for a session or a lap that the book does not hold, and for one without its log. */
export async function compareLaps(book: Book, kart: string, { a, b, ...at }: CompareQuestion): Promise<CompareAnswer> {
  const facts = (await book.facts(kart, at)).map(({ fact }) => fact);
  const sessions = lapSessions(facts);
  const [first, second] = [chosen(sessions, a, 'a'), chosen(sessions, b, 'b')];
  const open = async (session: LapSession, plane?: Plane): Promise<Opened> =>
    opened(await bytesOf(book, session), { gates: first.session.gates, layout: choiceFrom(facts), plane });
  const one = await open(first.session);
  const same = first.session.fact === second.session.fact;
  const two = same ? one : await open(second.session, one.plane);
  const sound = one.found.laps.filter(isSound);
  const line = medianLine(one.smoothed, sound.length > 0 ? sound : one.found.laps);
  const laid = ({ smoothed, found }: Opened) => found.laps.map(lap => layOn(smoothed, lap, line));
  const [own, others] = [laid(one), same ? [] : laid(two)];
  const [lapA, lapB] = [lapOf(own, first, 'a'), lapOf(same ? own : others, second, 'b')];
  const curvature = curvatureOf(
    own.filter(({ lap }) => isSound(lap) || sound.length === 0),
    line,
  );
  const pieces = piecesOf(curvature);
  const compared = comparedOn(line, [lapA, lapB], { pieces, receiver: one.found.receiver });
  const soundOf = (laps: typeof own) => laps.filter(({ lap }) => isSound(lap));
  return {
    laps: [
      { ...told(first, lapA.lap), jumps: one.jumps },
      { ...told(second, lapB.lap), jumps: two.jumps },
    ],
    difference: compared.difference,
    pieces: compared.pieces,
    sectors: compared.sectors.map(each => each ?? null),
    along: {
      ...{ distance: [...compared.distance], delta: [...compared.delta] },
      ...{ speedA: [...compared.speeds[0]], speedB: [...compared.speeds[1]] },
      ...{ curvature: [...curvature.curvature], curvatureSpread: [...curvature.spread] },
    },
    driven: [own, others].flatMap(laps => (soundOf(laps).length > 0 ? [drivenOf(soundOf(laps), line, pieces)] : [])),
    grip: gripOf(one.smoothed, sound),
    say: comparedSay(compared),
  };
}

type Opened = { readonly found: Laps; readonly smoothed: Smooth; readonly plane: Plane; readonly jumps: number };
type Chosen = { readonly session: LapSession; readonly number: number };

function opened(
  bytes: Uint8Array,
  {
    gates,
    layout,
    plane: given,
  }: {
    readonly gates: LapSession['gates'];
    readonly layout: ReturnType<typeof choiceFrom>;
    readonly plane: Plane | undefined;
  },
): Opened {
  const log = new LogImport({ layout });
  log.push(bytes);
  const read = log.finish();
  const [start, ...more] = gates.map(gateFromBook);
  if (read.kind === 'not imported' || start === undefined)
    throw new Refusal([
      refuse('wrong shape', 'session', 'Expected a log with its gate, got none.', 'Bring it in again.'),
    ]);
  const { trace } = read;
  const plane = given ?? planeOf(trace);
  const motion = motionOf(trace, plane);
  const found = lapsOf(trace, [start, ...more], { motion });
  const doppler = trace.speed !== undefined && trace.heading !== undefined;
  const jumps = jumpsOf(read);
  return { found, smoothed: smooth(motion, { receiver: found.receiver, doppler }), plane, jumps };
}

async function bytesOf(book: Book, { file, fileKept, label }: LapSession): Promise<Uint8Array> {
  const kept = file !== null && fileKept ? await book.getFile(file) : undefined;
  if (kept) return kept.bytes;
  throw new Refusal([
    refuse(
      'wrong shape',
      'session',
      `Expected a session whose log is kept, got ${label}, which has none.`,
      'Compare laps of logs that were brought in and kept; times of a stopwatch have no way along the track.',
    ),
  ]);
}

const isSound = ({ doubts }: Lap): boolean => doubts.length === 0;

function chosen(sessions: readonly LapSession[], text: string, where: string): Chosen {
  const [, name = text, digits] = /^(.*?)#(\d{1,4})$/.exec(text.trim()) ?? [];
  const wanted = name.trim().toLowerCase();
  const session = sessions.findLast(({ label, fact }) =>
    [label.toLowerCase(), ...label.toLowerCase().split(' › '), fact].includes(wanted),
  );
  const number = digits === undefined ? session?.best?.number : Number(digits);
  if (session && number && session.times.some(lap => lap.number === number)) return { session, number };
  throw new Refusal([
    refuse(
      'unknown event',
      where,
      session
        ? `Expected a lap of ${session.label}, got ${digits ?? 'none that may be compared'}.`
        : `Expected a session with laps, got "${name}".`,
      session
        ? `It has laps 1 to ${session.laps}: write "${session.label}#1".`
        : sessions.length === 0
          ? 'No laps are in the book.'
          : `The last: ${sessions
              .slice(-5)
              .map(each => each.label)
              .join(', ')}.`,
    ),
  ]);
}

function lapOf<T extends { readonly lap: Lap }>(laid: readonly T[], { session, number }: Chosen, where: string): T {
  const found = laid.find(({ lap }) => lap.number === number);
  if (found) return found;
  throw new Refusal([
    refuse(
      'unknown event',
      where,
      `Expected lap ${number} of ${session.label} over the gate of the first session, got none there.`,
      'Both sessions must have been driven on one track, over one gate.',
    ),
  ]);
}

const told = ({ session, number }: Chosen, { time, spread }: Lap) => ({
  session: session.label,
  lap: number,
  time,
  spread,
});
