import './no-eval.ts';

import { render } from 'preact';
import { indexedDbStore } from '../store/indexeddb/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { ifStranger } from './admission/asked.ts';
import { App } from './app.tsx';
import { type BookParts, nameOf, openDeviceBook } from './book/open.ts';
import { ownInMemory } from './book/own-in-memory.ts';
import { httpRemote } from './book/remote.ts';
import { askToKeep } from './book/room.ts';
import type { Theirs } from './book/sync.ts';
import { createVersions } from './book/versions.ts';
import { changeBook, currentBook, freshBook } from './book/which.ts';
import { readChoice } from './choice/choice.ts';
import { afterPaint } from './later.tsx';
import { keepIn } from './place.ts';
import { keptCrew } from './plan/crew.ts';
import { searchInWorker } from './plan/search.ts';
import { createSession } from './session.ts';

/** A browser may forbid even to ask for its storage. */
function storage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

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

async function lookAt(name: string): Promise<Theirs> {
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

/** As the page was asked for: once drawn, it writes the place it shows there. */
const asked = location.hash;
const keep = keepIn(storage());
readChoice(keep, navigator.language);
const book = await openDeviceBook({
  ...(await storeOf(currentBook(keep))),
  remote: httpRemote,
  clock: { now: () => new Date() },
  random,
  build: import.meta.url,
});
const { sync } = book;
if (book.kept && storage())
  sync.onChange(() => {
    const { is, theirs = { starts: [] } } = sync.state();
    if (is === 'other book')
      changeBook(keep, theirs, lookAt).then(
        () => location.reload(),
        () => undefined, // it stays as it is, and says so
      );
  });
window.addEventListener('online', () => void sync.now());
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'visible') void sync.now();
});

const session = createSession(book, {
  who: () => keep.get('name'),
  crewOf: kart => keptCrew(keep, kart),
  search: searchInWorker,
  afterPaint,
  beginAnew() {
    freshBook(keep);
    location.reload();
  },
  letIn: () => void letIn(() => location.reload()),
});
const page = document.getElementById('page');
if (page === null) throw new Error('main: index.html must hold an element with id "page", got none');
page.replaceChildren();
const versions = createVersions(navigator.serviceWorker, () => location.reload());
render(<App session={session} keep={keep} versions={versions} />, page);
/** @param onBack where there is a book to go back to */
async function letIn(onBack?: () => void): Promise<void> {
  const { Pair, codeIn } = await import('./admission/pair.tsx');
  const enter = (): void => {
    location.hash = '#/today';
    location.reload();
  };
  render(<Pair shown={codeIn(asked)} onIn={enter} onBack={onBack} />, page as HTMLElement);
}
// A device that was put out keeps its book in reach, and says on its sheet how things are.
void ifStranger(async () => {
  if (asked.startsWith('#/pair/') || Object.keys(await book.app.ends()).length === 0) await letIn();
});
await session.open(keep.get('kart'));
if (book.kept) void askToKeep(navigator.storage);
