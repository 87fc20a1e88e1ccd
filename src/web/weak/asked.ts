/**
 * What would hurt us, asked anew when a fact arrives or the budget changes. Worked out here from this device's own copy of the
 * facts; where the book holds more karts, whose record counts too, by the server, and here again when that is out of reach.
 */
import { useEffect, useState } from 'preact/hooks';
import { type Problem, Refusal, type WeakLinksAnswer, weakLinksOf } from '../../app/index.ts';
import type { RiskScheme } from '../../risk/index.ts';
import type { Session, Snapshot } from '../session.ts';
import { fetchShipped } from './texts.ts';

export type Budget = { readonly minutes?: number; readonly money?: number };
export type Weak = {
  readonly answer: WeakLinksAnswer;
  readonly scheme: RiskScheme;
  /** The record of the owner's other karts was out of reach. */
  readonly alone: boolean;
};
export type Asked = { readonly weak?: Weak; readonly problems: readonly Problem[] };

export function useWeakLinks(session: Session, snapshot: Snapshot, { minutes, money }: Budget): Asked {
  const [asked, setAsked] = useState<Asked>({ problems: [] });
  useEffect(() => {
    let mine = true;
    // After the page is drawn: it takes a phone a second or so.
    const timer = setTimeout(() => {
      const budget = { ...(minutes === undefined ? {} : { minutes }), ...(money === undefined ? {} : { money }) };
      weakLinksFor(session, snapshot.kart.name, budget).then(
        weak => mine && setAsked({ weak, problems: [] }),
        (error: unknown) => mine && setAsked(was => ({ ...was, problems: problemsOf(session, error) })),
      );
    }, 30);
    return () => {
      mine = false;
      clearTimeout(timer);
    };
  }, [session, snapshot.kart, snapshot.state, minutes, money]);
  return asked;
}

async function weakLinksFor(session: Session, kart: string, budget: Budget): Promise<Weak> {
  const { scheme, ...texts } = await fetchShipped();
  const here = async (): Promise<WeakLinksAnswer> => {
    const own = session.ask.own();
    if (own === undefined) throw new Error('useWeakLinks: a kart must be open, got none');
    return weakLinksOf(own, kart, budget, texts);
  };
  if (session.view().karts.length < 2) return { answer: await here(), scheme, alone: false };
  try {
    const given = Object.fromEntries(Object.entries(budget).map(([key, value]) => [key, String(value)]));
    return { answer: await session.ask.server('weak-links', given), scheme, alone: false };
  } catch (error) {
    if (!session.ask.isDown(error)) throw error;
    return { answer: await here(), scheme, alone: true };
  }
}

const problemsOf = (session: Session, error: unknown): readonly Problem[] =>
  error instanceof Refusal ? error.problems : session.ask.problems(error);
