/** Which spares to carry, asked anew when a fact arrives or the budget changes. */
import { useEffect, useState } from 'preact/hooks';
import type { Problem, SparesAnswer } from '../../app/index.ts';
import type { Session, Snapshot } from '../session.ts';
import { askBeside } from '../slow-questions/ask.ts';
import { known } from '../weak/known.ts';
import { fetchShipped } from '../weak/texts.ts';

/** Until somebody has typed on: the answer takes a while. */
const WAIT_MS = 250;

export type Budget = Readonly<Record<'money' | 'kilograms' | 'minutes', number | undefined>>;
export type Asked = { readonly spares?: SparesAnswer; readonly problems: readonly Problem[] };

export function useSpares(session: Session, snapshot: Snapshot, budget: Budget): Asked {
  const [asked, setAsked] = useState<Asked>({ problems: [] });
  const { money, kilograms, minutes } = budget;
  useEffect(() => {
    let stop = (): void => undefined;
    const timer = setTimeout(() => {
      stop = askBeside(session, question(snapshot.kart.name, { money, kilograms, minutes }), heard =>
        setAsked(was => ('answer' in heard ? { spares: heard.answer, problems: [] } : { ...was, ...heard })),
      );
    }, WAIT_MS);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [session, snapshot.kart, snapshot.state, money, kilograms, minutes]);
  return asked;
}

async function question(kart: string, budget: Budget) {
  const { priors } = await fetchShipped();
  return { what: 'spares', kart, ask: known(budget), priors } as const;
}
