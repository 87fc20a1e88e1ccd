/** What a page shows before anything else: the karts of a book, and of one of them every answer, with its newest entries. */
import type { Answers, KartLine, Queries } from './queries.ts';

/** Entries that come at once; a sheet that needs the others asks for them. */
const NEWEST = 100;
/** Readings of each item that come at once: as many as a sheet draws. The book itself has them all. */
export const LAST_READ = 5;

/** `facts` newest first, and how many there are in all. */
export type FirstAnswers = Answers & { readonly entries: number };
export type Opening = {
  readonly karts: readonly KartLine[];
  /** Left out where the book holds no kart. */
  readonly answers?: FirstAnswers;
};

/** @param wanted the first kart where the book has none of this name */
export async function openingOf(queries: Pick<Queries, 'karts' | 'answers'>, wanted: string): Promise<Opening> {
  const karts = await queries.karts();
  const kart = kartAmong(karts, [wanted]);
  return kart === undefined ? { karts } : { karts, answers: toShow(await firstAnswers(queries, kart.name)) };
}

/** The answers without what no sheet shows before the book itself is read. */
export function toShow<A extends Pick<Answers, 'state'>>(answers: A): A {
  const { items } = answers.state;
  const short = Object.entries(items).map(
    ([id, item]) => [id, { ...item, readings: item.readings.slice(-LAST_READ) }] as const,
  );
  return { ...answers, state: { ...answers.state, items: Object.fromEntries(short) } };
}

export const kartAmong = (karts: readonly KartLine[], wanted: readonly string[]): KartLine | undefined =>
  wanted.flatMap(one => karts.filter(({ name }) => name === one))[0] ?? karts[0];

export async function firstAnswers(queries: Pick<Queries, 'answers'>, kart: string): Promise<FirstAnswers> {
  const answers = await queries.answers(kart);
  return { ...answers, facts: answers.facts.slice(-NEWEST).toReversed(), entries: answers.facts.length };
}
