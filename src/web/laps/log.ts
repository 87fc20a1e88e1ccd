/** What the page and its worker say to each other about one log. The fixes stay in the worker; the page gets what it draws. */
import type {
  CsvLayout,
  Format,
  Gate,
  Lap,
  LogProblem,
  Outing,
  Place,
  Receiver,
  Skipped,
  Zero,
} from '../../laps/index.ts';
import type { Path } from './outline.ts';

/** Start and finish first, then where sectors end, in the order they are driven. */
export type Gates = readonly [Gate, ...Gate[]];

export type Ask =
  | {
      readonly kind: 'read';
      readonly file: Blob;
      /** Columns that a person chose before, by the signature of their header. */
      readonly layouts: Layouts;
      /** Of tracks known before: the first that this log crosses is taken. */
      readonly known: readonly KnownGates[];
    }
  /** `turn`: the gate that two taps made, to be turned the way the track is driven. */
  | { readonly kind: 'gates'; readonly gates: Gates; readonly turn?: number };

/** Which column says what, by the signature of the header. */
export type Layouts = Readonly<Record<string, Pick<CsvLayout, 'columns'>>>;

export type KnownGates = { readonly track: string; readonly gates: Gates };

export type Tell =
  | { readonly kind: 'reading'; readonly bytes: number; readonly fixes: number }
  | { readonly kind: 'columns'; readonly asked: ColumnsAsked }
  | { readonly kind: 'refused'; readonly problem: LogProblem; readonly skipped: readonly Skipped[] }
  | { readonly kind: 'read'; readonly log: ReadLog }
  | { readonly kind: 'laps'; readonly found: Found };

/** Columns are not clear: what is proposed, the first lines as they stand, and what was wrong. */
export type ColumnsAsked = {
  readonly layout: CsvLayout;
  readonly lines: readonly string[];
  readonly problem?: LogProblem;
};

export type ReadLog = {
  readonly hash: string; // SHA-256 of the file
  readonly bytes: number;
  readonly format: Format;
  readonly zero: Zero;
  readonly from: number; // s after zero
  readonly to: number;
  readonly fixes: number;
  readonly step: number; // s, the usual one
  readonly moving: number; // s, faster than walking
  readonly skipped: readonly Skipped[];
  readonly notes: readonly string[];
  readonly stopped?: LogProblem;
  readonly layout?: CsvLayout;
  /** A person chose the columns. */
  readonly chosen: boolean;
  readonly plane: Place & { readonly height: number };
  readonly outline: Path;
  readonly proposed?: Gate;
};

export type Found = {
  /** None where no gate could be proposed and none was set. */
  readonly gates?: Gates;
  /** The known track whose gates these are. */
  readonly track?: string;
  readonly outings: readonly Outing[];
  readonly laps: readonly Lap[];
  readonly receiver?: Receiver;
  readonly say: readonly string[];
  /** The way of the middle one of the sound laps, from gate to gate. */
  readonly way?: Path;
};
