import './no-eval.ts';

import { render } from 'preact';
import { glimpse } from '../store/indexeddb/index.ts';
import { ifStranger } from './admission/asked.ts';
import { App } from './app.tsx';
import { bookInWorker } from './book/in-worker.ts';
import { keptOpening, OPENING, serversOpening } from './book/opening.ts';
import { askToKeep } from './book/room.ts';
import { createVersions } from './book/versions.ts';
import { bookChanger, currentBook, freshBook } from './book/which.ts';
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

/** Lets the browser do what waits. */
const turn = (ms = 0): Promise<void> => new Promise(done => setTimeout(done, ms));

/** Once the sheet is drawn and stands still, or as soon as a hand is there. */
const calm = (): Promise<unknown> =>
  Promise.race([
    turn(CALM_MS),
    new Promise(done => {
      for (const touch of ['pointerdown', 'keydown'])
        window.addEventListener(touch, done, { once: true, capture: true });
    }),
  ]);
const CALM_MS = 1500;
/** A page that is left open. */
const LOOK_AGAIN_MS = 600_000;

/** As the page was asked for: once drawn, it writes the place it shows there. */
const asked = location.hash;
const keep = keepIn(storage());
const name = currentBook(keep);
const build = import.meta.url;
const kart = keep.get('kart');
// A device that was never here before has nothing to look up, and asks at once.
const isNew = keep.get('place') === '';
const opening = isNew
  ? serversOpening(kart)
  : glimpse(name, OPENING).then(seen => keptOpening(seen, build, kart) ?? serversOpening(kart));
const book = bookInWorker({ book: name, build }, isNew ? opening.then(found => found && calm()) : undefined);
const { sync } = book;
const changeBook = bookChanger(keep, book.theirs, () => location.reload());
if (storage())
  sync.onChange(() => {
    const { is, theirs = { starts: [] } } = sync.state();
    if (is === 'other book' && book.kept) void changeBook(theirs);
  });
window.addEventListener('online', () => void sync.now());
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState !== 'visible') return;
  void sync.now();
  void session.lookAgain();
});
setInterval(() => document.visibilityState === 'visible' && void session.lookAgain(), LOOK_AGAIN_MS);

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
const begun = begin(page);
const versions = createVersions(navigator.serviceWorker, () => location.reload(), isNew ? begun : opening);

/** Not awaited at the top: what a sheet fetches runs only when this file has run to its end. */
async function begin(page: HTMLElement): Promise<void> {
  await turn(); // a thumb that comes meanwhile is not kept waiting for all of it
  page.replaceChildren();
  render(<App session={session} keep={keep} versions={versions} />, page);
  // A device that was put out keeps its book in reach, and says on its sheet how things are.
  void ifStranger(async () => {
    if (asked.startsWith('#/pair/') || Object.keys(await book.app.ends()).length === 0) await letIn();
  });
  await turn(); // the frame is drawn by now, and nothing in it says a time or a size
  readChoice(keep, navigator.language);
  await session.open(kart, opening);
  if (book.kept) void askToKeep(navigator.storage);
}

/** @param onBack where there is a book to go back to */
async function letIn(onBack?: () => void): Promise<void> {
  const { Pair, codeIn } = await import('./admission/pair.tsx');
  const enter = (): void => {
    location.hash = '#/today';
    location.reload();
  };
  render(<Pair shown={codeIn(asked)} onIn={enter} onBack={onBack} />, page as HTMLElement);
}
