/** Laps out of the book, and what is said and answered when laps come in. */
import type { Fact } from '../book/index.ts';
import {
  type CsvLayout,
  type Format,
  type LapSession,
  type LogProblem,
  lapSessions,
  type Skipped,
} from '../laps/index.ts';
import type { At } from './asking.ts';
import type { GateFrom } from './cut-laps.ts';
import type { Problem } from './problem.ts';
import type { Queries } from './queries.ts';
import type { Written } from './record.ts';

/** What a person says of a session beside its times. */
export type SessionSaid = Written & {
  readonly event?: string;
  readonly session?: string;
  readonly track?: string;
  readonly wet?: boolean;
  readonly conditions?: string;
  /** How long the engine ran; as long as the log shows it moving, or the laps together, when left out. */
  readonly minutes?: number;
  /** The run they belong to, when it is in the book already. */
  readonly run?: string;
};
export type LogSaid = SessionSaid & {
  readonly name: string; // of the file
  /** Start and finish first, then where sectors end: `lat,lon,lat,lon` in degrees each, its sides in any order. */
  readonly gates?: readonly string[];
  /** Of separated values, where the proposal is wrong: `time=Elapsed`, `speed=v [km/h]`. */
  readonly columns?: readonly string[];
  /** Numbers of laps that do not count: traffic, a mistake. Driven all the same. */
  readonly without?: readonly number[];
};

/** What became of the file. */
export type LogReport = {
  readonly format: Format;
  readonly fixes: number;
  readonly bytes: number;
  readonly kept: boolean;
  readonly skipped: readonly Skipped[];
  readonly stopped: LogProblem | null;
};
export type LapsIn =
  | {
      readonly kind: 'recorded';
      readonly facts: readonly Fact[];
      readonly session: LapSession;
      readonly log?: LogReport;
      readonly gate?: GateFrom;
      readonly say: readonly string[];
    }
  | { readonly kind: 'cancelled' }
  | LapsRefused;
export type LapsRefused = {
  readonly kind: 'refused';
  readonly problems: readonly Problem[];
  readonly skipped?: readonly Skipped[];
  /** Of separated values: what its columns are, to choose from. */
  readonly layout?: CsvLayout;
};

/** Every session with laps, oldest first. */
export const lapsOfBook = async (
  queries: Pick<Queries, 'facts'>,
  kart: string,
  ask: At = {},
): Promise<readonly LapSession[]> => lapSessions((await queries.facts(kart, ask)).map(({ fact }) => fact));
