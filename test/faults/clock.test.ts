/** Clocks that step while people write: a day back, a year ahead, and home again. Nothing is lost, doubled or hidden, and the order is one. */
import { expect, test } from 'vitest';
import { type App, createApp, exchange, proofOf } from '../../src/app/index.ts';
import { compareFacts, fold, inOrder, verifyChain } from '../../src/book/index.ts';
import { demoText, kartReader, libraryFiles, randomIds } from '../../src/host/index.ts';
import { memoryStore } from '../../src/store/memory/index.ts';
import { randoms, report, SEED, tries } from './size.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
/** What a clock does at once [ms]. */
const STEPS = [-DAY, DAY, 365 * DAY, -365 * DAY, 4 * MINUTE, -4 * MINUTE, 6 * MINUTE, -6 * MINUTE];
const reader = kartReader(libraryFiles());

test('clocks that step by a day, a year and a few minutes hide nothing and lose nothing', async () => {
  const random = randoms(SEED);
  const any = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  const [rounds, writes] = [tries(2, 40), tries(15, 60)];
  let [kept, refused] = [0, 0];
  for (let round = 0; round < rounds; round++) {
    let true_ = Date.UTC(2026, 10, 26, 10);
    const devices = ['laptop', 'phone A', 'phone B'].map(device => {
      const own = { ahead: 0 };
      const store = memoryStore();
      const clock = { now: () => new Date(true_ + own.ahead) };
      return { own, store, app: createApp({ store, clock, ids: randomIds, reader, device }) };
    });
    const [laptop, ...phones] = devices as [(typeof devices)[0], ...typeof devices];
    const text = demoText().kart;
    expect((await laptop.app.fileKart(text, { by: 'A. Bench' })).kind).toBe('recorded');
    const meet = async (phone: App): Promise<void> => {
      expect((await exchange(phone, laptop.app)).problems).toEqual([]);
    };
    for (const { app } of phones) await meet(app);
    const written = new Set<string>();
    for (let n = 0; n < writes; n++) {
      true_ += Math.floor(random() * 10 * MINUTE);
      const { own, app } = any(devices);
      if (random() < 0.3) own.ahead = random() < 0.3 ? 0 : own.ahead + any(STEPS);
      const payload = any([
        { kind: 'note', text: `said ${n}` },
        { kind: 'ran', minutes: 8, laps: 7 },
      ]);
      const done = await app.record('41', [payload], { by: 'A. Bench', sure: true });
      if (done.kind === 'recorded') {
        for (const { id } of done.facts) written.add(id);
        // What was written a moment ago is seen at once, whatever the clock says.
        const seen = await app.state('41');
        for (const fact of done.facts)
          expect((await app.facts('41')).some(line => line.fact.id === fact.id)).toBe(true);
        expect(seen).toEqual(fold((await app.facts('41')).map(line => line.fact)));
      } else {
        refused++;
        for (const { message, remedy } of done.problems)
          expect([message, remedy].every(said => /\w{3}/.test(said))).toBe(true);
      }
      if (random() < 0.2 && app !== laptop.app) await meet(app);
    }
    for (let twice = 0; twice < 2; twice++) for (const { app } of phones) await meet(app);
    const books = await Promise.all(devices.map(async ({ store }) => (await store.read()).map(({ fact }) => fact)));
    for (const [n, facts] of books.entries()) {
      expect(verifyChain(facts)).toEqual([]);
      expect(inOrder(facts)).toEqual(inOrder(books[0] ?? []));
      expect([...inOrder(facts)].reverse().sort(compareFacts)).toEqual(inOrder(facts));
      expect(facts.filter(({ id }) => written.has(id)).length).toBe(written.size);
      expect((await proofOf(devices[n]?.store ?? memoryStore())).problems).toEqual([]);
    }
    kept += written.size;
  }
  report(
    `clocks stepping in ${rounds} books on three devices: ${kept} facts kept once each, ${refused} refused in words, one order`,
  );
  expect(kept).toBeGreaterThan(0);
}, 1_800_000);
