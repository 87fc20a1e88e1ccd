/** What a lap should take: this kart on the track of a log, what each change is worth, and which sprockets of the box. */
import type { Fact } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import {
  type Beside,
  besidePredicted,
  type Choice,
  type LapSession,
  predictorOf,
  type Sensitivity,
  type SweepProgress,
  sensitivitiesOf,
  sprocketSweep,
} from '../laps/index.ts';
import type { App } from './app.ts';
import type { At } from './asking.ts';
import { lapsOfBook } from './laps.ts';
import { boxTyped } from './predict-box.ts';
import { type Figure, reckonKart } from './predict-kart.ts';
import { type LogRead, readTrackLog } from './predict-log.ts';
import { Refusal, refuse } from './problem.ts';

export type PredictQuestion = At & {
  /** A session with a log; the newest when left out. */
  readonly session?: string;
  /** Teeth in front and behind, '17/23'; as the book has them when left out. */
  readonly gearing?: string;
  /** Teeth of the sprockets at hand, '21, 22, 23' behind or '16, 17 / 21, 22, 23'; as the kart file has them when left out. */
  readonly box?: string;
};
/** Slowest in one corner, m/s. */
export type CornerSpeeds = { readonly corner: string; readonly predicted: number; readonly driven: number };
export type LapsPredicted = {
  readonly session: string;
  readonly track: { readonly length: number; readonly laps: number }; // m, and laps its curvature is the middle of
  readonly figures: readonly Figure[];
  readonly lap: { readonly time: number; readonly vMax: number; readonly vMin: number; readonly upshifts: number };
  readonly driven: { readonly lap: number; readonly time: number };
  /** By tenths of the lap: s that the driven lap lost on the predicted, gained where below 0. */
  readonly lost: readonly { readonly from: number; readonly to: number; readonly seconds: number }[];
  readonly slowest: readonly CornerSpeeds[];
  readonly sensitivities: readonly Sensitivity[];
  readonly sprockets: Choice | null; // null: the box holds none
  readonly say: readonly string[];
};

const STEP = 1; // m

export async function predictLaps(
  app: Pick<App, 'kart' | 'facts' | 'getFile'>,
  name: string,
  { session: named, gearing, box, ...at }: PredictQuestion = {},
): Promise<LapsPredicted> {
  const kart = await app.kart(name, at);
  const facts = (await app.facts(name, at)).flatMap(({ fact, struck }) => (struck === null ? [fact] : []));
  const session = sessionNamed(await lapsOfBook(app, name, at), named);
  const bytes = session.file === null ? undefined : (await app.getFile(session.file))?.bytes;
  const { beside: _, ...answer } = atOnce(predictingLaps({ kart, facts, session, bytes, gearing, box }));
  return answer;
}

export type PredictFrom = {
  readonly kart: Kart;
  readonly facts: readonly Fact[]; // oldest first, without those that were struck
  readonly session: LapSession;
  /** Its log; undefined where it is not kept. */
  readonly bytes: Uint8Array | undefined;
  readonly gearing?: string | undefined;
  readonly box?: string | undefined;
};
export type PredictedWhole = LapsPredicted & { readonly beside: Beside };

/** The same by and by, from what a face has at hand: the sweep over the sprockets can be watched, and stopped. */
export function* predictingLaps(from: PredictFrom): Generator<SweepProgress, PredictedWhole> {
  const { kart: file, facts, session, bytes, gearing } = from;
  const typed = boxTyped(from.box);
  const read = bytes && readTrackLog(bytes, session, facts);
  if (read === undefined || typeof read === 'string')
    throw new Refusal([
      refuse(
        'nothing to record',
        'session',
        read ?? `The log of ${session.label} is not kept.`,
        'Import a log with whole laps.',
      ),
    ]);
  const { kart, figures, spreads } = reckonKart(file, facts, { gearing, log: read.log });
  const predictor = predictorOf(read.track, { step: STEP });
  const lap = predictor.lap(kart);
  if (lap.kind === 'stuck')
    throw new Refusal([
      refuse(
        'kart file',
        'engine',
        'Expected an engine that drives the kart round, and it does not.',
        'Correct torque, gears or mass.',
      ),
    ]);
  const beside = besidePredicted(predictor.trail(), read.best);
  const slowest = inCorners(beside, read.pieces);
  const sensitivities = sensitivitiesOf(predictor, kart);
  const front = typed?.front.length ? typed.front : (file.box?.frontSprockets ?? []);
  const box = {
    front: front.length > 0 ? front : [kart.gearing.front],
    rear: typed?.rear ?? file.box?.rearSprockets ?? [],
  };
  const choice = box.rear.length === 0 ? null : yield* sprocketSweep(predictor, kart, box, spreads);
  const driven = { lap: read.best.number, time: read.best.time.at(-1) as number };
  return {
    session: session.label,
    track: { length: predictor.length, laps: read.laps },
    ...{ figures, lap: { time: lap.time, vMax: lap.vMax, vMin: lap.vMin, upshifts: lap.upshifts } },
    ...{ driven, lost: tenths(beside.gap, beside.at), beside, slowest, sensitivities, sprockets: choice },
    say: inSentences(choice, figures),
  };
}

function sessionNamed(all: readonly LapSession[], named: string | undefined): LapSession {
  const wanted = named?.trim().toLowerCase();
  const logs = all.filter(({ timed, file }) => timed === 'by log' && file !== null);
  const found =
    wanted === undefined
      ? logs.at(-1)
      : logs.findLast(({ label, fact }) =>
          [label.toLowerCase(), ...label.toLowerCase().split(' › '), fact].includes(wanted),
        );
  if (found) return found;
  throw new Refusal([
    refuse(
      'unknown event',
      'session',
      named === undefined
        ? 'Expected a session with a log, and the book holds none.'
        : `Expected a session with a log, got "${named}".`,
      logs.length === 0
        ? 'Import one: laps import FILE.'
        : `The last: ${logs
            .slice(-5)
            .map(({ label }) => label)
            .join(', ')}.`,
    ),
  ]);
}

function tenths(gap: Float64Array, at: Float64Array): LapsPredicted['lost'] {
  const last = gap.length - 1;
  const node = (n: number): number => Math.round((last * n) / 10);
  return Array.from({ length: 10 }, (_, n) => ({
    from: at[node(n)] as number,
    to: at[node(n + 1)] as number,
    seconds: (gap[node(n + 1)] as number) - (gap[node(n)] as number),
  }));
}

function inCorners({ at, predicted, driven }: Beside, pieces: LogRead['pieces']): readonly CornerSpeeds[] {
  const corners = pieces.filter(({ turn }) => turn !== 0);
  const slowest = (of: Float64Array, from: number, to: number): number =>
    of.reduce(
      (least, v, n) => ((at[n] as number) >= from && (at[n] as number) <= to ? Math.min(least, v) : least),
      1e9,
    );
  return corners.map(({ name, from, to }) => ({
    corner: name,
    predicted: slowest(predicted, from, to),
    driven: slowest(driven, from, to),
  }));
}

function atOnce<T>(steps: Generator<unknown, T>): T {
  let next = steps.next();
  while (!next.done) next = steps.next();
  return next.value;
}

function inSentences(choice: Choice | null, figures: readonly Figure[]): readonly string[] {
  const level = choice?.pairs.filter(pair => pair.level) ?? [];
  const from = (where: Figure['from']): string =>
    figures.flatMap(figure => (figure.from === where ? figure.what : [])).join(', ');
  const [guessed, template] = [from('starting guess'), from('template')];
  return [
    ...(choice === null
      ? ['Say which sprockets are in the box, or write it into the kart file: box: rear sprockets.']
      : []),
    ...(level.length > 1
      ? [`${inTeeth(level, choice?.pairs)}: level, as far as can be told with what is known of the kart.`]
      : level.map(
          one => `${inTeeth([one], choice?.pairs)}: quicker than every other pair in the box, as far as can be told.`,
        )),
    ...(guessed === '' ? [] : [`Guessed: ${guessed}.`]),
    ...(template === '' ? [] : [`As the template has it, not measured: ${template}.`]),
    'It is for differences between two settings; the lap itself may be 1 to 3 % off. The engine’s limit and the class rules go first.',
  ];
}

/** '23 or 24 teeth' where the box has one sprocket in front, else '16/22 or 17/23'; in the order of the teeth. */
function inTeeth(pairs: Choice['pairs'], box = pairs): string {
  const sorted = pairs.toSorted((a, b) => a.front - b.front || a.rear - b.rear);
  const alike = box.every(({ front }) => front === box[0]?.front);
  const texts = sorted.map(({ front, rear }) => (alike ? `${rear}` : `${front}/${rear}`));
  const last = texts.at(-1) ?? '';
  const all = texts.length > 1 ? `${texts.slice(0, -1).join(', ')} or ${last}` : last;
  return alike ? `${all} teeth` : all;
}
