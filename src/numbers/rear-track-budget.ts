/** How far off the width can be: as measured over the tyres, or as the sum of the stack. */
import { combine, type Link, sum, worstCase } from './chain.ts';
import type { Input } from './rear-track-input.ts';
import type { Both, Part } from './rear-track-stack.ts';

/** Limits ± of a length read with a tape when none were given [m]. Common practice; the answer says it was assumed. */
export const TAPE = 0.0005;
/** Thermal expansion of steel [1/K]. From memory; 11 to 12.5e-6 for carbon steels. */
export const STEEL = 1.15e-5;

export type Known = { readonly value: number; readonly u: number; readonly freedom: number; readonly worst: number };

/**
 * Standard uncertainty of a width read with a tape: its scale, both ends, repeated readings, temperature.
 *   u² = s²/3 + 2 r²/3 + d²/n + (L α T)²/3
 * s scale limits [m]; r limits of reading one end [m]; d standard deviation of n readings [m]; L width [m]; α expansion
 * [1/K]; T temperature limits [K]. Valid for independent causes. Source: jcgm-100, 4.3.7 and 5.1.2.
 */
export function tapeLinks(about: {
  readonly width: number;
  readonly scale: number;
  readonly reading: number;
  readonly spread?: number;
  readonly readings?: number;
  readonly temperature?: number;
}): readonly Link[] {
  const { width, scale, reading, spread = 0, readings = 1, temperature = 0 } = about;
  const end: Link = { times: 1, size: 0, half: reading };
  return [
    { times: 1, size: width, half: scale },
    end,
    end,
    { times: 1, size: 0, standard: spread / Math.sqrt(readings), freedom: Math.max(1, readings - 1) },
    { times: 1, size: 0, half: width * STEEL * temperature },
  ];
}

export function measuredWidth(input: Input): Known | undefined {
  const measured = input['measured width'];
  if (measured === undefined) return undefined;
  const own = measured.half;
  return known(
    tapeLinks({
      width: measured.si,
      scale: input['tape scale']?.si ?? own ?? TAPE,
      reading: input['tape reading']?.si ?? (own === undefined ? TAPE : 0),
      spread: input.spread?.si ?? 0,
      readings: input.readings?.si ?? 1,
      temperature: input['temperature band']?.si ?? 0,
    }),
  );
}

/** The width as the sum of its lengths, each within its own limits. */
export function stackWidth(parts: readonly Part[], gaps: readonly Part[]): Known {
  return known([...parts, ...gaps].map(({ of, times }) => ({ times, size: of.si, half: of.half ?? TAPE })));
}

/** The width when both gaps are set with a tape to a wanted width. */
export function setWidth(parts: readonly Part[], gaps: Both<number>): Known {
  const each: readonly Link[] = parts.map(({ of, times }) => ({ times, size: of.si, half: of.half ?? TAPE }));
  return known([...each, { times: 1, size: gaps.left, half: TAPE }, { times: 1, size: gaps.right, half: TAPE }]);
}

const known = (links: readonly Link[]): Known => ({ value: sum(links), worst: worstCase(links), ...combine(links) });
