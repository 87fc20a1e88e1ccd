/** What the book holds from logs before: the gates of each track, those driven last first, and columns as they were chosen. */
import { type ChosenColumns, gateFromBook, gatesByTrack } from '../../laps/index.ts';
import type { Snapshot } from '../session.ts';
import type { Known } from './desk.ts';

export function knownFrom({ facts }: Snapshot): Known {
  const gates = [...gatesByTrack(facts.map(({ fact }) => fact))].flatMap(([track, [start, ...sectors]]) =>
    start ? [{ track, gates: [gateFromBook(start), ...sectors.map(gateFromBook)] as const }] : [],
  );
  // Facts stand newest first, so the newest choice is put in last.
  const chosen = facts
    .toReversed()
    .flatMap(({ fact, struck }) =>
      struck === null && fact.kind === 'laps' && fact.columns
        ? [[fact.columns.signature, { columns: fact.columns.roles as ChosenColumns }] as const]
        : [],
    );
  return { gates, layouts: Object.fromEntries(chosen) };
}
