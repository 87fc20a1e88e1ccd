/** A page on a device of its own, without a browser: the real session and book, and a server that is in reach or not. */
import type { App } from '../src/app/index.ts';
import { kartReader, libraryFiles } from '../src/host/index.ts';
import { memoryStore } from '../src/store/memory/index.ts';
import { type DeviceBook, openDeviceBook } from '../src/web/book/open.ts';
import { ownInMemory } from '../src/web/book/own-in-memory.ts';
import { OutOfReach, type Remote } from '../src/web/book/remote.ts';
import { ALONE } from '../src/web/plan/crew.ts';
import type { Search } from '../src/web/plan/search.ts';
import { createSession, type Session } from '../src/web/session.ts';

export const clock = { now: () => new Date() };
export const reader = kartReader(libraryFiles());

/** A page on a device of its own. */
export async function page(there: App, store = memoryStore()) {
  const { line, book } = await device(there, store);
  return { line, book, session: await opened(book) };
}

/** `line.up` says whether the server is in reach; what is kept beside the book is there when it is opened again. */
export async function device(
  there: App,
  store: ReturnType<typeof memoryStore>,
  { own = ownInMemory(), up = true } = {},
) {
  const line: { up: boolean; news: () => void } = { up, news: () => undefined };
  const through = async <T>(answer: () => Promise<T>): Promise<T> => {
    if (!line.up) throw new OutOfReach('connection refused');
    return answer();
  };
  const remote: Remote = {
    meet: () => through(async () => ({ ends: await there.ends(), starts: await there.starts() })),
    since: numbers => through(() => there.since(numbers)),
    take: facts => through(() => there.take(facts)),
    putFile: (bytes, type) => through(async () => void (await there.putFile(bytes, type))),
    getFile: hash => through(() => there.getFile(hash)),
    readKart: text => through(() => reader.read(text)),
    library: () => through(async () => undefined),
    listen(news) {
      line.news = news;
      return () => undefined;
    },
  };
  const book: DeviceBook = await openDeviceBook({
    store: Object.assign(store, { own }),
    kept: true,
    remote,
    clock,
    random: bytes => crypto.getRandomValues(new Uint8Array(bytes)),
    build: 'test',
  });
  return { line, book };
}

/** Who has the device. */
export const atTheDevice = { who: 'A. Sample' };
export const sessionOf = (book: DeviceBook, crew = ALONE, search: Search = () => () => undefined): Session =>
  createSession(book, {
    who: () => atTheDevice.who,
    crewOf: () => crew,
    search,
    afterPaint(work) {
      const timer = setTimeout(work);
      return () => clearTimeout(timer);
    },
    beginAnew: () => undefined,
    letIn: () => undefined,
  });

export async function opened(book: DeviceBook): Promise<Session> {
  const session = sessionOf(book);
  await session.open('');
  return session;
}

export const shownIn = (session: Session): Promise<void> =>
  new Promise(done => {
    const look = (): void => {
      if (session.view().snapshot) done();
    };
    session.onChange(look);
    look();
  });
export const notes = (session: Session): readonly string[] =>
  (session.view().snapshot?.facts ?? []).flatMap(({ fact }) => (fact.kind === 'note' ? [fact.text] : []));

/** A look that answers when it is let. */
export function slowly(book: DeviceBook): { readonly book: DeviceBook; hold(): () => void } {
  let held = Promise.resolve();
  return {
    book: {
      ...book,
      async look(...asked) {
        const until = held;
        const looked = await book.look(...asked);
        await until;
        return looked;
      },
    },
    hold() {
      let go = (): void => undefined;
      held = new Promise(done => {
        go = done;
      });
      return go;
    },
  };
}
