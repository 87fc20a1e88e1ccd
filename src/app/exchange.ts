/**
 * Two books become one (docs/exchange.md): each tells the end of every device's chain it holds, and gives the other what
 * lies beyond. What was sent twice counts once; a book restored from an old copy gets back what others hold. A chain that
 * is not the same in both is left as it is, and named, and keeps no other from going on.
 */
import { type ChainEnd, type Fact, isProblem, upcast } from '../book/index.ts';
import type { AppendOutcome } from './ports.ts';
import { type Problem, refuse, sentence } from './problem.ts';

/** The last fact of each device that a book holds. */
export type ChainEnds = Readonly<Record<string, ChainEnd>>;

export type Taken =
  | { readonly kind: 'taken'; readonly added: number; readonly known: number }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

/** One of two books, here or at the other end of a line. */
export type BookSide = {
  ends(): Promise<ChainEnds>;
  /** Facts after these numbers, in an order in which they can be taken; at most `BATCH`, so ask again until none come. */
  since(numbers: Readonly<Record<string, number>>): Promise<readonly Fact[]>;
  /** All of them or none. */
  take(facts: readonly unknown[]): Promise<Taken>;
};

export type Exchanged = {
  readonly came: number;
  readonly went: number;
  /** Chains that did not pass, and why. */
  readonly problems: readonly Problem[];
};

/** So many facts go in one request: some hundred kilobytes. */
export const BATCH = 500;

/** Rejects only when a side cannot be reached or cannot keep what it is given; what passed until then is kept, and the next time goes on from there. */
export async function exchange(here: BookSide, there: BookSide): Promise<Exchanged> {
  const [mine, theirs] = await Promise.all([here.ends(), there.ends()]);
  const forked = Object.keys(mine).filter(device => isForked(mine[device], theirs[device]));
  const problems = new Map(forked.map(device => [device, forkedChain(device)]));
  // Both ways are tried: a side without room takes nothing, and must not keep what it has to itself.
  let failed: unknown;
  const went = await pass(here, there, theirs, problems).catch(error => {
    failed = error;
    return 0;
  });
  const came = await pass(there, here, mine, problems);
  if (failed !== undefined) throw failed;
  return { came, went, problems: [...problems.values()] };
}

/**
 * One book at both ends? Whoever met before shares the beginning of some device's chain. Two books that both hold facts and
 * share none belong to different owners or a demo, and must not run into each other by themselves.
 * @param starts hashes of the first fact of each device
 */
export const sameBook = (here: readonly string[], there: readonly string[]): boolean =>
  here.length === 0 || there.length === 0 || here.some(hash => there.includes(hash));

const isForked = (a: ChainEnd | undefined, b: ChainEnd | undefined): boolean =>
  a !== undefined && b !== undefined && a.seq === b.seq && a.hash !== b.hash;

async function pass(from: BookSide, to: BookSide, ends: ChainEnds, problems: Map<string, Problem>): Promise<number> {
  const numbers: Record<string, number> = Object.fromEntries(
    Object.entries(ends).map(([device, { seq }]) => [device, seq]),
  );
  for (const device of problems.keys()) numbers[device] = Number.MAX_SAFE_INTEGER;
  let passed = 0;
  for (;;) {
    const facts = await from.since(numbers);
    if (facts.length === 0) return passed;
    for (const [device, chain] of chainsOf(facts)) {
      const taken = await to.take(chain);
      if (taken.kind === 'taken') passed += taken.added;
      else for (const problem of taken.problems) problems.set(device, problem);
      numbers[device] = taken.kind === 'taken' ? (chain.at(-1)?.seq ?? 0) : Number.MAX_SAFE_INTEGER;
    }
  }
}

function chainsOf(facts: readonly Fact[]): ReadonlyMap<string, readonly Fact[]> {
  const chains = new Map<string, Fact[]>();
  for (const fact of facts) chains.set(fact.device, [...(chains.get(fact.device) ?? []), fact]);
  return chains;
}

/** What came from outside, read and held against its hashes; every problem, and then none of it. */
export function readForeign(raw: readonly unknown[]): {
  readonly facts: readonly Fact[];
  readonly problems: readonly Problem[];
} {
  const read = raw.map(upcast);
  return {
    facts: read.filter(one => !isProblem(one)),
    problems: read
      .filter(isProblem)
      .map(one => refuse('book', `fact ${one.fact ?? ''}`.trim(), sentence(one.message), sentence(one.remedy))),
  };
}

/** What a store says of facts that came, for the one who sent them. */
export function takenOf(outcome: AppendOutcome): Taken {
  if (outcome.kind === 'kept') return { kind: 'taken', added: outcome.added, known: outcome.known };
  return { kind: 'refused', problems: [notTaken(outcome)] };
}

export function notTaken(outcome: Exclude<AppendOutcome, { kind: 'kept' }>): Problem {
  if (outcome.kind === 'clash')
    return refuse(
      'book',
      `fact ${outcome.id}`,
      `Expected fact ${outcome.id} to say what it says in this book, and it says something else.`,
      'One of the two was changed: verify both books. Nothing of it was taken.',
    );
  return refuse(
    'book',
    `device ${outcome.device}`,
    `Expected the facts of device ${outcome.device} to go on from ${outcome.expected}, got ${outcome.got}.`,
    'Export the whole book of that device and import that. Nothing of it was taken.',
  );
}

const forkedChain = (device: string): Problem =>
  refuse(
    'book',
    `device ${device}`,
    `Expected one chain of facts of device ${device}, and the two books hold different ones.`,
    'Two programs wrote under one name, or a copy of that device went on by itself. Export both books and keep them; nothing of that chain was taken.',
  );
