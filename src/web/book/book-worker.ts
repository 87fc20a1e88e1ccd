/** The book of this device, beside the page: it is read, met with the server's and worked out here, and the page stays free for whoever taps on it. */
import '../no-eval.ts';

import { glimpse, indexedDbStore } from '../../store/indexeddb/index.ts';
import { memoryStore } from '../../store/memory/index.ts';
import { type Asked, type Heard, takenApart } from './crossing.ts';
import { type BookParts, type DeviceBook, nameOf, openDeviceBook } from './open.ts';
import { keepingOpenings, OPENING } from './opening.ts';
import { ownInMemory } from './own-in-memory.ts';
import { httpRemote } from './remote.ts';
import type { SyncState, Theirs } from './sync.ts';

/** Which book, and which version of the page asks. */
export type Begin = { readonly book: string; readonly build: string };
/** Told without being asked: how the meeting with the server stands, and that there is something new to look at. */
export type Told = { readonly kept: boolean; readonly sync: SyncState } | { readonly news: true };

const say = (message: Heard | Told): void => self.postMessage(message);
const random: BookParts['random'] = bytes => crypto.getRandomValues(new Uint8Array(bytes));

/** Where the browser keeps no book, the page works until it is closed, and says so. */
async function storeOf(name: string): Promise<Pick<BookParts, 'store' | 'kept'>> {
  try {
    const store = await indexedDbStore(name);
    await nameOf(store.own, random);
    return { store, kept: true };
  } catch {
    return { store: Object.assign(memoryStore(), { own: ownInMemory() }), kept: false };
  }
}

/** Whose another book on this device is. */
async function theirs(name: string): Promise<Theirs> {
  const store = await indexedDbStore(name);
  try {
    return {
      starts: (await store.read()).flatMap(({ fact: { seq, hash } }) => (seq === 1 ? [hash] : [])),
      team: (await store.own.get('team')) as string | undefined,
    };
  } finally {
    await store.close();
  }
}

async function begin({ book: name, build }: Begin): Promise<DeviceBook> {
  const { store, kept } = await storeOf(name);
  const book = await openDeviceBook({
    ...{ store, kept, remote: httpRemote, clock: { now: () => new Date() }, random },
    build: import.meta.url,
  });
  const tell = (): void => say({ kept, sync: book.sync.state() });
  book.sync.onChange(tell);
  book.onNews(() => say({ news: true }));
  tell();
  if (!kept) return book;
  const lastRow = async (): Promise<number> => (await glimpse(name, OPENING))?.row ?? 0;
  const keep = (opening: unknown): Promise<void> => store.own.put(OPENING, opening);
  return { ...book, look: keepingOpenings(book.look, build, { lastRow, keep }) };
}

let opened: Promise<DeviceBook> | undefined;

async function answer(of: string, args: readonly unknown[]): Promise<unknown> {
  if (of === 'theirs') return theirs(...(args as Parameters<typeof theirs>));
  const book = await opened;
  const [part, name] = of.split('.');
  const side = (name === undefined ? book : part === 'app' ? book?.app : book?.sync) as unknown as Readonly<
    Record<string, (...given: readonly unknown[]) => unknown>
  >;
  return side[name ?? of]?.(...args);
}

self.addEventListener('message', ({ data }: MessageEvent<Begin | Asked>) => {
  if ('build' in data) {
    opened = begin(data);
    opened.catch(() => undefined); // told to whoever asks
    return;
  }
  const { number, of, args } = data;
  // What cannot cross is told as well, or whoever asked would wait for ever.
  answer(of, args)
    .then(found => say({ number, answer: found }))
    .catch((error: unknown) => say({ number, wrong: takenApart(error) }));
});
