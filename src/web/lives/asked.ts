/**
 * How long parts last, worked out here from the records of all karts of this device's book.
 */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { type KartBook, type LifeAsk, readPriors } from '../../life/index.ts';
import type { Session, Snapshot } from '../session.ts';
import { fetchShipped } from '../weak/texts.ts';

type Gathered = { readonly others: readonly KartBook[]; readonly priors: string };
export type Asked = {
  /** What is on record, and the hours of the event ahead where there is one. */
  readonly ask?: LifeAsk;
  readonly failed?: unknown;
};

export function useLives(session: Session, snapshot: Snapshot): Asked {
  const [gathered, setGathered] = useState<Gathered>();
  const [failed, setFailed] = useState<unknown>();
  const { kart, state, facts, fitness } = snapshot;
  const others = session.view().karts.flatMap(({ name }) => (name === kart.name ? [] : [name]));
  useEffect(() => {
    let mine = true;
    gather(session, others).then(
      all => mine && setGathered(all),
      error => mine && setFailed(error),
    );
    return () => {
      mine = false;
    };
  }, [session, kart.name, others.join()]);
  const ask = useMemo((): LifeAsk | undefined => {
    if (gathered === undefined) return undefined;
    const event = fitness.event === null ? undefined : state.events[fitness.event];
    return {
      books: [{ kart, facts: facts.map(({ fact }) => fact) }, ...gathered.others],
      priors: readPriors(gathered.priors),
      state,
      ...(event && event.runMinutes > 0 ? { hours: event.runMinutes / 60 } : {}),
    };
  }, [gathered, kart, state, facts, fitness.event]);
  return {
    ...(ask && { ask }),
    ...(failed !== undefined && { failed }),
  };
}

async function gather(session: Session, others: readonly string[]): Promise<Gathered> {
  const { priors } = await fetchShipped();
  return { priors, others: await Promise.all(others.map(name => session.ask.book(name))) };
}
