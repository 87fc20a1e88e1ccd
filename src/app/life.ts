/** How long parts last: every part at its age, or one with all that is known of it; and a guess written down. */
import {
  type KartBook,
  type LifeLine,
  type LifeSheet,
  lifeLines,
  lifeSheet,
  type RecordAsk,
  readPriors,
} from '../life/index.ts';
import { eventOf, type ForEvent, given } from './asking.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';
import { suggestion } from './words.ts';

export type LifeQuestion = ForEvent & {
  /** Running hours to reckon over; those of the event when left out. */
  readonly hours?: number;
};
export type LivesAnswer = {
  readonly kart: string;
  readonly event: string | null;
  readonly hours: number | null;
  readonly parts: readonly LifeLine[]; // the most likely to fail first
};
export type LifeAnswer = { readonly kart: string; readonly event: string | null; readonly life: LifeSheet };

/** @param priors text of data/priors.yaml */
export async function livesAsked(
  queries: Queries,
  name: string,
  question: LifeQuestion,
  priors: string,
): Promise<LivesAnswer> {
  const { kart, event, hours, record } = await asked(queries, name, question, priors);
  return { kart: name, event, hours: hours ?? null, parts: lifeLines(kart, { ...record, ...given({ hours }) }) };
}

/** Throws `Refusal` for a part that the kart has not. */
export async function lifeOf(
  queries: Queries,
  name: string,
  part: string,
  { cap, ...question }: LifeQuestion & { readonly cap?: number },
  priors: string,
): Promise<LifeAnswer> {
  if (cap !== undefined && !(cap > 0 && cap < 1))
    refuseAs(
      'cap',
      `Expected a chance between 0 and 1, got ${cap}.`,
      'Give the chance over one event you put up with: 0.01.',
    );
  const { kart, event, hours, record } = await asked(queries, name, question, priors);
  const found = kart.parts[part];
  if (!found)
    throw new Refusal([
      refuse(
        'unknown part',
        'part',
        `Expected a part of kart "${kart.name}", got "${part}".`,
        `Use a name from its kart file.${suggestion(part, Object.keys(kart.parts))}`,
      ),
    ]);
  return { kart: name, event, life: lifeSheet(kart, found, { ...record, ...given({ hours, cap }) }) };
}

/** The kart, the hours to come, and what is on record, all of one moment. */
export async function asked(
  queries: Queries,
  name: string,
  { hours: said, event: named, ...at }: LifeQuestion,
  priors: string,
) {
  if (said !== undefined && !(said > 0 && said < 10_000))
    refuseAs(
      'hours',
      `Expected running hours above 0, got ${said}.`,
      'Leave hours out for those of the event, or give a number such as 1.5.',
    );
  const [kart, state, fit] = [
    await queries.kart(name, at),
    await queries.state(name, at),
    await queries.fitness(name, at),
  ];
  const event = eventOf(state, fit.at, named);
  const hours = said ?? (event && event.runMinutes > 0 ? event.runMinutes / 60 : undefined);
  const record: RecordAsk = { books: await booksOf(queries, at), priors: readPriors(priors), state };
  return { kart, state, event: event?.event ?? null, hours, record };
}

/** Every kart of the book is the owner's: what wears alike is one record. */
export async function booksOf(queries: Queries, at: { readonly at?: string }): Promise<readonly KartBook[]> {
  const books: KartBook[] = [];
  for (const { name } of await queries.karts(at))
    books.push({
      kart: await queries.kart(name, at),
      facts: (await queries.facts(name, at)).map(({ fact }) => fact),
    });
  return books;
}

export function refuseAs(where: string, message: string, remedy: string): never {
  throw new Refusal([refuse('wrong shape', where, message, remedy)]);
}
