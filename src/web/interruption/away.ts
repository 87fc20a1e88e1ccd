/**
 * Whether somebody comes back to work on a kart that was interrupted on this device: the page was out of sight or the device asleep
 * for more than two minutes, or was opened anew in the middle. Then nothing goes on silently.
 */
import { type Keep, keepOf } from '../place.ts';

/** Common practice in checklists: after more than two minutes elsewhere the place is found again by hand. */
const LONG_MS = 2 * 60_000;
const TICK_MS = 15_000;
/** What was done on another day is not in the middle of anything. */
const SAME_SITTING_MS = 12 * 3_600_000;
const WORKED = 'worked';

export type Away = {
  /** Minutes of absence from this kart, or that the page was opened anew; undefined while nobody was away from it. */
  asks(kart: string): { readonly minutes: number | null } | undefined;
  /** What was done last on it was touched again. */
  back(kart: string): void;
  /** A step was written here. */
  worked(kart: string): void;
  onChange(listener: () => void): () => void;
};

type Page = Pick<Document, 'visibilityState' | 'addEventListener'>;
type Clock = { now(): number; every(ms: number, tick: () => void): void };

export function createAway(page: Page, keep: Keep, clock: Clock = browserClock): Away {
  const listeners = new Set<() => void>();
  const change = (): void => {
    for (const listener of listeners) listener();
  };
  /** When the person came back last, and after how long. */
  let came: { readonly at: number; readonly minutes: number | null } = { at: clock.now(), minutes: null };
  const touched = new Map<string, typeof came>();
  let seen = came.at;
  /** A device that slept, or hid the page, looks at the clock late. */
  const look = (): void => {
    if (page.visibilityState === 'hidden') return;
    const gone = clock.now() - seen;
    seen = clock.now();
    if (gone <= LONG_MS) return;
    came = { at: seen, minutes: Math.round(gone / 60_000) };
    change();
  };
  page.addEventListener('visibilitychange', () => {
    if (page.visibilityState === 'hidden') seen = clock.now();
    else look();
  });
  clock.every(TICK_MS, look);
  return {
    asks(kart) {
      const worked = Number(keepOf(keep, kart).get(WORKED) || Number.NaN);
      const isInTheMiddle = came.at - worked < SAME_SITTING_MS;
      return isInTheMiddle && touched.get(kart) !== came ? { minutes: came.minutes } : undefined;
    },
    back(kart) {
      touched.set(kart, came);
      change();
    },
    worked(kart) {
      touched.set(kart, came); // what is done after coming back goes on by itself
      keepOf(keep, kart).set(WORKED, String(clock.now()));
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

const browserClock: Clock = {
  now: () => Date.now(),
  every: (ms, tick) => void window.setInterval(tick, ms),
};
