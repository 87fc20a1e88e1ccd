/**
 * One answer for a page: worked out here from this device's own copy of the facts; where the book holds more karts, whose
 * record counts too, by the server, and here again when that is out of reach.
 */
import { type Problem, type Queries, Refusal } from '../../app/index.ts';
import type { Session } from '../session.ts';

export type Answered<T> = {
  readonly answer: T;
  /** The record of the owner's other karts was out of reach. */
  readonly alone: boolean;
};

export async function ownOrServer<T>(
  session: Session,
  {
    what,
    given,
    here,
    slow = false,
  }: {
    readonly what: string;
    /** What is left out is not asked. */
    readonly given: Readonly<Record<string, number | undefined>>;
    readonly here: (own: Queries) => Promise<T>;
    /** It takes seconds here: the server is asked first while it is in reach. */
    readonly slow?: boolean;
  },
): Promise<Answered<T>> {
  const byOwn = async (): Promise<T> => {
    const own = session.ask.own();
    if (own === undefined) throw new Error('ownOrServer: a kart must be open, got none');
    return here(own);
  };
  const only = session.view().karts.length < 2;
  if (only && !slow) return { answer: await byOwn(), alone: false };
  try {
    const said = Object.entries(given).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]]));
    return { answer: await session.ask.server(what, Object.fromEntries(said)), alone: false };
  } catch (error) {
    if (!session.ask.isDown(error)) throw error;
    return { answer: await byOwn(), alone: !only };
  }
}

export const problemsOf = (session: Session, error: unknown): readonly Problem[] =>
  error instanceof Refusal ? error.problems : session.ask.problems(error);

/** Those that are known, so that what is left out is absent. */
export const known = <K extends string>(all: Readonly<Record<K, number | undefined>>): { readonly [N in K]?: number } =>
  Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as { [N in K]?: number };
