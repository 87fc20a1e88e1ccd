/** What questions have in common: the moment they are asked of, the event they are about, and options that may be absent. */
import type { KartEvent, State } from '../book/index.ts';
import { nextEvent } from '../prep/index.ts';
import { Refusal, refuse } from './problem.ts';
import { suggestion } from './words.ts';

/** The moment asked about; now when left out. */
export type At = { readonly at?: string };
export type ForEvent = At & { readonly event?: string };

/** The event asked for by name; left out, the next one. Throws `Refusal` for a name the book does not hold. */
export function eventOf(state: State, now: string, name: string | undefined): KartEvent | undefined {
  if (name === undefined) return nextEvent(state, now);
  const event = state.events[name];
  if (event) return event;
  const known = Object.keys(state.events);
  throw new Refusal([
    refuse(
      'unknown event',
      'event',
      `Expected an event of the book, got "${name}".`,
      known.length === 0
        ? 'Write it down first, as a fact of kind event.'
        : `Events: ${known.join(', ')}.${suggestion(name, known)}`,
    ),
  ]);
}

/** Leaves out what is undefined: an option that is absent is not the same as one that is undefined. */
export function given<T extends Record<string, unknown>>(options: T): { [K in keyof T]?: NonNullable<T[K]> } {
  return Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };
}
