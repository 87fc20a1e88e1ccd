import { expect, test, vi } from 'vitest';
import { alike, demoApp as server } from '../../test/demo.ts';
import {
  atTheDevice,
  clock,
  device,
  notes,
  opened,
  page,
  reader,
  sessionOf,
  shownIn,
  slowly,
} from '../../test/page-on-device.ts';
import { createApp, openingOf, openOnKart, standsOpen } from '../app/index.ts';
import { randomIds } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { StoreError } from '../store/store-error.ts';
import { draftsOf } from './answer.ts';
import { ownInMemory } from './book/own-in-memory.ts';
import { ALONE } from './plan/crew.ts';
import type { Search } from './plan/search.ts';
import type { Session } from './session.ts';

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

test('a page opened anew without a server never calls its book empty before it has looked into it', async () => {
  const [there, store, own] = [await server(), memoryStore(), ownInMemory()];
  const { book: before } = await device(there, store, { own });
  await shownIn(await opened(before));
  before.sync.stop();
  const { book } = await device(there, store, { own, up: false });
  let look = (): void => undefined;
  const slow = new Promise<void>(done => {
    look = done;
  });
  const anew = sessionOf({ ...book, look: async (...asked) => slow.then(() => book.look(...asked)) });
  const views = [anew.view()];
  anew.onChange(() => views.push(anew.view()));
  const isOpen = anew.open('');
  await book.sync.now();
  await new Promise(done => setTimeout(done, 10)); // how it stands with the server is said after the next paint
  expect(views.at(-1)?.sync.is).toBe('no server');
  look();
  await isOpen;
  expect(views.filter(({ isRead, karts }) => isRead && karts.length === 0)).toEqual([]);
  expect(views.at(-1)).toMatchObject({ isRead: true, snapshot: { kart: { name: '41' } } });
  book.sync.stop();
});

test('a device that has looked and found nothing says so once the server was tried', async () => {
  const { session, book } = await page(
    createApp({ store: memoryStore(), clock, ids: randomIds, reader, device: 'laptop' }),
  );
  await book.sync.now();
  await expect.poll(() => session.view().isRead).toBe(true);
  expect(session.view().karts).toEqual([]);
  book.sync.stop();
});

/** Of the step that is done first on the kart that is shown. */
async function tick(session: Session): Promise<readonly string[]> {
  const step = session.view().snapshot?.plan.steps.find(({ state }) => state === 'ready');
  if (step === undefined) throw new Error('tick: a step must be ready, got none');
  const written = await session.finish(step.key, draftsOf(step, { is: 'done' }), {}, () => undefined);
  return written.kind === 'written' ? written.facts.map(({ kart }) => kart) : written.problems.map(p => p.message);
}
test('a kart that somebody files meanwhile never takes the place of the one at hand', async () => {
  const there = await server();
  const { session, line, book } = await page(there);
  await shownIn(session);
  await there.fileKart(alike('12'), { by: 'J. Moor' });
  line.news();
  await expect.poll(() => session.view().karts.length).toBe(2);
  expect(session.view().snapshot?.kart.name).toBe('41');
  expect(await tick(session)).toEqual(['41']);
  book.sync.stop();
});

test('while a picked kart is being read, what is done is written of the one that is seen', async () => {
  const there = await server();
  await there.fileKart(alike('77'), { by: 'J. Moor' });
  const { book } = await device(there, memoryStore());
  const slow = slowly(book);
  const session = sessionOf(slow.book);
  await session.open('41');
  await shownIn(session);
  await book.sync.now();
  let go = slow.hold();
  const opened = session.open('77');
  await new Promise(done => setTimeout(done, 50));
  expect(await tick(session)).toEqual(['41']);
  const first = go;
  go = slow.hold(); // the look that follows the tick
  first();
  await opened;
  expect(session.view().snapshot?.kart.name).toBe('41');
  expect(await tick(session)).toEqual(['41']);
  go();
  await expect.poll(() => session.view().snapshot?.kart.name, { timeout: 10_000 }).toBe('77');
  expect(await tick(session)).toEqual(['77']);
  book.sync.stop();
});

test('what is said of a sheet of before is not written of another kart, nor a second time', async () => {
  const there = await server();
  const [store, own] = [memoryStore(), ownInMemory()];
  const { book: first, line } = await device(there, store, { own });
  const before = await opened(first);
  await shownIn(before);
  await first.sync.now();
  const sameKart = await openingOf(there, '');
  line.up = false;
  expect(await tick(before)).toEqual(['41']);
  first.sync.stop();
  await there.fileKart(alike('12'), { by: 'J. Moor' });
  for (const opening of [sameKart, await openingOf(there, '12')]) {
    const { book } = await device(there, store, { own, up: false });
    const slow = slowly(book);
    const go = slow.hold();
    const session = sessionOf(slow.book);
    const isOpen = session.open('', Promise.resolve(opening));
    await shownIn(session);
    expect(session.view().stood).toBeDefined();
    const entries = (await book.app.facts('41')).length;
    const said = tick(session);
    go();
    await isOpen;
    expect(await said).toEqual([expect.stringContaining('nothing was written')]);
    expect((await book.app.facts('41')).length).toBe(entries);
    expect(await tick(session)).toEqual(['41']);
    book.sync.stop();
  }
});

test('a picked kart that is not on this device yet is shown as soon as it has come', async () => {
  const there = await server();
  const { line, book } = await device(there, memoryStore());
  const session = sessionOf(book);
  await session.open('9');
  await shownIn(session);
  await book.sync.now();
  expect(session.view().snapshot?.kart.name).toBe('41');
  await there.fileKart(alike('9'), { by: 'J. Moor' });
  line.news();
  await expect.poll(() => session.view().snapshot?.kart.name, { timeout: 10_000 }).toBe('9');
  expect(session.view().picked).toBeUndefined();
  // Who goes on with the one at hand meanwhile stays with it.
  await session.open('10');
  await session.open('41'); // shown with its own kart file, not that of the one before
  expect(session.view().snapshot?.kart.name).toBe('41');
  await session.open('9');
  await session.open('10');
  const seen = session.view().snapshot?.kart.name;
  expect(seen).toBe('9');
  expect(await tick(session)).toEqual([seen]);
  await there.fileKart(alike('10'), { by: 'J. Moor' });
  line.news();
  await expect.poll(() => session.view().karts.length).toBe(3);
  expect(session.view().snapshot?.kart.name).toBe(seen);
  book.sync.stop();
});

test('while a picked kart is being read that is said, and no more once it is shown or the other one was picked again', async () => {
  const there = await server();
  await there.fileKart(alike('77'), { by: 'J. Moor' });
  const { book } = await device(there, memoryStore());
  const session = sessionOf(book);
  await session.open('41');
  await book.sync.now();
  await expect.poll(() => session.view().karts.length).toBe(2);
  const toOther = session.open('77');
  expect(session.view().picked).toBe('77');
  await toOther;
  expect(session.view()).toMatchObject({ picked: undefined, snapshot: { kart: { name: '77' } } });
  await Promise.all([session.open('41'), session.open('77')]);
  expect(session.view()).toMatchObject({ picked: undefined, snapshot: { kart: { name: '77' } } });
  book.sync.stop();
});

/** How the step that was done first stands in the plan that is shown. */
async function tickedStep(session: Session): Promise<() => string | undefined> {
  const key = session.view().snapshot?.plan.steps.find(({ state }) => state === 'ready')?.key;
  expect(await tick(session)).toEqual(['41']);
  return () => session.view().snapshot?.plan.steps.find(step => step.key === key)?.state;
}

test('a step that is done does not come back with a plan that was searched before', async () => {
  const there = await server();
  const { book } = await device(there, memoryStore());
  const slow = slowly(book);
  let hear: Parameters<Search>[1] | undefined;
  const session = sessionOf(slow.book, { people: 2, names: [], times: [] }, (_, heard) => {
    hear = heard;
    return () => undefined;
  });
  await session.open('');
  await shownIn(session);
  await book.sync.now();
  await expect.poll(() => hear !== undefined).toBe(true);
  const before = session.view().snapshot?.plan;
  if (before === undefined) throw new Error('a plan must be shown');
  const go = slow.hold(); // what is worked out after the step comes late
  const ticked = await tickedStep(session);
  hear?.({ plan: before, done: false });
  expect(ticked()).toBe('done');
  session.planner.setCrew(ALONE);
  expect(ticked()).toBe('done');
  go();
  book.sync.stop();
});

test('a step that is done stays done when what changed has been read', async () => {
  const { book } = await device(await server(), memoryStore());
  const slow = slowly(book);
  const session = sessionOf(slow.book);
  await session.open('');
  await shownIn(session);
  await book.sync.now();
  const go = slow.hold();
  const ticked = await tickedStep(session);
  session.planner.seen();
  expect(ticked()).toBe('done');
  go();
  book.sync.stop();
});

test('a page that was left open for weeks shows what the record says today, and what it showed then as of then', async () => {
  const there = await server();
  const { session, book } = await page(there);
  await shownIn(session);
  await book.sync.now();
  const { fitness, due } = session.view().snapshot ?? {};
  vi.useFakeTimers({ toFake: ['Date'] });
  try {
    vi.setSystemTime(Date.now() + 45 * 86_400_000);
    const again = session.lookAgain();
    expect(session.view().stood).toBe(fitness?.at);
    await again;
    const now = await book.app.due('41');
    expect(now.due).not.toEqual(due?.due);
    expect(session.view().stood).toBeUndefined();
    expect(session.view().snapshot?.due.due).toEqual(now.due);
  } finally {
    vi.useRealTimers();
    book.sync.stop();
  }
});

test('a fact that is in the book was written, though what waits to be sent could not be counted', async () => {
  const { book } = await device(await server(), memoryStore());
  const wrote = () => Promise.reject(new Error('the book could not be read'));
  const session = sessionOf({ ...book, sync: { ...book.sync, wrote } });
  await session.open('');
  await shownIn(session);
  expect(await session.write([{ kind: 'note', text: 'only once' }])).toMatchObject({ kind: 'written' });
  book.sync.stop();
});

test('what is said while the book is still being read is of the person who said it, not of whom the device was handed to', async () => {
  const there = await server();
  const { book } = await device(there, memoryStore());
  await book.sync.now();
  const slow = slowly(book);
  const go = slow.hold();
  const session = sessionOf(slow.book);
  const isOpen = session.open('', openingOf(there, ''));
  await shownIn(session);
  const said = session.write([{ kind: 'note', text: 'whose?' }]);
  atTheDevice.who = 'B. Other';
  go();
  await isOpen;
  const written = await said;
  atTheDevice.who = 'A. Sample';
  expect(written.kind === 'written' && written.facts.map(({ by }) => by)).toEqual(['A. Sample']);
  book.sync.stop();
});

test('what is written is said to be so the moment the book has it, before the page is worked out again', async () => {
  const { book } = await device(await server(), memoryStore());
  const slow = slowly(book);
  const session = await opened(slow.book);
  await shownIn(session);
  const go = slow.hold();
  const done = vi.fn();
  let isRecorded = false;
  void session.write([{ kind: 'note', text: 'x' }], { recorded: () => (isRecorded = true) }).then(done);
  await expect.poll(() => isRecorded).toBe(true);
  expect(done).not.toHaveBeenCalled();
  go();
  await expect.poll(() => done.mock.calls.length).toBe(1);
  book.sync.stop();
});

test('a release is of what the signer saw: what another hand found meanwhile is read first', async () => {
  const { session, book } = await page(await server());
  await shownIn(session);
  const sign = (sure: boolean) => {
    const { snapshot } = session.view();
    if (snapshot === undefined) throw new Error('sign: a kart must be shown, got none');
    const seen = standsOpen(snapshot.fitness, openOnKart(snapshot.kart, snapshot.state));
    return session.sign({ statement: '', signer: 'R. Vale', sure, seen }, () => undefined);
  };
  await book.app.record('41', [{ kind: 'found', part: 'brake push rod', defect: 'cracked', grade: 'safety' }], {
    by: 'J. Moor',
  });
  const refused = await sign(true);
  expect(refused).toMatchObject({ kind: 'refused', asksAgain: false, problems: [{ code: 'stands otherwise' }] });
  expect(refused.kind === 'refused' && refused.problems[0]?.message).toContain('cracked');
  expect(await sign(false)).toMatchObject({ kind: 'refused', asksAgain: true });
  const signed = await sign(true);
  expect(signed.kind === 'written' && signed.facts[0]).toMatchObject({
    open: expect.arrayContaining([expect.stringContaining('cracked')]),
  });
  book.sync.stop();
});
