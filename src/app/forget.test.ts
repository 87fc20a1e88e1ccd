/** A person taken out of a book, as an owner asks for it, and what other copies of the book then do. */
import { describe, expect, test } from 'vitest';
import { redactionOf } from '../../test/store-contract/redacting.ts';
import { type Fact, fold, verifyChain } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { type App, appFor, createApp, exchange } from './index.ts';
import { named } from './person.ts';
import { proofOf } from './proof.ts';

const text = 'kart: 1\nname: "41"\n# built by R. Stranger\n';
const reader = {
  read: async (file: string) => ({ ok: true, kart: { name: '41', file, items: {}, parts: {}, joints: {} } }) as never,
};
let n = 0;
function book(device: string) {
  const store = memoryStore();
  const ids = { next: () => `${device}-${++n}`, salt: () => (++n).toString(16).padStart(32, '0') };
  const clock = { now: () => new Date('2026-05-01T10:00:00.000Z') };
  return { store, app: createApp({ store, clock, ids, reader, device }) };
}
type Book = ReturnType<typeof book>;
const held = async ({ store }: Book): Promise<readonly Fact[]> => (await store.read()).map(({ fact }) => fact);
const said = async (one: Book): Promise<string> => JSON.stringify(await one.store.lying());

async function season(): Promise<Book> {
  const one = book('bench');
  await one.app.fileKart(text, { by: 'O. Owner' });
  const photo = await one.app.putFile(Uint8Array.of(1, 2, 3), 'image/png');
  const write = (payload: object, by: string) => one.app.record('41', [payload], { by });
  await write({ kind: 'note', text: 'as R. Stranger said, dry' }, 'O. Owner');
  await write({ kind: 'ran', minutes: 12, laps: 10, conditions: 'cold, says r. stranger' }, 'R. Stranger');
  await write({ kind: 'note', text: 'tyres are mine' }, 'R. Stranger');
  await one.app.record('41', [{ kind: 'note', text: 'nothing of anybody' }], { by: 'A. Helper' });
  expect(photo.length).toBe(64);
  return one;
}
const ask = { person: 'R. Stranger', by: 'O. Owner' };

describe('a person who is forgotten', () => {
  test('is gone from every fact, and what was done to the kart is as it was', async () => {
    const one = await season();
    const before = fold(await held(one));
    const dry = await one.app.forget({ ...ask, dryRun: true });
    expect(dry).toMatchObject({ kind: 'forgotten', theirs: 2, naming: 2, left: [], done: false });
    expect(await said(one)).toContain('R. Stranger');
    expect(await one.app.forget(ask)).toMatchObject({ kind: 'forgotten', theirs: 2, naming: 2, done: true });
    expect(await said(one)).not.toMatch(/stranger/i);
    const after = fold(await held(one));
    expect({ ...after, runs: [], last: 0 }).toEqual({ ...before, runs: [], last: 0 });
    expect(after.runs).toEqual(before.runs.map(run => ({ ...run, by: dry.kind === 'forgotten' ? dry.as : '' })));
    expect(verifyChain(await held(one))).toEqual([]);
    expect((await proofOf(one.store)).problems).toEqual([]);
    expect(await one.app.exportBook()).not.toMatch(/stranger/i);
  });

  test('has notes and remarks taken out when that is asked for', async () => {
    const one = await season();
    await one.app.forget({ ...ask, words: true });
    expect(await said(one)).not.toContain('tyres are mine');
    expect(await said(one)).toContain('nothing of anybody');
  });

  test('does not come back from another phone, from an old backup, or by way of a third', async () => {
    const [here, phone, old, third] = [await season(), book('phone'), book('old'), book('third')];
    for (const copy of [phone, old, third]) await exchange(copy.app, here.app);
    await here.app.forget(ask);
    await exchange(third.app, old.app); // neither has heard of it
    await exchange(phone.app, here.app);
    await exchange(old.app, phone.app);
    await exchange(here.app, old.app);
    await exchange(third.app, old.app);
    for (const one of [here, phone, old, third]) {
      expect(await said(one)).not.toMatch(/stranger/i);
      expect(await held(one)).toEqual(expect.arrayContaining([...(await held(here))]));
      expect((await proofOf(one.store)).problems).toEqual([]);
    }
    const fresh = book('fresh');
    expect((await exchange(fresh.app, here.app)).problems).toEqual([]);
    expect(await said(fresh)).not.toMatch(/stranger/i);
  });

  test('who takes themselves out does not sign that with their name', async () => {
    const one = await season();
    await one.app.forget({ person: 'R. Stranger', by: 'r. stranger' });
    expect(await said(one)).not.toMatch(/stranger/i);
  });

  test('two owners who do it apart, not knowing all the same facts, end with the same book', async () => {
    const [here, there] = [await season(), book('there')];
    await exchange(there.app, here.app);
    await here.app.record('41', [{ kind: 'note', text: 'only here' }], { by: 'R. Stranger' });
    await here.app.forget(ask);
    await there.app.forget({ ...ask, words: true });
    await exchange(there.app, here.app);
    const byId = async (one: Book) => (await held(one)).toSorted((a, b) => (a.id < b.id ? -1 : 1));
    expect(await byId(here)).toEqual(await byId(there));
    expect(await said(there)).not.toMatch(/stranger/i);
  });

  test('nobody but an owner takes anybody out, by no way in', async () => {
    const one = await season();
    const may = (role: 'mechanic' | 'driver' | 'scrutineer'): App =>
      appFor(one.app, { role, chain: 'theirs', claim: async () => true });
    const forged = redactionOf(await held(one));
    for (const role of ['mechanic', 'driver', 'scrutineer'] as const) {
      await expect(may(role).forget(ask)).rejects.toMatchObject({ problems: [{ code: 'not allowed' }] });
      expect(await may(role).take([forged])).toMatchObject({ kind: 'refused', problems: [{ code: 'not allowed' }] });
    }
    expect(await said(one)).toContain('R. Stranger');
  });

  test('one who does not stand in the book is named as unknown', async () => {
    const one = await season();
    expect(await one.app.forget({ person: 'N. Nobody', by: 'O. Owner' })).toMatchObject({ kind: 'refused' });
    expect(await one.app.forget({ person: ' . ', by: 'O. Owner' })).toMatchObject({ kind: 'refused' });
  });
});

test('a name is found as a whole, whatever its case and the space in it, and a short one not in texts', () => {
  const who = named('R. Stranger');
  expect(who?.places('r.  STRANGER and R. Strangers, (R. Stranger)')).toEqual([
    [0, 12],
    [32, 11],
  ]);
  expect(named('Al')?.places('Al is here')).toEqual([]);
  expect(named('...')).toBeUndefined();
});
