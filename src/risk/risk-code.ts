/** A hazard's code by severity and chance, from the published scheme in data/severity.yaml. Orders hazards; permits nothing. */
import { parse } from 'yaml';
import { z } from 'zod';

export const LEVELS = ['High', 'Serious', 'Medium', 'Low'] as const;
export type Level = (typeof LEVELS)[number];
export type Severity = 1 | 2 | 3 | 4;
export const CHANCE_BANDS = ['A', 'B', 'C', 'D', 'E'] as const;
export type ChanceBand = (typeof CHANCE_BANDS)[number];

/** Made when the file is read: a page that reads none carries none of it. */
function file() {
  const words = z.string().min(1);
  const level = z.enum(LEVELS);
  const band = z.strictObject({ name: words, above: z.number().min(0).max(1), means: words });
  const severity = z.strictObject({ name: words, means: words });
  const row = z.tuple([level, level, level, level]);
  return z.strictObject({
    source: words,
    note: words,
    severities: z.strictObject({ '1': severity, '2': severity, '3': severity, '4': severity }),
    chances: z.strictObject({ A: band, B: band, C: band, D: band, E: band }),
    levels: z.strictObject({ A: row, B: row, C: row, D: row, E: row }),
  });
}

export type RiskScheme = z.infer<ReturnType<typeof file>>;
export type RiskCode = { readonly code: `${Severity}${ChanceBand}`; readonly level: Level };

/** Reads the shipped file. Throws, naming the place, where it is not of this shape: then the data is broken, not the question. */
export const readRiskScheme = (text: string): RiskScheme => file().parse(parse(text));

/**
 * @param chance over the life of the item or the season, not over one event (see `overEvents`); in [0, 1], else it throws
 * @returns the code and its level; a chance on the edge of two bands takes the rarer, as the scheme is written
 */
export function riskCode(scheme: RiskScheme, severity: Severity, chance: number): RiskCode {
  if (!(chance >= 0 && chance <= 1)) throw new Error(`riskCode: chance must lie in 0 to 1, got ${chance}`);
  const band = CHANCE_BANDS.find(each => chance > scheme.chances[each].above) ?? 'E';
  const level = scheme.levels[band][severity - 1];
  if (level === undefined) throw new Error(`riskCode: severity must be 1, 2, 3 or 4, got ${severity}`);
  return { code: `${severity}${band}`, level };
}

/** The chance that it happens at least once over so many events alike: 1 - (1 - p)^n. p in [0, 1], n whole and 0 or more, else throws. */
export function overEvents(chance: number, events: number): number {
  if (!(chance >= 0 && chance <= 1)) throw new Error(`overEvents: chance must lie in 0 to 1, got ${chance}`);
  if (!(Number.isInteger(events) && events >= 0))
    throw new Error(`overEvents: events must be a whole number of 0 or more, got ${events}`);
  return chance === 1 ? Math.min(1, events) : -Math.expm1(events * Math.log1p(-chance));
}
