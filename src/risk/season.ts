/** The code of a hazard goes by its chance over a season, not over one event: the two stand side by side. */
import { chanceShort } from '../life/index.ts';
import { overEvents, type RiskCode, type RiskScheme, riskCode } from './risk-code.ts';
import type { Hazard, Likely } from './weak-links/index.ts';

export type Season = RiskCode & {
  readonly events: number;
  /** That it happens once at least over so many events alike. */
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  readonly words: string; // '4 in 100, between 1 and 20'
  /** False: from what is known of it alone, so the code is this one or a graver. */
  readonly whole: boolean;
};

/** Null where nothing of the hazard is known. @param events whole, 1 or more, else it throws */
export function seasonOf(scheme: RiskScheme, { severity, top, atLeast }: Hazard, events: number): Season | null {
  if (!(events >= 1)) throw new Error(`seasonOf: events must be 1 or more, got ${events}`);
  const likely: Likely | null = top ?? atLeast;
  if (likely === null) return null;
  const over = (chance: number): number => overEvents(chance, events);
  const range = { mean: over(likely.chance), low: over(likely.low), high: over(likely.high) };
  const { mean: chance, low, high } = range;
  return {
    ...riskCode(scheme, severity, chance),
    events,
    chance,
    low,
    high,
    words: chanceShort(range),
    whole: top !== null,
  };
}
