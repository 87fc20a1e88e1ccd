/** What each event ahead will ask of the kart: its checks again, and what runs out before it is over. */
import type { KartEvent, State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { Horizon } from '../life/index.ts';
import { dueWithin, horizonOver } from './due.ts';
import type { Due } from './model.ts';

export type Coming = {
  readonly event: KartEvent;
  /** What must be done before it and not before the one ahead of it: by running, by laps, by the calendar; before the next event, all. */
  readonly runsOut: readonly Due[];
};

/**
 * The events that are not over, in order of time. The running of those before an event counts: a part with 2 h left lasts
 * through the first hour and a half and is due before the second.
 */
export function coming(kart: Kart, state: State, now: string): readonly Coming[] {
  const ahead = Object.values(state.events)
    .filter(({ until }) => until >= now)
    .toSorted((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
  const said = new Set<string>();
  let [minutes, laps] = [0, 0];
  return ahead.map((event, place) => {
    const horizon: Horizon = {
      ...horizonOver(now, event),
      ...(place > 0 && { before: { minutes, laps, at: event.from } }),
    };
    const due = dueWithin(kart, state, horizon).filter(({ item }) => !said.has(item));
    for (const { item } of due) said.add(item);
    minutes += event.runMinutes;
    laps += event.runLaps;
    return { event, runsOut: due };
  });
}
