/** Which spares to carry, asked anew when a fact arrives or the budget changes. */
import { useEffect, useState } from 'preact/hooks';
import { type Problem, type SparesAnswer, sparesOf } from '../../app/index.ts';
import type { Session, Snapshot } from '../session.ts';
import { known, ownOrServer, problemsOf } from '../weak/own-or-server.ts';
import { fetchShipped } from '../weak/texts.ts';

/** Until somebody has typed on: the answer takes a while. */
const WAIT_MS = 250;

export type Budget = Readonly<Record<'money' | 'kilograms' | 'minutes', number | undefined>>;
export type Asked = { readonly spares?: SparesAnswer; readonly problems: readonly Problem[] };

export function useSpares(session: Session, snapshot: Snapshot, budget: Budget): Asked {
  const [asked, setAsked] = useState<Asked>({ problems: [] });
  const { money, kilograms, minutes } = budget;
  useEffect(() => {
    let mine = true;
    const timer = setTimeout(() => {
      sparesFor(session, snapshot.kart.name, { money, kilograms, minutes }).then(
        spares => mine && setAsked({ spares, problems: [] }),
        (error: unknown) => mine && setAsked(was => ({ ...was, problems: problemsOf(session, error) })),
      );
    }, WAIT_MS);
    return () => {
      mine = false;
      clearTimeout(timer);
    };
  }, [session, snapshot.kart, snapshot.state, money, kilograms, minutes]);
  return asked;
}

async function sparesFor(session: Session, kart: string, budget: Budget): Promise<SparesAnswer> {
  const { priors } = await fetchShipped();
  const here = (own: Parameters<typeof sparesOf>[0]) => sparesOf(own, kart, known(budget), priors);
  return ownOrServer(session, { what: 'spares', given: budget, here, slow: true });
}
