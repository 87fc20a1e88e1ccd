/** What a check before writing is given, and what it gives back. */
import type { Fact, FactKind, Payload, State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { Problem } from './problem.ts';

export type Context = {
  readonly kart: Kart;
  /** The state just before, at the moment the fact is about. */
  readonly state: State;
  /** Every fact of the kart so far, those of this batch included. */
  readonly facts: readonly Fact[];
  readonly at: string;
  readonly by: string;
  /** The person was asked again and said the same. */
  readonly sure: boolean;
  /** Where the payload stands, for the problem: 'facts[0]'. */
  readonly where: string;
};

export type Check<K extends FactKind> = (
  payload: Extract<Payload, { kind: K }>,
  context: Context,
) => readonly Problem[];
