import { afterEach, describe, expect, test, vi } from 'vitest';
import { note } from '../../../test/store-contract/note.ts';
import { type App, type BookStore, createApp } from '../../app/index.ts';
import { type Fact, sealNext } from '../../book/index.ts';
import { memoryStore } from '../../store/memory/index.ts';
import { ownInMemory } from './own-in-memory.ts';
import { Answered, OutOfReach, type Remote } from './remote.ts';
import { createSync, type Sync } from './sync.ts';

type Side = { readonly app: App; readonly store: BookStore; write(text: string): Promise<Fact> };
const reader = { read: async () => ({ ok: false, problems: [] }) as never };

function book(device: string): Side {
  const store = memoryStore();
  const app = createApp({
    store,
    clock: { now: () => new Date(0) },
    ids: { next: () => '', salt: () => '0'.repeat(32) },
    reader,
    device,
  });
  const write = async (text: string) =>
    (await store.appendNext(device, last => [sealNext(last, note(text, device, text))]))[0] as Fact;
  return { app, store, write };
}

/** The server as the page sees it; `fail` is what every request meets while it is set. */
function remoteOf({ app }: Side) {
  const line: { fail: Error | undefined; news: () => void; readonly files: string[] } = {
    fail: undefined,
    news: () => undefined,
    files: [],
  };
  const through = async <T>(answer: () => Promise<T>): Promise<T> => {
    if (line.fail) throw line.fail;
    return answer();
  };
  const remote: Pick<Remote, 'meet' | 'since' | 'take' | 'putFile' | 'listen'> = {
    meet: () => through(async () => ({ ends: await app.ends(), starts: await app.starts() })),
    since: numbers => through(() => app.since(numbers)),
    take: facts => through(() => app.take(facts)),
    putFile: (bytes, type) =>
      through(async () => {
        line.files.push(await app.putFile(bytes, type));
      }),
    listen(news) {
      line.news = news;
      return () => undefined;
    },
  };
  return { line, remote };
}

const running: Sync[] = [];
afterEach(() => {
  for (const sync of running.splice(0)) sync.stop();
});
const begin = async (here: Side, remote: ReturnType<typeof remoteOf>['remote'], own = ownInMemory()) => {
  const sync = await createSync({ app: here.app, own, remote, clock: { now: () => new Date('2026-04-18T14:05:00Z') } });
  running.push(sync);
  return sync;
};
const down = new OutOfReach('connection refused');
const notesOf = async ({ app }: Side): Promise<readonly string[]> =>
  (await app.since({})).map(fact => (fact.kind === 'note' ? fact.text : fact.kind)).toSorted();

describe('the book of a device', () => {
  test('sends what is written here, and takes what was written there, each once', async () => {
    const [here, there] = [book('phone'), book('laptop')];
    await there.write('from the laptop');
    const { remote } = remoteOf(there);
    const sync = await begin(here, remote);
    await sync.now();
    await here.write('from the phone');
    await sync.wrote();
    await sync.now();
    await sync.now();
    expect(await notesOf(here)).toEqual(['from the laptop', 'from the phone']);
    expect(await notesOf(there)).toEqual(['from the laptop', 'from the phone']);
    expect(sync.state()).toMatchObject({ is: 'all sent', waiting: 0, met: '2026-04-18T14:05:00.000Z' });
  });

  test('counts what waits while the server is away, also after a reload, and sends it when it is back', async () => {
    const [here, there, own] = [book('phone'), book('laptop'), ownInMemory()];
    const { remote, line } = remoteOf(there);
    await here.write('one');
    const first = await begin(here, remote, own);
    await first.now();
    line.fail = down;
    await here.write('two');
    await here.write('three');
    await first.now();
    expect(first.state()).toMatchObject({ is: 'no server', waiting: 2 });
    first.stop();
    const again = await begin(here, remote, own);
    expect(again.state()).toMatchObject({ waiting: 2, met: '2026-04-18T14:05:00.000Z' });
    line.fail = undefined;
    await again.now();
    expect(again.state()).toMatchObject({ is: 'all sent', waiting: 0 });
    expect(await notesOf(there)).toEqual(['one', 'three', 'two']);
  });

  test('tells of what came only when the exchange is over', async () => {
    const [here, there] = [book('phone'), book('laptop')];
    for (let i = 0; i < 700; i++) await there.write(`note ${i}`); // more than goes in one request
    const { remote } = remoteOf(there);
    const heard: number[] = [];
    const sync = await begin(here, remote);
    sync.onArrived(() => void here.store.read().then(all => heard.push(all.length)));
    await sync.now();
    await sync.now();
    expect(heard).toEqual([700]);
  });

  test('sends a photo before the fact that names it', async () => {
    const [here, there] = [book('phone'), book('laptop')];
    const { remote, line } = remoteOf(there);
    const photo = await here.app.putFile(new Uint8Array([1, 2, 3]), 'image/png');
    const found = { ...note('x', 'phone'), kind: 'found', part: 'axle', defect: 'bent', grade: 'safety', photo };
    const { text: _, ...draft } = found as typeof found & { text?: string };
    await here.store.appendNext('phone', last => [sealNext(last, draft as Parameters<typeof sealNext>[1])]);
    const take = remote.take;
    const order: string[] = [];
    const sync = await begin(here, {
      ...remote,
      take: facts => {
        order.push(`facts after ${line.files.length} files`);
        return take(facts);
      },
    });
    await sync.now();
    expect(order).toEqual(['facts after 1 files']);
    expect((await there.app.getFile(photo))?.bytes).toEqual(new Uint8Array([1, 2, 3]));
  });

  test('gives back to a server that was set to an old copy what it has lost', async () => {
    const [here, there, restored] = [book('phone'), book('laptop'), book('laptop')];
    await here.write('one');
    const shared = remoteOf(there);
    const own = ownInMemory();
    const sync = await begin(here, shared.remote, own);
    await here.write('two');
    await sync.now();
    sync.stop();
    await restored.app.take((await here.app.since({})).slice(0, 1));
    const after = await begin(here, remoteOf(restored).remote, own);
    await after.now();
    expect(await notesOf(restored)).toEqual(['one', 'two']);
    expect(after.state()).toMatchObject({ is: 'all sent', setBack: 1 });
    after.stop();
    const reloaded = await begin(here, remoteOf(restored).remote, own);
    expect(reloaded.state().setBack).toBe(1); // told until somebody has read it
    await reloaded.now();
    await reloaded.seenSetBack();
    expect(reloaded.state().setBack).toBeUndefined();
  });

  test('gives nothing to a server that lost its book until a person says so, and everything then', async () => {
    const [here, there, own] = [book('phone'), book('laptop'), ownInMemory()];
    await here.write('one');
    const sync = await begin(here, remoteOf(there).remote, own); // it never held anything: what is here goes there
    await sync.now();
    expect(await notesOf(there)).toEqual(['one']);
    sync.stop();
    const fresh = book('laptop');
    const after = await begin(here, remoteOf(fresh).remote, own);
    await after.now();
    expect(after.state().is).toBe('empty server');
    expect(await notesOf(fresh)).toEqual([]);
    await after.giveAll();
    expect(after.state().is).toBe('all sent');
    expect(await notesOf(fresh)).toEqual(['one']);
  });

  test('keeps apart from a book that shares nothing with it', async () => {
    const [here, other] = [book('phone'), book('demo')];
    await here.write('mine');
    await other.write('theirs');
    const sync = await begin(here, remoteOf(other).remote);
    await sync.now();
    expect(sync.state()).toMatchObject({ is: 'other book', waiting: 1, theirs: { starts: await other.app.starts() } });
    expect(await notesOf(here)).toEqual(['mine']);
    expect(await notesOf(other)).toEqual(['theirs']);
  });

  test('that was put out keeps what it wrote and asks no more, until it is told to, and then sends it', async () => {
    const [here, there] = [book('phone'), book('laptop')];
    const { remote, line } = remoteOf(there);
    await here.write('one');
    let asked = 0;
    let open = 0;
    line.fail = new Answered(401, []);
    const counted: typeof remote = {
      ...remote,
      meet: () => {
        asked++;
        return remote.meet();
      },
      listen: (...heard) => {
        open++;
        const hangUp = remote.listen(...heard);
        return () => {
          open--;
          hangUp();
        };
      },
    };
    vi.useFakeTimers();
    const sync = await begin(here, counted);
    await sync.now();
    expect(sync.state()).toMatchObject({ is: 'put out', waiting: 1 });
    const before = asked;
    await vi.advanceTimersByTimeAsync(3_600_000);
    vi.useRealTimers();
    expect([asked, open]).toEqual([before, 0]);
    await here.write('two');
    line.fail = undefined;
    await sync.now();
    expect(sync.state()).toMatchObject({ is: 'all sent', waiting: 0 });
    expect(await notesOf(there)).toEqual(['one', 'two']);
    expect(open).toBe(1);
  });

  test('says in the server’s words why it is turned away, and loses nothing', async () => {
    const [here, there] = [book('phone'), book('laptop')];
    const { remote, line } = remoteOf(there);
    await here.write('one');
    const told = { code: 'book', where: 'server', message: 'It failed.', remedy: 'Look at it.' } as const;
    line.fail = new Answered(500, [told]);
    const sync = await begin(here, remote);
    await sync.now();
    expect(sync.state()).toMatchObject({ is: 'stopped', waiting: 1, problems: [told] });
    line.fail = undefined;
    line.news();
    await sync.now();
    expect(sync.state().is).toBe('all sent');
  });

  test('tells a clock that is a day off, not one that is a minute off', async () => {
    for (const [clock, ahead] of [
      ['Sat, 18 Apr 2026 14:04:00 GMT', undefined],
      ['Fri, 17 Apr 2026 14:05:00 GMT', 86_400_000],
      ['Sun, 19 Apr 2026 14:05:00 GMT', -86_400_000],
    ] as const) {
      const [here, { remote }] = [book('phone'), remoteOf(book('laptop'))];
      const sync = await begin(here, { ...remote, meet: async () => ({ ...(await remote.meet()), clock }) });
      await sync.now();
      expect(sync.state()).toMatchObject({ is: 'all sent' });
      expect(sync.state().ahead).toBe(ahead);
    }
  });
});
