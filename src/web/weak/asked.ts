/** What would hurt us, asked anew when a fact arrives or the budget changes. */
import { useEffect, useState } from 'preact/hooks';
import type { Problem, WeakLinksAnswer } from '../../app/index.ts';
import type { Session, Snapshot } from '../session.ts';
import { askBeside } from '../slow-questions/ask.ts';
import { known } from './known.ts';
import { fetchShipped } from './texts.ts';

export type Budget = { readonly minutes: number | undefined; readonly money: number | undefined };
export type Asked = { readonly weak?: WeakLinksAnswer; readonly problems: readonly Problem[] };

export function useWeakLinks(session: Session, snapshot: Snapshot, { minutes, money }: Budget): Asked {
  const [asked, setAsked] = useState<Asked>({ problems: [] });
  useEffect(() => {
    // It takes a phone a second or so.
    const question = askFor(snapshot.kart.name, { minutes, money });
    return askBeside(session, question, heard =>
      setAsked(was => ('answer' in heard ? { weak: heard.answer, problems: [] } : { ...was, ...heard })),
    );
  }, [session, snapshot.kart, snapshot.state, minutes, money]);
  return asked;
}

async function askFor(kart: string, budget: Budget) {
  return { what: 'weak links', kart, ask: known(budget), texts: await fetchShipped() } as const;
}
