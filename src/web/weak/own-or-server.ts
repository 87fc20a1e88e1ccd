/**
 * One answer for a page, worked out here from this device's own book. What takes seconds is asked of the server instead,
 * while that is in reach and holds all that is here.
 */
import type { Problem, Queries } from '../../app/index.ts';
import type { Session } from '../session.ts';

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
    /** It takes seconds here. */
    readonly slow?: boolean;
  },
): Promise<T> {
  if (!slow) return here(session.ask.own());
  try {
    const said = Object.entries(given).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]]));
    return await session.ask.server(what, Object.fromEntries(said));
  } catch (error) {
    if (!session.ask.isDown(error)) throw error;
    return here(session.ask.own());
  }
}

export const problemsOf = (session: Session, error: unknown): readonly Problem[] => session.ask.problems(error);

/** Those that are known, so that what is left out is absent. */
export const known = <K extends string>(all: Readonly<Record<K, number | undefined>>): { readonly [N in K]?: number } =>
  Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as { [N in K]?: number };
