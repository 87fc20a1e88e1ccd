/** How long it takes to bring the kart into another posture: stand, ground, scales, side. Nobody works at it meanwhile. */
import type { LayeredKart } from './layers.ts';
import { type Kart, POSTURES, type Posture, type PostureChange } from './model.ts';
import type { Report } from './problem.ts';
import { locate, top } from './source.ts';

/** Minutes where neither the kart file nor its template says; common practice, one person and a lifting stand. */
const USUAL_MINUTES = 3;

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

/** Only where the file speaks of them. */
export function posturesOf({ postures }: Pick<LayeredKart, 'postures'>, report: Report): Pick<Kart, 'postures'> {
  const read: Partial<Record<Posture, PostureChange>> = {};
  for (const to of POSTURES) {
    const said = postures[to];
    if (said === undefined) continue;
    if (said.from?.[to] !== undefined)
      report(locate(said, top(undefined), ['from', to]), {
        expected: `a posture other than "${to}" to come from`,
        got: `"${to}"`,
        remedy: 'take the line out: a kart that stands so already is not moved',
      });
    read[to] = {
      minutes: said.minutes ?? USUAL_MINUTES,
      ...(said.people !== undefined && { people: said.people }),
      ...(said.from !== undefined && { from: said.from }),
      ...(said.source !== undefined && { source: said.source }),
    };
  }
  return Object.keys(read).length > 0 ? { postures: read } : {};
}
