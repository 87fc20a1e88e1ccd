/** The book of this device as the page has it: every question goes to the worker that keeps it. */
import type { PlainApp } from '../../app/index.ts';
import { pageWords } from '../words/page.ts';
import type { Begin, Told } from './book-worker.ts';
import { type Asked, type Heard, putTogether } from './crossing.ts';
import type { DeviceBook } from './open.ts';
import type { Sync, SyncState, Theirs } from './sync.ts';

export type PageBook = Omit<DeviceBook, 'app' | 'sync'> & {
  readonly app: PlainApp;
  readonly sync: Omit<Sync, 'onArrived' | 'stop'>;
};

/** @param after what the line to the server is left to first: the worker is larger than all that the page begins with */
export function bookInWorker(
  begin: Begin,
  after: Promise<unknown> = Promise.resolve(),
): PageBook & { theirs(name: string): Promise<Theirs> } {
  const waiting = new Map<number, Waiting>();
  const [news, changes] = [new Set<() => void>(), new Set<() => void>()];
  let number = 0;
  let lost: Error | undefined;
  let said: Extract<Told, { sync: SyncState }> | undefined;

  const ask = (of: string, args: readonly unknown[]): Promise<unknown> =>
    new Promise((done, failed) => {
      if (lost) return failed(lost);
      const asked = { number: ++number, of, args } satisfies Asked;
      waiting.set(number, { done, failed });
      worker.then(to => to.postMessage(asked, { transfer: args.flatMap(filesIn) })).catch(failed); // what cannot cross
    });
  const hear = ({ data }: MessageEvent<Heard | Told>) => {
    if ('news' in data) return tell(news);
    if ('sync' in data) {
      said = data;
      return tell(changes);
    }
    const asked = waiting.get(data.number);
    waiting.delete(data.number);
    if ('wrong' in data) asked?.failed(putTogether(data.wrong));
    else asked?.done(data.answer);
  };
  const lose = ({ message }: ErrorEvent): void => {
    const why = new Error(message || pageWords.itsProgramIsMissing);
    if (said === undefined) lost = why; // it was never there, and answers nothing ever
    for (const { failed } of waiting.values()) failed(why);
    waiting.clear();
  };
  const worker = after.then(() => {
    const started = new Worker(new URL('./book-worker.ts', import.meta.url), { type: 'module' });
    started.onmessage = hear;
    started.onerror = lose;
    started.postMessage(begin);
    return started;
  });

  const call =
    (of: string) =>
    (...args: readonly unknown[]): Promise<never> =>
      ask(of, args) as Promise<never>;
  return {
    app: new Proxy({} as PageBook['app'], { get: (_, name) => call(`app.${String(name)}`) }),
    sync: {
      state: () => said?.sync ?? LOOKING,
      onChange: listener => added(changes, listener),
      expect: facts => void call('sync.expect')(facts),
      wrote: call('sync.wrote'),
      now: call('sync.now'),
      giveAll: call('sync.giveAll'),
      seenSetBack: call('sync.seenSetBack'),
    },
    get kept() {
      return said?.kept ?? true;
    },
    file: call('file'),
    calendar: call('calendar'),
    library: call('library'),
    look: call('look'),
    onNews: listener => added(news, listener),
    theirs: call('theirs'),
  };
}

type Waiting = { readonly done: (answer: unknown) => void; readonly failed: (why: Error) => void };

/** A photo or a log goes over as it lies there, not as a copy. */
const filesIn = (given: unknown): Transferable[] => {
  const bytes = given instanceof Uint8Array ? given : (given as { readonly bytes?: unknown } | undefined)?.bytes;
  return bytes instanceof Uint8Array ? [bytes.buffer as ArrayBuffer] : [];
};

const LOOKING: SyncState = { is: 'looking', waiting: 0, problems: [] };

const tell = (all: ReadonlySet<() => void>): void => {
  for (const each of all) each();
};

function added(all: Set<() => void>, listener: () => void): () => void {
  all.add(listener);
  return () => all.delete(listener);
}
