/** The whole program behind one object: every face asks and commands through it, and through nothing else. */
import { exportLines, FACT_FORMAT, type Fact, type FactKind, importLines } from '../book/index.ts';
import type { TrackSheet } from '../prep/index.ts';
import { given } from './asking.ts';
import type { DemoText } from './demo.ts';
import { BATCH, type BookSide, notTaken, readForeign, takenOf } from './exchange.ts';
import type { ForgetAsk, Forgot } from './forget.ts';
import type { LapsIn, LogSaid, SessionSaid } from './laps.ts';
import type { BookStore, Clock, Ids, KartReader, Kept, Snapshots } from './ports.ts';
import { fromKartFile, type Problem, Refusal, refuse, sentence } from './problem.ts';
import type { Proof } from './proof.ts';
import { type Queries, queriesOn } from './queries.ts';
import type { LogBytes } from './read-log.ts';
import { type OnKart, type Recorded, record, recordAll, type WithFile, type Writer, type Written } from './record.ts';
import { release, type Signature } from './release.ts';
import { Shelf } from './shelf.ts';
import type { SnapshotProof } from './snapshot-proof.ts';
import type { TrackQuestion } from './track.ts';

export type AppParts = {
  readonly store: BookStore;
  readonly clock: Clock;
  readonly ids: Ids;
  readonly reader: KartReader;
  /** Name of this device, unique among those whose books are ever merged. */
  readonly device: string;
  /** Where a long book opens faster from; left out, all of it is read. */
  readonly snapshots?: Snapshots;
};

export type Filed =
  | Extract<Recorded, { kind: 'refused' }>
  | { readonly kind: 'recorded' | 'unchanged'; readonly kart: string; readonly facts: readonly Fact[] };

export type Imported =
  | Extract<Recorded, { kind: 'refused' }>
  | { readonly kind: 'imported'; readonly added: number; readonly known: number };

export type Verified = Proof & { readonly snapshot?: SnapshotProof };

export type App = Queries & {
  /** Before a session: air, jet, pressures, fuel, gearing, and what has changed since the last. */
  track(name: string, ask?: TrackQuestion): Promise<TrackSheet>;
  /** Writes facts, all or none. Payloads as in the book; a reading may be its text; a file is kept with them. */
  record(kart: string, payloads: readonly unknown[], ask: Written, file?: WithFile): Promise<Recorded>;
  /** The same on several karts at once. */
  recordAll(wanted: readonly OnKart[], ask: Written): Promise<Recorded>;
  /** Files a kart file under the name it gives; nothing is written when the same text is in force. */
  fileKart(text: string, ask: Written): Promise<Filed>;
  /** What a kart file's text reads as: the kart, or every reason why not. Writes nothing. */
  read: KartReader['read'];
  /** A log, as it streams by: one run with its laps, or nothing of it. */
  importLaps(kart: string, log: LogBytes, said: LogSaid): Promise<LapsIn>;
  /** Times read off a stopwatch: "52.31 0:52.4 1.02,5". */
  lapsByHand(kart: string, times: string, said: SessionSaid): Promise<LapsIn>;
  release(kart: string, sign: Signature): Promise<Recorded>;
  /** Takes a person out of it; only the name and what is theirs goes. */
  forget(ask: ForgetAsk): Promise<Forgot>;
  /** The whole book as JSON Lines: the same facts always give the same bytes. */
  /** @param format an older one, for an older program: throws `Refusal` when that cannot be without loss */
  exportBook(format?: number): Promise<string>;
  /** Merges an exported book into this one, or nothing of it. */
  importBook(text: string): Promise<Imported>;
  /** What is wrong with the book; nothing when it is whole. A snapshot is compared with the facts, and thrown away when it does not fit. */
  verifyBook(): Promise<Verified>;
  /** Puts the demo kart and season into a book that holds nothing yet; the kart's name, or undefined if it holds something. */
  seedDemo(text: DemoText): Promise<string | undefined>;
  /** Facts of a kart with their rows, in order of arrival, for a face that keeps its own copy. */
  kept(kart: string, after?: number): Promise<readonly Kept[]>;
  /** Meeting another book: see `exchange`. */
  ends: BookSide['ends'];
  /** Hashes of the first fact of each device: see `sameBook`. */
  starts(): Promise<readonly string[]>;
  since: BookSide['since'];
  take: BookSide['take'];
  /** What a fact of the book says: undefined when there is none of this id. */
  kindOf(fact: string): Promise<FactKind | undefined>;
  /** The same book, written under another device's name. */
  as(device: string): App;
  putFile: BookStore['putFile'];
  getFile: BookStore['getFile'];
  watch: BookStore['watch'];
  close(): Promise<void>;
};

/** What goes across to another thread: plain data asked, plain data answered. */
export type PlainApp = Omit<App, 'as' | 'close' | 'importLaps' | 'watch'>;

export function createApp({ store, clock, ids, reader, device, snapshots }: AppParts): App {
  const shelf = new Shelf({ store, reader, ...given({ snapshots }) });
  return appOn({ shelf, store, reader, clock, ids, device, ...given({ snapshots }) });
}

function appOn(writer: Writer): App {
  const { shelf, store, reader, clock } = writer;
  const fresh = async (): Promise<Shelf> => {
    await shelf.refresh();
    return shelf;
  };
  const queries = queriesOn(shelf, clock);
  const laps = {
    ...queries,
    record: (...said: Parameters<App['record']>) => record(writer, ...said),
    now: () => clock.now().toISOString(),
  };
  return {
    ...queries,
    track: async (name, ask) => (await import('./track.ts')).track(shelf, clock, name, ask),
    record: laps.record,
    recordAll: (wanted, ask) => recordAll(writer, wanted, ask),
    importLaps: async (...said) => (await import('./import-laps.ts')).importLaps(laps, ...said),
    lapsByHand: async (...said) => (await import('./laps-by-hand.ts')).lapsByHand(laps, ...said),
    read: text => reader.read(text),
    fileKart: (text, ask) => fileKart(writer, text, ask),
    release: (kart, sign) => release(writer, kart, sign),
    forget: async ask => (await import('./forget.ts')).forget(writer, ask),
    exportBook: async (format = FACT_FORMAT) =>
      exportLines(
        heldBy(
          format,
          (await store.read()).map(({ fact }) => fact),
        ),
      ),
    importBook: text => importBook(store, text),
    verifyBook: () => verifyBook(writer),
    ends: async () => Object.fromEntries((await fresh()).ends()),
    starts: async () => (await fresh()).starts(),
    since: async numbers => since(store, await fresh(), numbers),
    async take(raw) {
      const { facts, problems } = readForeign(raw);
      return problems.length > 0 ? { kind: 'refused', problems } : takenOf(await store.append(facts));
    },
    seedDemo: text => seedDemo(writer, text),
    kept: async (kart, after = 0) => (await fresh()).after(kart, after),
    kindOf: async fact => (await shelf.fact(fact))?.kind,
    as: device => appOn({ ...writer, device }),
    putFile: (bytes, mediaType) => store.putFile(bytes, mediaType),
    getFile: hash => store.getFile(hash),
    watch: listener => store.watch(listener),
    async close() {
      await shelf.close();
      await store.close();
    },
  };
}

/** A hash proves its fact in the format it was sealed in, and in no other. */
function heldBy(format: number, facts: readonly Fact[]): readonly Fact[] {
  const newer = facts.filter(({ v }) => v > format);
  const [first] = newer;
  if (first === undefined) return facts;
  throw new Refusal([
    refuse(
      'book',
      `fact ${first.id}`,
      `Expected facts up to format ${format}, got ${newer.length} of ${facts.length} in a newer one, the first written ${first.recorded}.`,
      `Written in format ${format} they would lose the hashes that prove who wrote them. Update the older program, or give it a backup of before.`,
    ),
  ]);
}

async function verifyBook({ store, shelf, snapshots }: Writer): Promise<Verified> {
  const [{ proofOf }, { snapshotProof }] = await Promise.all([import('./proof.ts'), import('./snapshot-proof.ts')]);
  const proof = await proofOf(store);
  if (proof.problems.length > 0 || snapshots === undefined) return proof;
  const snapshot = await snapshotProof(store, snapshots);
  if (snapshot === 'thrown away') await shelf.anew();
  return { ...proof, snapshot };
}

/** Device by device, each in the order of its chain. */
async function since(
  store: BookStore,
  shelf: Shelf,
  numbers: Readonly<Record<string, number>>,
): Promise<readonly Fact[]> {
  const facts: Fact[] = [];
  for (const [device, { seq }] of shelf.ends()) {
    const after = Object.hasOwn(numbers, device) ? (numbers[device] ?? 0) : 0;
    if (seq <= after) continue;
    const kept = await store.pick({ device, after, limit: BATCH - facts.length });
    for (const { fact } of kept) facts.push(fact);
    if (facts.length === BATCH) break;
  }
  return facts;
}

async function fileKart(writer: Writer, text: string, ask: Written): Promise<Filed> {
  const read = await writer.reader.read(text);
  if (!read.ok)
    return {
      kind: 'refused',
      problems: read.problems.map(one => fromKartFile(one)),
    };
  const kart = read.kart.name;
  const { shelf } = writer;
  await shelf.refresh();
  if (shelf.names().includes(kart) && (await shelf.filedText(kart)) === text)
    return { kind: 'unchanged', kart, facts: [] };
  const done = await record(writer, kart, [{ kind: 'kart filed', text }], ask);
  return done.kind === 'recorded' ? { ...done, kart } : done;
}

async function importBook(store: BookStore, text: string): Promise<Imported> {
  const read = importLines(text);
  if (read.kind === 'problems') return { kind: 'refused', problems: read.problems.map(told) };
  const outcome = await store.append(read.facts);
  if (outcome.kind === 'kept') return { kind: 'imported', added: outcome.added, known: outcome.known };
  return { kind: 'refused', problems: [notTaken(outcome)] };
}

async function seedDemo(writer: Writer, text: DemoText): Promise<string | undefined> {
  const { shelf, store, reader, clock } = writer;
  const { expandDemo } = await import('./demo.ts');
  await shelf.refresh();
  if (shelf.names().length > 0) return undefined;
  const read = await reader.read(text.kart);
  if (!read.ok) throw new Error(`seedDemo: the demo kart file must read, got ${read.problems[0]?.message}`);
  const facts = expandDemo(text, read.kart, clock.now().toISOString());
  const outcome = await store.append(facts);
  if (outcome.kind !== 'kept')
    throw new Error(`seedDemo: the demo season must go into an empty book, got ${outcome.kind}`);
  return read.kart.name;
}

const told = (one: { message: string; remedy: string; fact?: string; line?: number }): Problem => {
  const where = one.line === undefined ? `fact ${one.fact ?? ''}`.trim() : `line ${one.line}`;
  return refuse('book', where, sentence(one.message), sentence(one.remedy));
};
