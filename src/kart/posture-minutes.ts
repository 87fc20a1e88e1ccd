/** How long it takes to bring the kart into another posture: stand, ground, scales, side. Nobody works at it meanwhile. */
import { type Kart, POSTURES, type Posture } from './model.ts';

/** Minutes where neither the kart file nor its template says; common practice, one person and a lifting stand. */
export const USUAL_MINUTES = 3;

/** Minutes from one posture into another; from the slowest when nobody knows how the kart stands. */
export function postureMinutes({ postures }: Pick<Kart, 'postures'>, from: Posture | undefined, to: Posture): number {
  if (from === to) return 0;
  const said = postures?.[to];
  const usual = said?.minutes ?? USUAL_MINUTES;
  return from === undefined ? Math.max(usual, ...Object.values(said?.from ?? {})) : (said?.from?.[from] ?? usual);
}

/** The fewest minutes that bring the kart into a posture, from whichever other. */
export const leastPostureMinutes = (kart: Pick<Kart, 'postures'>, to: Posture): number =>
  Math.min(...POSTURES.filter(from => from !== to).map(from => postureMinutes(kart, from, to)));
