/**
 * Whether somebody comes back to work that was interrupted on this device: the page was out of sight or the device asleep for
 * more than two minutes, or was opened anew in the middle. Then nothing goes on silently.
 */
import type { Keep } from '../place.ts';

/** Common practice in checklists: after more than two minutes elsewhere the place is found again by hand. */
const LONG_MS = 2 * 60_000;
const TICK_MS = 15_000;
/** What was done on another day is not in the middle of anything. */
const SAME_SITTING_MS = 12 * 3_600_000;
const WORKED = 'worked';

export type Away = {
  /** Minutes of absence, or that the page was opened anew; undefined while nobody was away. */
  asks(): { readonly minutes: number | null } | undefined;
  /** The last step was touched again. */
  back(): void;
  /** A step was written here. */
  worked(): void;
  onChange(listener: () => void): () => void;
};

type Page = Pick<Document, 'visibilityState' | 'addEventListener'>;
type Clock = { now(): number; every(ms: number, tick: () => void): void };

export function createAway(page: Page, keep: Keep, clock: Clock = browserClock): Away {
  const listeners = new Set<() => void>();
  const change = (next: typeof asked): void => {
    asked = next;
    for (const listener of listeners) listener();
  };
  const inTheMiddle = (): boolean => {
    const since = clock.now() - Number(keep.get(WORKED) || Number.NaN);
    return since < SAME_SITTING_MS;
  };
  let asked: { readonly minutes: number | null } | undefined = inTheMiddle() ? { minutes: null } : undefined;
  let seen = clock.now();
  /** A device that slept, or hid the page, looks at the clock late. */
  const look = (): void => {
    if (page.visibilityState === 'hidden') return;
    const gone = clock.now() - seen;
    seen = clock.now();
    if (gone > LONG_MS && inTheMiddle()) change({ minutes: Math.round(gone / 60_000) });
  };
  page.addEventListener('visibilitychange', () => {
    if (page.visibilityState === 'hidden') seen = clock.now();
    else look();
  });
  clock.every(TICK_MS, look);
  return {
    asks: () => asked,
    back: () => change(undefined),
    worked: () => keep.set(WORKED, String(clock.now())),
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
