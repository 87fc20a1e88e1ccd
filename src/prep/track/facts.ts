/** What a person says before and after a session, as the facts it is: one tap writes them all. */
import type { Payload, Tyre } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { wheelItem } from './tyre-part.ts';

/** Texts with their unit, as they were read: '0.79 bar'. */
export type PressuresSaid = Readonly<Partial<Record<Tyre, string>>>;
export type AfterSaid = {
  readonly ran: Omit<Extract<Payload, { kind: 'ran' }>, 'kind'>;
  readonly hot?: PressuresSaid;
  readonly treads?: Extract<Payload, { kind: 'treads probed' }>['celsius'];
  readonly plug?: Extract<Payload, { kind: 'plug read' }>['says'];
  readonly litres?: number;
};

/** Readings are texts still: the app works them out, and refuses what is none. */
export type TrackDraft = Readonly<Record<string, unknown>> & { readonly kind: Payload['kind'] };

/** The run first: what was read after it belongs to it (SPEC B25). */
export const afterSession = (kart: Kart, { ran, hot = {}, treads, plug, litres }: AfterSaid): readonly TrackDraft[] => [
  { kind: 'ran', ...ran },
  ...pressuresRead(kart, 'hot pressure', hot),
  ...(treads && Object.keys(treads).length > 0 ? [{ kind: 'treads probed', celsius: treads } as const] : []),
  ...(plug ? [{ kind: 'plug read', says: plug } as const] : []),
  ...(litres === undefined ? [] : [{ kind: 'fuel used', litres } as const]),
];

export const coldSet = (kart: Kart, cold: PressuresSaid): readonly TrackDraft[] =>
  pressuresRead(kart, 'cold pressure', cold);

/** A pressure of a tyre is a reading of its wheel's item, so what was due with it is done. */
const pressuresRead = (kart: Kart, key: string, said: PressuresSaid): readonly TrackDraft[] =>
  (Object.entries(said) as [Tyre, string][]).map(([tyre, text]) => {
    // A kart without the item has its pressure refused by name, never left out in silence.
    const item = wheelItem(kart, tyre, key)?.id ?? `${tyre} wheel/${key}`;
    return { kind: 'checked', item, result: 'pass', reading: text };
  });
