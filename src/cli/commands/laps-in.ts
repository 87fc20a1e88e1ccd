/** Laps into the book: what was typed handed to the app, how far it has come, and what became of it. */
import { type LapsIn, MOST_KEPT, type Problem, Refusal, type SessionSaid } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { lapsInText } from '../print/laps.ts';
import { personOf, type Session } from '../session.ts';
import { typedTime } from '../when.ts';
import type { World } from '../world.ts';
import type { Writing } from './log.ts';

export type ByHand = Writing &
  Pick<SessionSaid, 'track' | 'event' | 'session' | 'wet' | 'conditions' | 'run'> & { readonly minutes?: string };
export type Importing = ByHand & {
  readonly gate?: readonly string[];
  readonly column?: readonly string[];
  readonly without?: readonly string[];
  readonly on?: string;
};

export async function bringInLog(world: World, on: Session, path: string, options: Importing): Promise<void> {
  const found = await world.readPieces(path);
  if (found === undefined)
    return fail('unknown file', path, 'Expected a file that can be read, and there is none.', 'Check the path.');
  let stopped = false;
  void world.stopped().then(() => {
    stopped = true;
  });
  const { gate: gates, column: columns, without, on: day } = options;
  if (found.bytes > MOST_KEPT) world.err(tooLarge(path, found.bytes));
  const said = {
    ...saidOf(world, on, options),
    ...(day !== undefined && { at: onDay(day, world.now()) }),
    ...(gates && { gates }),
    ...(columns && { columns }),
    ...(without && { without: without.map(Number) }),
  };
  const name = path.split(/[\\/]/).at(-1) ?? path;
  const log = { chunks: found.pieces, progress: progressTo(world, found.bytes), cancelled: () => stopped };
  tellLaps(world, await on.app.importLaps(on.kart, log, { ...said, name }), options);
}

export async function bringInTimes(
  world: World,
  on: Session,
  times: readonly string[],
  options: ByHand,
): Promise<void> {
  tellLaps(world, await on.app.lapsByHand(on.kart, times.join(' '), saidOf(world, on, options)), options);
}

function saidOf(world: World, { at }: Session, options: ByHand): SessionSaid {
  const { track, event, session, wet, conditions, run, sure, minutes } = options;
  const spoken = Object.entries({ at, track, event, session, wet, conditions, run, sure });
  return {
    by: personOf(world, options),
    ...Object.fromEntries(spoken.filter(([, value]) => value !== undefined)),
    ...(minutes !== undefined && { minutes: minutesOf(minutes) }),
  };
}

/** A day alone is its noon, or now while that is still to come. */
function onDay(text: string, now: Date): string {
  const day = /^\d{4}-\d\d-\d\d$/.test(text.trim());
  const at = typedTime(day ? `${text.trim()} 12:00` : text);
  const soon = day && Date.parse(at) > now.getTime() && Date.parse(at) < now.getTime() + HALF_DAY;
  return soon ? now.toISOString() : at;
}
const HALF_DAY = 12 * 3_600_000; // ms

const tooLarge = (path: string, bytes: number): string =>
  `${path} has ${Math.round(bytes / 1e6)} MB: its laps can come into the book; the file cannot, which keeps ${MOST_KEPT / 1e6} MB. Keep it yourself.\n`;

function minutesOf(text: string): number {
  if (/^\d+(\.\d*)?$/.test(text.trim())) return Number(text);
  return fail(
    'wrong shape',
    '--minutes',
    `Expected a number of minutes, got "${text}".`,
    'Write it in digits, like 12 or 12.5.',
  );
}

/** From so many bytes on a person wonders whether anything happens. */
const LONG = 8_000_000;

function progressTo(world: World, bytes: number) {
  let told = 0;
  return (so: { readonly bytes: number; readonly fixes: number }): void => {
    const tenth = Math.floor((10 * so.bytes) / bytes);
    if (bytes < LONG || tenth <= told) return;
    told = tenth;
    world.err(`read ${10 * tenth} % of ${Math.round(bytes / 1e6)} MB, ${so.fixes} fixes\n`);
  };
}

const STOPPED: Problem = {
  code: 'nothing to record',
  where: '',
  message: 'Stopped before its end: nothing was imported.',
  remedy: 'Do it again when there is time.',
};

function tellLaps(world: World, done: LapsIn, options: Writing): void {
  if (done.kind === 'cancelled') throw new Refusal([STOPPED]);
  if (done.kind === 'refused') throw new Refusal(done.problems);
  const { kind: _, ...answer } = done;
  world.out(options.json ? `${JSON.stringify(answer)}\n` : lapsInText(done));
}
