/** What is said of a session beside its laps, and where a refusal of it belongs. */
import type { Problem } from '../../app/index.ts';
import type { FactOf } from '../../book/index.ts';
import type { CsvLayout } from '../../laps/index.ts';
import type { Snapshot } from '../session.ts';
import { isProblem, type Measured, numberSaid, type Said, said, type Typed } from '../track/said.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import type { Gates } from './log.ts';

const MINUTES: Measured = { key: 'minutes', label: lapsWords.minutesEngineRan, unit: 'min', dimension: 'time' };

export type SessionSaid = {
  readonly minutes?: number;
  readonly track?: string;
  readonly event?: string;
  readonly session?: string;
  /** The run they belong to, when it is written down already. */
  readonly run?: string;
  readonly wet?: boolean;
  /** When it was driven, where the log names no day. */
  readonly at?: string;
};

export function sessionSaid(typed: Typed): Said<SessionSaid> {
  const minutes = numberSaid(typed, MINUTES);
  if (isProblem(minutes)) return { ok: false, problems: [minutes] };
  const run = word(typed.run);
  const [track, event, session] = [word(typed.track), word(typed.event), word(typed.session)];
  // What is known of the run written down is not said anew.
  const whole = run === undefined ? { minutes, event, session, ...(typed.wet ? { wet: true } : {}) } : { run };
  return { ok: true, value: said({ ...whole, track, at: momentTyped(typed.at) }) };
}

/** As the page's clock has it: '2026-05-12T14:30'; what is none goes as it is, and is refused by name. */
function momentTyped(text: string | undefined): string | undefined {
  const typed = word(text);
  const at = typed === undefined ? undefined : new Date(typed);
  return at === undefined || Number.isNaN(at.getTime()) ? typed : at.toISOString();
}

const word = (text: string | undefined): string | undefined => text?.trim() || undefined;

const FIELDS = ['at', 'minutes', 'track', 'event', 'session', 'run', 'wet', 'times'] as const;

/** The field a refusal is about; undefined: it is about all of it. */
export const fieldAt = ({ where }: Problem): string | undefined =>
  FIELDS.find(field => where.replace(/^fact\.|^facts\[\d+\]\./, '') === field);

/** Gates as the book is told them: latitude and longitude of both sides, in degrees. */
export const gatesSaid = (gates: Gates): readonly string[] =>
  gates.map(({ left, right }) => [left.lat, left.lon, right.lat, right.lon].map(inDegrees).join(','));

/** 1e-9 degree is a tenth of a millimetre. */
const inDegrees = (radians: number): string => ((radians * 180) / Math.PI).toFixed(9);

/** Columns as the book is told them. */
export const columnsSaid = (layout: CsvLayout | undefined): readonly string[] =>
  Object.entries(layout?.columns ?? {}).map(
    ([role, { heading, unit }]) => `${role}=${heading}${unit === undefined ? '' : ` [${unit}]`}`,
  );

/** Runs written down without laps, newest first: one of them may be this session. */
export function runsWithoutLaps({ facts }: Snapshot): readonly FactOf<'ran'>[] {
  const counted = facts.flatMap(({ fact, struck }) => (struck === null ? [fact] : []));
  const taken = new Set(counted.flatMap(fact => (fact.kind === 'laps' && fact.run !== undefined ? [fact.run] : [])));
  return counted.filter((fact): fact is FactOf<'ran'> => fact.kind === 'ran' && !taken.has(fact.id)).slice(0, OFFERED);
}
const OFFERED = 12;

/** Tracks that the record names, the last first. */
export function tracksOf({ facts }: Snapshot): readonly string[] {
  const named = facts.flatMap(({ fact, struck }) =>
    struck === null && (fact.kind === 'ran' || fact.kind === 'laps' || fact.kind === 'event') ? (fact.track ?? []) : [],
  );
  return [...new Set(named)];
}
