/**
 * The logs that lie on the table: each read in a worker of its own, one after the other. It outlives the sheet, so
 * that a look at another sheet loses nothing.
 */
import type { CsvLayout, LogProblem, Skipped } from '../../laps/index.ts';
import type { Keep } from '../place.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import type { Ask, ColumnsAsked, Found, Gates, KnownGates, Layouts, ReadLog, Tell } from './log.ts';

export type Stage =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'reading'; readonly bytes: number; readonly fixes: number }
  | { readonly kind: 'columns'; readonly asked: ColumnsAsked }
  | { readonly kind: 'refused'; readonly problem: LogProblem; readonly skipped: readonly Skipped[] }
  | {
      readonly kind: 'read';
      readonly log: ReadLog;
      readonly found: Found;
      /** The gates were changed and their laps are being looked for. */
      readonly looking: boolean;
      /** Numbers of laps that a person marked as not counting. */
      readonly marked: ReadonlySet<number>;
    };

export type OnTable = {
  readonly id: number;
  readonly name: string;
  readonly file: Blob;
  readonly stage: Stage;
};

/** A worker, as far as it is needed here. */
export type Hand = {
  ask(ask: Ask): void;
  end(): void;
};
export type HandFor = (hear: (tell: Tell) => void, failed: (message: string) => void) => Hand;

/** What the book holds from logs before: gates of tracks, the likeliest first, and columns as they were chosen. */
export type Known = { readonly gates: readonly KnownGates[]; readonly layouts: Layouts };

export type Desk = {
  list(): readonly OnTable[];
  onChange(listener: () => void): () => void;
  /** Read in the order they were put down. */
  put(files: readonly (Blob & { readonly name: string })[], known: Known): void;
  /** Cancelled, or done with: nothing of it stays. */
  remove(id: number): void;
  /** The columns are these; remembered for every file with the same header. */
  choose(id: number, layout: CsvLayout): void;
  setGates(id: number, gates: Gates, turn?: number): void;
  mark(id: number, lap: number): void;
};

const LAYOUTS = 'log columns';

export function createDesk(handFor: HandFor, keep: Keep): Desk {
  let all: readonly OnTable[] = [];
  let next = 1;
  let known: Known = { gates: [], layouts: {} };
  const hands = new Map<number, { readonly hand: Hand; due: number }>(); // answers about laps that are still to come
  const listeners = new Set<() => void>();

  const show = (list: readonly OnTable[]): void => {
    all = list;
    for (const listener of listeners) listener();
  };
  const stage = (id: number, of: (before: Stage) => Stage): void =>
    show(all.map(each => (each.id === id ? { ...each, stage: of(each.stage) } : each)));
  const drop = (id: number): void => {
    hands.get(id)?.hand.end();
    hands.delete(id);
  };

  const begin = (id: number, file: Blob): void => {
    drop(id);
    const hand = handFor(
      tell => heard(id, tell),
      message => refused(id, notRead(message), []),
    );
    hands.set(id, { hand, due: 1 });
    stage(id, () => ({ kind: 'reading', bytes: 0, fixes: 0 }));
    hand.ask({ kind: 'read', file, layouts: { ...known.layouts, ...layoutsIn(keep) }, known: known.gates });
  };
  /** Two at a time would each take twice as long, and twice the memory. */
  const goOn = (): void => {
    if (all.some(each => each.stage.kind === 'reading')) return;
    const waiting = all.find(each => each.stage.kind === 'waiting');
    if (waiting) begin(waiting.id, waiting.file);
  };
  const refused = (id: number, problem: LogProblem, skipped: readonly Skipped[]): void => {
    drop(id);
    stage(id, () => ({ kind: 'refused', problem, skipped }));
    goOn();
  };
  const heard = (id: number, tell: Tell): void => {
    const at = hands.get(id);
    if (at === undefined) return;
    switch (tell.kind) {
      case 'refused':
        refused(id, tell.problem, tell.skipped);
        break;
      case 'reading':
        stage(id, () => tell);
        break;
      case 'columns':
        drop(id);
        stage(id, () => tell);
        goOn();
        break;
      case 'read': {
        const found = { outings: [], laps: [], say: [] };
        stage(id, () => ({ kind: 'read', log: tell.log, found, looking: true, marked: new Set() }));
        break;
      }
      case 'laps':
        at.due--;
        if (at.due > 0) break; // the gates have moved on meanwhile
        stage(id, before => withLaps(before, tell.found));
        goOn();
    }
  };

  return {
    list: () => all,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    put(files, from) {
      known = from;
      show([
        ...all,
        ...files.map(file => ({ id: next++, name: file.name, file, stage: { kind: 'waiting' } as const })),
      ]);
      goOn();
    },
    remove(id) {
      drop(id);
      show(all.filter(each => each.id !== id));
      goOn();
    },
    choose(id, layout) {
      keep.set(LAYOUTS, JSON.stringify({ ...layoutsIn(keep), [layout.signature]: layout }));
      stage(id, () => ({ kind: 'waiting' }));
      goOn();
    },
    setGates(id, gates, turn) {
      const at = hands.get(id);
      if (at === undefined) return;
      at.due++;
      at.hand.ask({ kind: 'gates', gates, ...(turn === undefined ? {} : { turn }) });
      stage(id, before =>
        before.kind === 'read' ? { ...before, found: { ...before.found, gates }, looking: true } : before,
      );
    },
    mark(id, lap) {
      stage(id, before => (before.kind === 'read' ? { ...before, marked: toggled(before.marked, lap) } : before));
    },
  };
}

const withLaps = (before: Stage, found: Found): Stage =>
  before.kind === 'read' ? { ...before, found, looking: false, marked: stillMarked(before, found) } : before;

/** Another gate makes other laps: a mark stays on the lap that holds the middle of the one marked. */
function stillMarked(before: Stage & { readonly kind: 'read' }, found: Found): ReadonlySet<number> {
  const middles = before.found.laps
    .filter(({ number }) => before.marked.has(number))
    .map(({ start, time }) => start.time + time / 2);
  return new Set(
    found.laps
      .filter(({ start, end }) => middles.some(at => at >= start.time && at < end.time))
      .map(({ number }) => number),
  );
}

function toggled(marked: ReadonlySet<number>, lap: number): ReadonlySet<number> {
  const next = new Set(marked);
  if (!next.delete(lap)) next.add(lap);
  return next;
}

function layoutsIn(keep: Keep): Layouts {
  try {
    const kept: unknown = JSON.parse(keep.get(LAYOUTS) || '{}');
    return typeof kept === 'object' && kept !== null ? (kept as Layouts) : {};
  } catch {
    return {};
  }
}

const notRead = (message: string): LogProblem => ({
  expected: lapsWords.readerOfLogsToRun,
  got: message || lapsWords.nothingItsProgramCould,
  remedy: lapsWords.seeThatServerStillRuns,
});

export const handInWorker: HandFor = (hear, failed) => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<Tell>) => hear(data);
  worker.onerror = ({ message }) => failed(message);
  return { ask: ask => worker.postMessage(ask), end: () => worker.terminate() };
};
