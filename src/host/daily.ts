/** Once a day, whenever the program runs: looked at soon after its start and a few times an hour, so a laptop that sleeps misses none. */

const DAY_MS = 86_400_000;
/** A start that lasts a moment, to look at something, makes no backup. */
const FIRST_MS = 60_000;
const LOOK_MS = 15 * 60_000;

/**
 * Calls `work` when `last` says that it was done a day ago or never. A failure is told, and tried again at the next look.
 * Returns the stop.
 */
export function everyDay(daily: {
  readonly now: () => Date;
  /** RFC 3339; undefined: never. */
  readonly last: () => Promise<string | undefined>;
  readonly work: () => Promise<void>;
  readonly failed: (error: unknown) => void;
}): () => void {
  let timer: ReturnType<typeof setTimeout>;
  let stopped = false;
  const look = async (): Promise<void> => {
    try {
      const last = await daily.last();
      // A clock that was set back must not stop it for ever: what lies ahead of now was not done a day before it.
      const age = last === undefined ? DAY_MS : Math.abs(daily.now().getTime() - Date.parse(last));
      if (!(age < DAY_MS)) await daily.work();
    } catch (error) {
      daily.failed(error);
    }
    if (!stopped) wait(LOOK_MS);
  };
  const wait = (ms: number): void => {
    timer = setTimeout(() => void look(), ms);
    timer.unref();
  };
  wait(FIRST_MS);
  return () => {
    stopped = true;
    clearTimeout(timer);
  };
}
