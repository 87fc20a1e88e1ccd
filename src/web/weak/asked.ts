/** What would hurt us, asked anew when a fact arrives or the budget changes. */
import { useEffect, useState } from 'preact/hooks';
import { type Problem, type WeakLinksAnswer, weakLinksOf } from '../../app/index.ts';
import type { Session, Snapshot } from '../session.ts';
import { known, ownOrServer, problemsOf } from './own-or-server.ts';
import { fetchShipped } from './texts.ts';

export type Budget = { readonly minutes: number | undefined; readonly money: number | undefined };
export type Asked = { readonly weak?: WeakLinksAnswer; readonly problems: readonly Problem[] };

export function useWeakLinks(session: Session, snapshot: Snapshot, { minutes, money }: Budget): Asked {
  const [asked, setAsked] = useState<Asked>({ problems: [] });
  useEffect(() => {
    let mine = true;
    // After the page is drawn: it takes a phone a second or so.
    const timer = setTimeout(() => {
      weakLinksFor(session, snapshot.kart.name, { minutes, money }).then(
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

async function weakLinksFor(session: Session, kart: string, budget: Budget): Promise<WeakLinksAnswer> {
  const texts = await fetchShipped();
  const here = (own: Parameters<typeof weakLinksOf>[0]) => weakLinksOf(own, kart, known(budget), texts);
  return ownOrServer(session, { what: 'weak-links', given: budget, here });
}
