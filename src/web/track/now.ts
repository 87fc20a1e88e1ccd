/** What is under way: the event of today, and the session before. */
import type { FactOf, KartEvent } from '../../book/index.ts';
import { typedFrom } from '../numbers/question.ts';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { dateOf } from '../words/reads.ts';
import type { Typed } from './said.ts';

export type TrackProps = { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep };

/** The next event, once it has begun or begins today. */
export function eventNow({ state, fitness }: Snapshot): KartEvent | undefined {
  const event = fitness.event === null ? undefined : state.events[fitness.event];
  return event && (event.from <= fitness.at || dateOf(event.from) === dateOf(fitness.at)) ? event : undefined;
}

/** Facts stand newest first. */
export const lastRan = ({ facts }: Snapshot): FactOf<'ran'> | undefined =>
  facts.find(({ fact, struck }) => struck === null && fact.kind === 'ran')?.fact as FactOf<'ran'> | undefined;

/** Where what was said of the session to come is kept. */
export const comingSlot = (kart: string): string => `track coming ${kart}`;

/** What a session just run was most likely: as it was planned, as the one before, in the event under way. */
export function likelyRan(snapshot: Snapshot, keep: Keep): Typed {
  const last = lastRan(snapshot);
  const planned = typedFrom(keep.get(comingSlot(snapshot.kart.name)));
  const laps = planned?.laps || last?.laps?.toString();
  const event = eventNow(snapshot)?.event;
  return {
    ...(last && { minutes: String(last.minutes) }),
    ...(laps && { laps }),
    ...(planned?.wet && { wet: planned.wet }),
    ...(event && { event }),
  };
}
