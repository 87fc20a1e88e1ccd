/**
 * What must hold before a fact is written, beyond its shape: the kart has the part, the hand can reach it, the value is
 * one that can be. One entry a kind of fact; a new kind does not compile until it stands here.
 */
import type { FactKind, Payload } from '../book/index.ts';
import { failedRight, lookAskedRight } from './check-failure.ts';
import { checkedRight, loosenedRight, madeRight, setRight } from './check-items.ts';
import { lapsRight } from './check-laps.ts';
import { expectedRight, sparesRight } from './check-lives.ts';
import { fittedRight, movedRight, offRight, partKnown } from './check-parts.ts';
import { eventRight, foundRight, mendedRight, ranRight, redactedRight, struckRight } from './check-record.ts';
import { fuelMixedRight, fuelUsedRight, treadsRight, weatherRight } from './check-track.ts';
import type { Check, Context } from './context.ts';
import { type Problem, refuse } from './problem.ts';

const nothing = (): readonly Problem[] => [];

const CHECKS: { readonly [K in FactKind]: Check<K> } = {
  'kart filed': nothing, // its text was read before this
  event: eventRight,
  fitted: fittedRight,
  'taken off': offRight,
  moved: movedRight,
  ran: ranRight,
  checked: checkedRight,
  made: madeRight,
  loosened: loosenedRight,
  set: setRight,
  found: foundRight,
  mended: mendedRight,
  failed: failedRight,
  'look asked': lookAskedRight,
  'put on': nothing,
  'set-up': nothing,
  tyres: nothing,
  'fuel mixed': fuelMixedRight,
  weather: weatherRight,
  'plug read': nothing,
  'treads probed': treadsRight,
  'fuel used': fuelUsedRight,
  laps: lapsRight,
  'life expected': expectedRight,
  'spares counted': sparesRight,
  note: (payload, context) => (payload.part === undefined ? [] : partKnown(payload.part, context)),
  released: (_, { where }) => [
    refuse(
      'signature missing',
      where,
      'Expected a release to be signed by a person who was shown what stands open, got a bare fact.',
      'Use `release`.',
    ),
  ],
  struck: struckRight,
  redacted: redactedRight,
};

/** Everything that stands against writing this payload. */
export function stands(payload: Payload, context: Context): readonly Problem[] {
  const check = CHECKS[payload.kind] as Check<FactKind>;
  return check(payload, context);
}
