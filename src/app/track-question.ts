/** What a person says of the session to come, before it is reckoned with: a slip of the finger is refused with words. */
import type { TrackAsk } from '../prep/index.ts';
import { type Problem, Refusal, refuse } from './problem.ts';

/** More laps than any kart race on one tank has; common practice. */
const MOST_LAPS = 500;

/** Throws `Refusal` for laps that no session has. */
export function askable<T extends Omit<TrackAsk, 'now'>>(ask: T): T {
  const problems = lapsWrong(ask.laps);
  if (problems.length > 0) throw new Refusal(problems);
  return ask;
}

const lapsWrong = (laps: number | undefined): readonly Problem[] =>
  laps === undefined || (Number.isInteger(laps) && laps >= 1 && laps <= MOST_LAPS)
    ? []
    : [
        refuse(
          'wrong shape',
          'laps',
          `Expected 1 to ${MOST_LAPS} whole laps, got ${laps}.`,
          'Leave laps out for as many as the session before, or say how many the session has.',
        ),
      ];
