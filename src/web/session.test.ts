import { expect, test } from 'vitest';
import { type App, createApp } from '../app/index.ts';
import { demoText, kartReader, libraryFiles, randomIds } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { StoreError } from '../store/store-error.ts';
import { type DeviceBook, openDeviceBook } from './book/open.ts';
import { ownInMemory } from './book/own-in-memory.ts';
import { OutOfReach, type Remote } from './book/remote.ts';
import { ALONE } from './plan/crew.ts';
import { createSession, type Session } from './session.ts';

const clock = { now: () => new Date() };
const reader = kartReader(libraryFiles());

async function server(): Promise<App> {
  const app = createApp({ store: memoryStore(), clock, ids: randomIds, reader, device: 'laptop' });
  await app.seedDemo(demoText());
  return app;
}

/** A page on a device of its own; `line.up` says whether the server is in reach. */
async function page(there: App, store = memoryStore()) {
  const line: { up: boolean; news: () => void } = { up: true, news: () => undefined };
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
    store: Object.assign(store, { own: ownInMemory() }),
    kept: true,
    remote,
    clock,
    random: bytes => crypto.getRandomValues(new Uint8Array(bytes)),
    build: 'test',
  });
  const session = createSession(book, {
    who: () => 'A. Sample',
    crewOf: () => ALONE,
    search: () => () => undefined,
    afterPaint(work) {
      const timer = setTimeout(work);
      return () => clearTimeout(timer);
    },
    beginAnew: () => undefined,
    letIn: () => undefined,
  });
  await session.open('');
  return { line, book, session };
}

const shownIn = (session: Session): Promise<void> =>
  new Promise(done => {
    const look = (): void => {
      if (session.view().snapshot) done();
    };
    session.onChange(look);
    look();
  });
const notes = (session: Session): readonly string[] =>
  (session.view().snapshot?.facts ?? []).flatMap(({ fact }) => (fact.kind === 'note' ? [fact.text] : []));

test('an empty device shows the kart as soon as its first meeting is over', async () => {
  const { session, book } = await page(await server());
  await shownIn(session);
  expect(session.view().snapshot?.kart.name).toBe('41');
  expect(session.view().trouble).toEqual([]);
  book.sync.stop();
});

test('what is said without a server counts at once, and is on its way when the server is back', async () => {
  const there = await server();
  const { session, line, book } = await page(there);
  await shownIn(session);
  await session.book.meet();
  line.up = false;
  await session.book.meet();
  const written = await session.write([{ kind: 'note', text: 'bring the rain tyres' }]);
  expect(written.kind).toBe('written');
  expect(notes(session)).toContain('bring the rain tyres');
  expect(session.view().sync).toMatchObject({ is: 'no server', waiting: 1 });
  expect(session.view().writing).toBe(false);
  line.up = true;
  await session.book.meet();
  expect(session.view().sync).toMatchObject({ is: 'all sent', waiting: 0 });
  expect(await there.exportBook()).toContain('bring the rain tyres');
  book.sync.stop();
});

test('what others say comes in by itself, and a wrong entry is refused here in the words of the server', async () => {
  const there = await server();
  const { session, line, book } = await page(there);
  await shownIn(session);
  await there.record('41', [{ kind: 'note', text: 'from the laptop' }], { by: 'J. Moor' });
  const came = new Promise<void>(done =>
    session.onChange(() => {
      if (notes(session).includes('from the laptop')) done();
    }),
  );
  line.news();
  await came;
  const wrong = [{ kind: 'taken off', part: 'no such part' }] as const;
  const refused = await session.write(wrong);
  const said = await there.record('41', wrong, { by: 'A. Sample' });
  expect(refused).toMatchObject({ kind: 'refused', problems: said.kind === 'refused' ? said.problems : [] });
  book.sync.stop();
});

test('a device without room says what to do, and shows what it showed', async () => {
  const store = memoryStore();
  const { session, book } = await page(await server(), store);
  await shownIn(session);
  await session.book.meet();
  const before = session.view().snapshot;
  store.appendNext = () => Promise.reject(new StoreError('disk full', 'there is no room left', 'free some space'));
  const refused = await session.write([{ kind: 'note', text: 'x' }]);
  expect(refused).toMatchObject({ kind: 'refused', asksAgain: false, problems: [{ remedy: 'Free some space.' }] });
  expect(session.view().snapshot).toBe(before);
  book.sync.stop();
});
