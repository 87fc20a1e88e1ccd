/** The track sheet. Apart from the other questions: it asks five of the numbers, and the bench page opens without them. */
import { knownAt } from '../book/index.ts';
import { type TrackAsk, type TrackSheet, trackSheet } from '../prep/index.ts';
import { type At, given } from './asking.ts';
import type { Clock } from './ports.ts';
import { standingAt } from './queries.ts';
import type { Shelf } from './shelf.ts';
import { askable } from './track-question.ts';

/** @see trackSheet: what a person knows of the session to come. */
export type TrackQuestion = At & Omit<TrackAsk, 'now'>;

/** Before a session: air, jet, pressures, fuel, gearing, and what has changed since the last. */
export async function track(
  shelf: Shelf,
  clock: Clock,
  name: string,
  { at, ...ask }: TrackQuestion = {},
): Promise<TrackSheet> {
  const { kart, now, past } = await standingAt(shelf, clock, name, given({ at }));
  const known = await shelf.facts(name);
  return trackSheet(kart, past === undefined ? known : knownAt(known, past), { ...askable(ask), now });
}
