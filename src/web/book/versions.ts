/** The page's own files on this device, and what becomes of a new version of them: a person says when it takes over. */
export type Versions = {
  /** `none`: this browser keeps no page here, so loading it needs the server; `waiting`: a new version is here. */
  state(): 'none' | 'here' | 'waiting';
  onChange(listener: () => void): () => void;
  /** Shows the new version; what was written is in the book, and what is half typed is kept. */
  takeOver(): void;
};

/** As src/web/sw.ts hears it. */
const TAKE_OVER = 'take over';
const HOUR_MS = 3_600_000;

/**
 * @param worker undefined where the browser has no such thing: over plain HTTP to another machine, or when it is forbidden
 * @param after what the line to the server is left to first: a version is fetched whole
 */
export function createVersions(
  worker: ServiceWorkerContainer | undefined,
  reload: () => void,
  after: Promise<unknown>,
): Versions {
  let registration: ServiceWorkerRegistration | undefined;
  let state: ReturnType<Versions['state']> = 'none';
  let pressed = false;
  let left = false;
  const leave = (): void => {
    if (!left) reload(); // twice, and the page opened anew would be interrupted itself
    left = true;
  };
  const listeners = new Set<() => void>();
  const look = (): void => {
    // The first of all waits a moment too, for nobody: it is no new one.
    const next = registration?.waiting && registration.active ? 'waiting' : worker?.controller ? 'here' : 'none';
    if (next === state) return;
    state = next;
    for (const listener of listeners) listener();
  };
  worker?.addEventListener('controllerchange', () => {
    if (pressed) leave();
    else look();
  });
  const registered = after.then(() => worker?.register('/sw.js'));
  registered.then(
    found => {
      if (found === undefined) return;
      registration = found;
      found.addEventListener('updatefound', () => found.installing?.addEventListener('statechange', look));
      setInterval(() => void found.update().catch(() => undefined), HOUR_MS); // fails without a server, and may
      look();
    },
    () => undefined, // forbidden: it stays `none`, which is shown
  );
  return {
    state: () => state,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    takeOver() {
      pressed = true;
      const next = registration?.waiting;
      if (!next) return leave(); // it took over meanwhile
      // A page that no version serves yet is told of no change of the one that does.
      next.addEventListener('statechange', () => next.state === 'activated' && leave());
      next.postMessage(TAKE_OVER);
    },
  };
}
