/**
 * A log of any of the formats, in pieces of bytes as they come; a trace at the end or none. Nothing of it is kept
 * anywhere before `finish`: to cancel, stop pushing and let it go.
 */
import type { LogProblem, Trace } from '../model.ts';
import { CsvReader, type LayoutChoice } from './csv/csv.ts';
import type { CsvLayout } from './csv/layout.ts';
import { tellSpeedUnit } from './csv/speed-unit.ts';
import { Gather } from './gather.ts';
import { GpxReader } from './gpx/gpx.ts';
import { withoutJumps } from './jumps.ts';
import { NmeaReader } from './nmea/nmea.ts';
import type { Reader } from './reader.ts';
import { oneReceiver } from './receivers.ts';
import { type Format, formatOf, notALog } from './sniff.ts';
import { type Skipped, Tally } from './tally.ts';
import { encodingOf, TextOfBytes } from './text-of-bytes.ts';

export type ImportOptions = {
  /** Told from the first bytes when left out. */
  readonly format?: Format;
  /** Of separated values: which columns to read, given the proposal. A choice is remembered by its signature. */
  readonly layout?: LayoutChoice;
};
export type Progress = { readonly bytes: number; readonly fixes: number };

export type Imported = {
  readonly kind: 'imported';
  readonly format: Format;
  readonly trace: Trace;
  readonly skipped: readonly Skipped[];
  /** What a person should know of how it was read, in sentences. */
  readonly notes: readonly string[];
  /** Why reading stopped before the end of the file; what stood before is in the trace. */
  readonly stopped?: LogProblem;
  readonly layout?: CsvLayout;
};
export type NotImported = {
  readonly kind: 'not imported';
  readonly problem: LogProblem;
  readonly skipped: readonly Skipped[];
  /** Of separated values whose columns were not clear: what to choose from. */
  readonly layout?: CsvLayout;
};

/** So many bytes are looked at to tell format and encoding. */
const HEAD = 16_384;

export class LogImport {
  readonly #options: ImportOptions;
  readonly #tally = new Tally();
  readonly #gather = new Gather(this.#tally);
  #head: Uint8Array[] = [];
  #bytes = 0;
  #format: Format = 'csv';
  #text: TextOfBytes | undefined;
  #reader: Reader | undefined;
  #problem: LogProblem | undefined;

  constructor(options: ImportOptions = {}) {
    this.#options = options;
  }

  /** Pieces of 64 KiB to 1 MiB keep a page alive between them. A file that is no log is told by `finish`. */
  push(chunk: Uint8Array): Progress {
    this.#bytes += chunk.length;
    if (this.#reader && this.#text) this.#reader.feed(this.#text.feed(chunk));
    else if (this.#problem === undefined) {
      this.#head.push(chunk.slice());
      if (this.#bytes >= HEAD) this.#begin();
    }
    return { bytes: this.#bytes, fixes: this.#gather.count };
  }

  /** Nothing that follows can make it a log: who reads may stop and finish. */
  get isHopeless(): boolean {
    return (this.#problem ?? this.#reader?.problem()) !== undefined && this.#gather.count === 0;
  }

  finish(): Imported | NotImported {
    if (this.#reader === undefined && this.#problem === undefined) this.#begin();
    const reader = this.#reader;
    if (reader && this.#text) {
      reader.feed(this.#text.end());
      reader.end();
    }
    const problem = this.#problem ?? reader?.problem();
    const recording = reader && this.#gather.recording(reader.zero());
    const layout = reader instanceof CsvReader && reader.layout ? { layout: reader.layout } : {};
    if (reader === undefined || recording === undefined)
      return { kind: 'not imported', problem: problem ?? NO_FIX, skipped: this.#tally.list(), ...layout };
    const notes = [...reader.notes()];
    if (this.#text && this.#text.latin > 0) notes.push('Some letters are no UTF-8; they are read as Latin-1.');
    let { trace } = recording;
    if (layout.layout && layout.layout.columns.speed?.unit === undefined && trace.speed) {
      const told = tellSpeedUnit(trace);
      notes.push(told.note);
      trace = told.trace;
    }
    const one = oneReceiver({ trace, lines: recording.lines }, this.#tally);
    trace = withoutJumps(one, this.#tally).trace;
    const stopped = problem ? { stopped: problem } : {};
    return {
      kind: 'imported',
      format: this.#format,
      trace,
      skipped: this.#tally.list(),
      notes,
      ...stopped,
      ...layout,
    };
  }

  #begin(): void {
    const head = joined(this.#head);
    this.#head = [];
    const encoding = encodingOf(head);
    const first = new TextOfBytes(encoding).feed(head.subarray(0, HEAD));
    this.#problem = this.#bytes === 0 ? EMPTY : notALog(head.subarray(0, HEAD), first, encoding);
    if (this.#problem) return;
    this.#format = this.#options.format ?? formatOf(first);
    this.#text = new TextOfBytes(encoding);
    const sink = { gather: this.#gather, tally: this.#tally };
    this.#reader =
      this.#format === 'gpx'
        ? new GpxReader(sink)
        : this.#format === 'nmea'
          ? new NmeaReader(sink)
          : new CsvReader(sink, this.#options.layout);
    this.#reader.feed(this.#text.feed(head));
  }
}

/** The whole of a log at once, in pieces, with a look in between whether to go on. */
export async function importLog(
  chunks: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
  {
    progress = () => undefined,
    cancelled = () => false,
    ...options
  }: ImportOptions & {
    readonly progress?: (so: Progress) => void | Promise<void>;
    readonly cancelled?: () => boolean;
  } = {},
): Promise<Imported | NotImported | { readonly kind: 'cancelled' }> {
  const into = new LogImport(options);
  for await (const chunk of chunks) {
    if (cancelled()) return { kind: 'cancelled' };
    await progress(into.push(chunk));
    if (into.isHopeless) break;
  }
  return cancelled() ? { kind: 'cancelled' } : into.finish();
}

const EMPTY: LogProblem = {
  expected: 'a log with fixes',
  got: 'an empty file',
  remedy: 'copy the log from the logger again',
};
const NO_FIX: LogProblem = {
  expected: 'at least two fixes with time and place',
  got: 'fewer',
  remedy: 'look at what was passed over, and whether the log is of another format',
};

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
