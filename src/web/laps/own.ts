/** What this device works out from its own facts, asked anew when one arrives. */
import { useEffect, useState } from 'preact/hooks';
import type { Problem, Queries } from '../../app/index.ts';
import { problemsOf } from '../problems-of.ts';
import type { LapsProps } from './sheet.tsx';

type Asked<T> = { readonly answer?: T; readonly problems: readonly Problem[] };

/** @param key what `ask` depends on beside the facts */
export function useOwn<T>(
  { session, snapshot }: LapsProps,
  ask: (own: Queries, kart: string) => Promise<T>,
  key = '',
): Asked<T> {
  const [asked, setAsked] = useState<Asked<T>>({ problems: [] });
  useEffect(() => {
    let mine = true;
    ask(session.ask.own(), snapshot.kart.name).then(
      answer => mine && setAsked({ answer, problems: [] }),
      (error: unknown) => mine && setAsked({ problems: problemsOf(error) }),
    );
    return () => {
      mine = false;
    };
  }, [session, snapshot.kart, snapshot.facts, key]);
  return asked;
}
