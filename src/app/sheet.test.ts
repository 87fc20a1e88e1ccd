import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { type App, createApp, sheetOf } from './index.ts';

const effects = readFileSync(new URL('../../data/setup-effects.yaml', import.meta.url), 'utf8');
let app: App;
beforeAll(async () => {
  let n = 0;
  const ids = { next: () => `id-${n++}`, salt: () => '0'.repeat(32) };
  const clock = { now: () => new Date('2026-06-20T12:00:00Z') };
  app = createApp({ store: memoryStore(), clock, ids, reader: kartReader(libraryFiles()), device: 'test' });
  await app.seedDemo(demoText());
});
const ask = (question: Parameters<typeof sheetOf>[2] = {}) => sheetOf(app, '41', question, effects);

describe('the set-up sheet of the demo kart', () => {
  test('stands against the base of the season unless told otherwise', async () => {
    const sheet = await ask();
    expect(sheet.invented).toBe(true);
    expect(sheet.against?.label).toContain('Base of the season');
    expect(sheet.differences).toContainEqual(expect.objectContaining({ name: 'gearing', was: '17/24', now: '17/23' }));
    expect(sheet.settings.map(({ name }) => name)).toContain('overall rear width');
  });

  test('a session is found by its last name, the newest of several, and shows what it ran with', async () => {
    const sheet = await ask({ against: 'heat 1' });
    expect(sheet.against?.label).toBe('Hollow Lane round 4 › Heat 1');
    expect(sheet.differences.find(({ name }) => name === 'front spacers')).toMatchObject({ by: '-10 mm' });
    expect(sheet.hints.map(({ change }) => change)).toContain('front width narrower');
  });

  test('at a past moment it is the sheet of then', async () => {
    const [first] = await app.facts('41', { kinds: ['set-up'] });
    const sheet = await ask(first ? { at: first.fact.at } : {});
    expect(sheet.settings.find(({ name }) => name === 'gearing')?.value).toBe('17/24');
    expect(sheet.differences).toEqual([]);
    expect(await ask({ against: sheet.at ?? '' })).toMatchObject({ against: { at: sheet.at } });
  });

  test('one setting: what is said of it and what this kart showed; a setting nobody knows is refused with the near one', async () => {
    const about = await ask({ about: 'gearing' });
    expect(about.hints.map(({ for: name }) => name)).toEqual(['gearing']);
    expect(about.observed.map(({ was, now }) => [was, now])).toEqual([['17/24', '17/23']]);
    await expect(ask({ about: 'gering' })).rejects.toThrow(/Did you mean "gearing"/);
  });

  test('a session nobody knows is refused, with the last ones', async () => {
    await expect(ask({ against: 'Heat 9' })).rejects.toThrow(/Hollow Lane round 4/);
  });
});
