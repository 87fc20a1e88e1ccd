/** How much a part has run (SPEC B13). */
import type { PartState, State } from './state.ts';

/** Run-minutes and laps. */
export type Age = { readonly minutes: number; readonly laps: number };

/** Run-minutes and laps on a part. One that no fact mentions has been on from the start and is as old as the kart's clock. */
export function partAge(state: State, part: string): Age {
  return ageAt(state.parts[part], state);
}

/** Age of a part when the kart's clock stands at `clock`; it stands still while the part is off. */
export function ageAt(part: PartState | undefined, clock: Age): Age {
  if (part === undefined) return { minutes: clock.minutes, laps: clock.laps };
  if (!part.on) return { minutes: part.ageMinutes, laps: part.ageLaps };
  return {
    minutes: part.ageMinutes + clock.minutes - part.sinceMinutes,
    laps: part.ageLaps + clock.laps - part.sinceLaps,
  };
}
