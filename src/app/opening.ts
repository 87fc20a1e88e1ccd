/** What a page shows before anything else: the karts of a book, and of one of them every answer, with its newest entries. */
import type { Answers, KartLine, Queries } from './queries.ts';

/** Entries that come at once; a sheet that needs the others asks for them. */
const NEWEST = 100;

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
  const kart = kartAmong(karts, wanted);
  return kart === undefined ? { karts } : { karts, answers: await firstAnswers(queries, kart.name) };
}

export const kartAmong = (karts: readonly KartLine[], wanted: string): KartLine | undefined =>
  karts.find(({ name }) => name === wanted) ?? karts[0];

export async function firstAnswers(queries: Pick<Queries, 'answers'>, kart: string): Promise<FirstAnswers> {
  const answers = await queries.answers(kart);
  return { ...answers, facts: answers.facts.slice(-NEWEST).toReversed(), entries: answers.facts.length };
}
