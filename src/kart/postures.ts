/** What a kart file says of the minutes into another posture. */
import type { LayeredKart } from './layers.ts';
import { type Kart, POSTURES, type Posture, type PostureChange } from './model.ts';
import { USUAL_MINUTES } from './posture-minutes.ts';
import type { Report } from './problem.ts';
import { locate, top } from './source.ts';

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
