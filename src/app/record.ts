/** Writing facts: all of them or none, and every problem at once. */
import {
  Carried,
  type Draft,
  FACT_FORMAT,
  type Fact,
  FIRST_PREV,
  fold,
  type Payload,
  type State,
  sealAll,
} from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { stands } from './checks.ts';
import { judgeReading, type ReadingJudged } from './judge.ts';
import type { BookStore, Clock, Ids, KartReader, Snapshots } from './ports.ts';
import { fromKartFile, type Problem, refuse } from './problem.ts';
import { shape } from './shape.ts';
import type { Shelf } from './shelf.ts';
import { pastMoment } from './when.ts';

export type Writer = {
  readonly shelf: Shelf;
  readonly store: BookStore;
  readonly reader: KartReader;
  readonly clock: Clock;
  readonly ids: Ids;
  readonly device: string;
  readonly snapshots?: Snapshots;
};

export type Written = {
  readonly by: string;
  /** When it happened; left out, now. */
  readonly at?: string;
  /** The person was asked again and said the same. */
  readonly sure?: boolean;
  /** Id that the first fact of it takes, given by who says it: said twice under one id, it is recorded once. */
  readonly id?: string;
};

/** A file that is kept together with the facts that speak of it, or not at all. */
export type WithFile = { readonly hash: string; readonly bytes: Uint8Array; readonly mediaType: string };

export type Recorded =
  | {
      readonly kind: 'recorded';
      readonly facts: readonly Fact[];
      /** What the readings among them say, each with the id of its fact. */
      readonly judgements?: readonly (ReadingJudged & { readonly fact: string })[];
      /** It was said before under the same id, and has been in the book since. */
      readonly before?: true;
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

export const refused = (...problems: readonly Problem[]): Recorded => ({ kind: 'refused', problems });

export type OnKart = { readonly kart: string; readonly payloads: readonly unknown[] };

/** Checks what a person recorded against its shape and the kart, and writes it. A release is signed elsewhere. */
export const record = (
  writer: Writer,
  kart: string,
  payloads: readonly unknown[],
  ask: Written,
  file?: WithFile,
): Promise<Recorded> => recordAll(writer, [{ kart, payloads }], ask, file);

/** The same for several karts: all of it is written, or none. */
export async function recordAll(
  writer: Writer,
  wanted: readonly OnKart[],
  ask: Written,
  file?: WithFile,
): Promise<Recorded> {
  const time = pastMoment(ask.at, writer.clock.now());
  const problems: Problem[] = 'problem' in time ? [time.problem] : [];
  const by = ask.by.trim();
  if (by === '' || by.length > 200)
    problems.push(
      refuse('signature missing', 'by', 'Expected the name of who did it, got none.', 'Give it with --by NAME.'),
    );
  if (wanted.every(({ payloads }) => payloads.length === 0))
    problems.push(refuse('nothing to record', 'facts', 'Expected at least one fact, got none.', 'Give a fact.'));
  if ('problem' in time || problems.length > 0) return refused(...problems);

  await writer.shelf.refresh();
  const before = ask.id === undefined ? undefined : await saidBefore(writer, wanted, ask.id);
  if (before) return { kind: 'recorded', facts: before, before: true };
  const drafts: Checked[] = [];
  const benches: Bench[] = [];
  for (const { kart, payloads: raw } of wanted) {
    const at = ask.at === undefined ? await writer.shelf.happens(kart, writer.clock.now()) : time.at;
    const bench = await Bench.at(writer, kart, at, { ...ask, by }, file?.hash);
    benches.push(bench);
    const payloads: Payload[] = [];
    for (const [i, one] of raw.entries()) {
      const put = await bench.put(one, raw.length === 1 ? 'fact' : `facts[${i}]`);
      if (put.ok) payloads.push(put.payload);
      else problems.push(...put.problems);
    }
    drafts.push({ kart, payloads, at });
  }
  if (problems.length > 0) return refused(...problems);
  if (file) await writer.store.putFile(file.bytes, file.mediaType);
  const done = await write(writer, drafts, by, ask.id);
  if (done.kind === 'refused') return done;
  return { ...done, judgements: benches.flatMap(bench => bench.judged(done.facts)) };
}

/** What was recorded together, beginning with the fact of this id, when the same was said before. */
async function saidBefore(
  { shelf }: Writer,
  wanted: readonly OnKart[],
  id: string,
): Promise<readonly Fact[] | undefined> {
  const names = wanted.map(({ kart }) => kart).filter(kart => shelf.names().includes(kart));
  const facts = (await Promise.all(names.map(kart => shelf.facts(kart)))).flat();
  const first = facts.find(fact => fact.id === id);
  return (
    first && facts.filter(one => one.device === first.device && one.recorded === first.recorded && one.seq >= first.seq)
  );
}

type Checked = { readonly kart: string; readonly payloads: readonly Payload[]; readonly at: string };

/** Seals and appends payloads that have been checked, at once. @param id of the first of them */
export async function write(
  writer: Writer,
  checked: readonly Checked[],
  by: string,
  id = writer.ids.next(),
): Promise<Recorded> {
  const recorded = writer.clock.now().toISOString();
  const { device } = writer;
  const ids = [id];
  const drafts = checked.flatMap(({ kart, payloads, at }) =>
    tied(payloads.map(payload => ({ ...payload, id: ids.pop() ?? writer.ids.next() }))).map(
      payload => ({ ...payload, kart, at, recorded, by, device, salt: writer.ids.salt() }) as Draft,
    ),
  );
  const facts = await writer.store.appendNext(device, last => sealAll(last, drafts));
  return { kind: 'recorded', facts };
}

/** Laps that come together with a run belong to it (SPEC B29). */
function tied(batch: readonly (Payload & { readonly id: string })[]): typeof batch {
  const run = batch.find(one => one.kind === 'ran')?.id;
  return batch.map(one => (one.kind === 'laps' && one.run === undefined && run !== undefined ? { ...one, run } : one));
}

/** The kart while a batch is gone through: each fact that passes is laid on top, so the next is checked against it. */
class Bench {
  #kart: Kart | undefined;
  readonly #facts: Fact[];
  #then: Carried;

  private constructor(
    readonly writer: Writer,
    readonly name: string,
    readonly at: string,
    readonly ask: Written,
    facts: readonly Fact[],
    then: Carried,
    kart: Kart | undefined,
    readonly coming: string | undefined,
  ) {
    this.#facts = [...facts];
    this.#kart = kart;
    this.#then = then;
  }

  /** @param coming hash of a file that will be kept with the facts */
  static async at(writer: Writer, name: string, at: string, ask: Written, coming?: string): Promise<Bench> {
    const { shelf } = writer;
    if (!shelf.names().includes(name)) return new Bench(writer, name, at, ask, [], Carried.of([]), undefined, coming);
    const [facts, balance] = [await shelf.facts(name), await shelf.balance(name, at)];
    if (balance) {
      const kart = await shelf.filed(name, await shelf.state(name));
      return new Bench(writer, name, at, ask, facts, Carried.from(balance), kart, coming);
    }
    // What happened before the first kart file was written down is held against that file.
    const [first = at] = facts
      .filter(fact => fact.kind === 'kart filed')
      .map(fact => fact.at)
      .toSorted();
    const kart = await shelf.filed(name, fold(upTo(facts, first > at ? first : at)));
    return new Bench(writer, name, at, ask, facts, Carried.of(upTo(facts, at)), kart, coming);
  }

  async put(
    raw: unknown,
    where: string,
  ): Promise<{ ok: true; payload: Payload } | { ok: false; problems: readonly Problem[] }> {
    const shaped = shape(raw, this.#kart, where);
    if (!shaped.ok) return { ok: false, problems: [...shaped.problems, ...(await this.#besides(raw, where))] };
    const { payload } = shaped;
    const problems =
      payload.kind === 'kart filed' ? await this.#file(payload.text, where) : await this.#check(payload, where);
    if (problems.length > 0) return { ok: false, problems };
    this.#lay(payload);
    return { ok: true, payload };
  }

  /** What the readings of facts say, held against the kart. */
  judged(facts: readonly Fact[]): NonNullable<Extract<Recorded, { kind: 'recorded' }>['judgements']> {
    const kart = this.#kart;
    return facts.flatMap(fact => {
      if (fact.kart !== this.name) return [];
      const item = kart?.items['item' in fact ? (fact.item ?? '') : 'joint' in fact ? (fact.joint ?? '') : ''];
      if (!kart || !item || !('reading' in fact) || !fact.reading) return [];
      const judged = judgeReading(kart, item, fact.reading);
      return judged === undefined ? [] : [{ ...judged, fact: fact.id }];
    });
  }

  /** What else is wrong with a fact whose reading is none: told at once, not after the reading is right. */
  async #besides(raw: unknown, where: string): Promise<readonly Problem[]> {
    if (typeof raw !== 'object' || raw === null || !('reading' in raw)) return [];
    const { reading: _, ...rest } = raw;
    const shaped = shape(rest, this.#kart, where);
    if (!shaped.ok) return [];
    return (await this.#check(shaped.payload, where)).filter(one => one.code !== 'reading missing');
  }

  async #check(payload: Payload, where: string): Promise<readonly Problem[]> {
    if (!this.#kart) return [this.#noKart()];
    const kart = this.#kart;
    const problems = stands(payload, {
      kart,
      state: this.#state(),
      facts: this.#facts,
      at: this.at,
      by: this.ask.by,
      sure: this.ask.sure === true,
      where,
    });
    return [...problems, ...(await this.#fileKept(payload, where))];
  }

  async #file(text: string, where: string): Promise<readonly Problem[]> {
    const read = await this.writer.reader.read(text);
    if (!read.ok) return read.problems.map(one => fromKartFile(one));
    if (read.kart.name !== this.name)
      return [
        refuse(
          'kart file',
          `${where}.text`,
          `Expected the file of kart "${this.name}", got that of "${read.kart.name}".`,
          'Name the kart as its file does.',
        ),
      ];
    this.#kart = read.kart;
    return [];
  }

  /** A photo or a lap file must be in the book before a fact speaks of it. */
  async #fileKept(payload: Payload, where: string): Promise<readonly Problem[]> {
    const log = payload.kind === 'laps' && payload.fileKept !== false ? payload.file : undefined;
    const hash = payload.kind === 'found' || payload.kind === 'failed' ? payload.photo : log;
    if (hash === undefined || hash === this.coming || (await this.writer.store.getFile(hash))) return [];
    return [
      refuse(
        'unknown file',
        where,
        `Expected a file kept in this book, got ${hash.slice(0, 12)}….`,
        'Put the file into the book first.',
      ),
    ];
  }

  #state(): State {
    this.#then = this.#then.state ? this.#then : Carried.of(upTo(this.#facts, this.at));
    return this.#then.state ?? fold(upTo(this.#facts, this.at));
  }

  #lay(payload: Payload): void {
    const at = this.at;
    const recorded = this.writer.clock.now().toISOString();
    const seq = Number.MAX_SAFE_INTEGER - 1_000_000 + this.#facts.length; // after all that is there
    const { by } = this.ask;
    const id = `to be written ${this.#facts.length}`;
    const laid = { ...payload, v: FACT_FORMAT, id, kart: this.name, at, recorded, by, device: this.writer.device, seq };
    const fact = { ...laid, prev: FIRST_PREV, hash: FIRST_PREV } as Fact;
    this.#facts.push(fact);
    this.#then.add(fact);
  }

  #noKart(): Problem {
    const known = this.writer.shelf.names();
    return refuse(
      'unknown kart',
      'kart',
      `Expected a kart of this book that has its file by then, got "${this.name}".`,
      known.length === 0
        ? 'Make a kart file with `new`, and name it with --kart.'
        : `Karts in this book: ${known.join(', ')}. A new one begins with its kart file.`,
    );
  }
}

/** What happened up to a moment as it is known now: written later counts, and so does a strike written later. */
const upTo = (facts: readonly Fact[], at: string): readonly Fact[] =>
  facts.filter(fact => fact.at <= at || fact.kind === 'struck');
