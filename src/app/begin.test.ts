import { beforeEach, describe, expect, test } from 'vitest';
import { kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { type App, type Beginning, beginKart, createApp, wornByHours } from './index.ts';

const library = libraryFiles();
const reader = kartReader(library);
const now = new Date('2026-11-26T18:00:00Z');
const SIX: Beginning = {
  template: 'six-speed gearbox',
  name: '7',
  event: { event: 'Club round', from: '2026-12-05T08:00:00Z', minutes: 90 },
};
let app: App;
beforeEach(() => {
  let n = 0;
  const ids = { next: () => `id-${n++}`, salt: () => '0'.repeat(32) };
  app = createApp({ store: memoryStore(), clock: { now: () => now }, ids, reader, device: 'test' });
});
const begin = (said: Partial<Beginning>, sure = false) =>
  beginKart(app, library, { ...SIX, ...said }, { by: 'A. Sample', now, sure });
const problems = async (said: Partial<Beginning>) => {
  const done = await begin(said);
  return done.kind === 'refused' ? done.problems.map(({ code, where }) => `${where}: ${code}`) : [];
};
const dueOf = async (kart: string) => (await app.due(kart)).due.map(({ item }) => item);

describe('a kart begun with its first answers', () => {
  test('stands in the book in one batch, with a plan for the event', async () => {
    expect((await begin({})).kind).toBe('recorded');
    expect((await app.facts('7')).map(({ fact }) => fact.kind)).toEqual(['kart filed', 'event']);
    expect((await app.due('7')).event).toBe('Club round');
    expect((await app.plan('7')).steps.length).toBeGreaterThan(100);
    expect((await app.fitness('7')).verdict).toBe('not known');
  });

  test('has everything due that lapses by hours while nobody knows the hours', async () => {
    await begin({});
    expect(await dueOf('7')).toEqual(expect.arrayContaining(['piston/renew', 'chain/renew', 'silencer/packing']));
  });

  test('counts the hours of what was new at the rebuild, of nothing else, and striking them makes it due again', async () => {
    const { kart } = await read('six-speed gearbox');
    expect(wornByHours(kart).map(({ part }) => part)).toEqual(
      expect.arrayContaining(['piston', 'chain', 'crankshaft']),
    );
    await begin({ rebuilt: { hours: 2, parts: ['piston'] } });
    const due = await dueOf('7');
    expect(due).not.toContain('piston/renew');
    expect(due).toContain('chain/renew');
    const fitted = (await app.facts('7')).find(({ fact }) => fact.kind === 'fitted')?.fact;
    expect(fitted).toMatchObject({ part: 'piston', carriedMinutes: 120 });
    await app.record('7', [{ kind: 'struck', fact: fitted?.id, why: 'not so' }], { by: 'A. Sample' });
    expect(await dueOf('7')).toContain('piston/renew');
  });

  test('has a part due whose hours are gone, or would be during the event', async () => {
    await begin({ rebuilt: { hours: 4, parts: ['piston'] } }); // limit 5 h, 1.5 h to come
    expect((await app.due('7')).due.find(({ item }) => item === 'piston/renew')).toMatchObject({ ahead: true });
    await begin({ name: '8', rebuilt: { hours: 6, parts: ['piston'] } });
    expect((await app.due('8')).due.find(({ item }) => item === 'piston/renew')).toMatchObject({ ahead: false });
  });

  test('keeps hours whose parts nobody named as a note, and everything stays due', async () => {
    await begin({ rebuilt: { hours: 2, parts: [] } });
    expect((await app.facts('7')).map(({ fact }) => fact.kind)).toEqual(['kart filed', 'event', 'note']);
    expect(await dueOf('7')).toContain('piston/renew');
  });

  test.each(['six-speed gearbox', 'single-speed direct-drive', 'four-stroke junior'])(
    'begins with every part of %s that wears by hours',
    async template => {
      const { kart } = await read(template);
      const parts = wornByHours(kart).map(({ part }) => part);
      expect(parts.length).toBeGreaterThan(0);
      expect(await begin({ template, rebuilt: { hours: 0, parts } })).toMatchObject({ kind: 'recorded' });
    },
  );
});

describe('an answer that cannot be', () => {
  test('is refused with all the others, and nothing is written', async () => {
    const wrong = {
      template: 'six-sped',
      name: ' ',
      event: { event: '', from: '2020-01-01T08:00:00Z', minutes: 0 },
      rebuilt: { hours: -1, parts: [] },
    };
    expect(await problems(wrong)).toEqual([
      'template: kart file',
      'name: wrong shape',
      'event: wrong shape',
      'from: not a time',
      'minutes: wrong shape',
      'hours: wrong shape',
    ]);
    expect(await app.karts()).toEqual([]);
  });

  test('is a name that is there, one that is no line, or no number at all', async () => {
    await begin({});
    expect(await problems({ name: ' 7 ' })).toEqual(['name: wrong shape']);
    expect(await problems({ name: 'x'.repeat(91) })).toEqual(['name: wrong shape']);
    expect(await problems({ name: '8', rebuilt: { hours: Number.NaN, parts: [] } })).toEqual(['hours: wrong shape']);
    expect(await problems({ name: '8', event: { event: 'x', from: 'soon', minutes: 9 } })).toEqual([
      'from: not a time',
    ]);
  });

  test('is asked again where it is far outside, and taken when it is said once more', async () => {
    const far = { rebuilt: { hours: 99_999, parts: ['piston'] } };
    expect(await problems(far)).toEqual(['hours: far outside']);
    expect((await begin(far, true)).kind).toBe('recorded');
    const long = { name: '8', event: { event: 'x', from: '2026-12-05T08:00:00Z', minutes: 5000 } };
    expect(await problems(long)).toEqual(['minutes: far outside']);
  });

  test('is a name no kart file would hold as it is: it comes out as it was said', async () => {
    for (const name of ['true', '41 # x', '"', 'a: b', '#', '- x', '☃'])
      expect(await begin({ name })).toMatchObject({ kind: 'recorded' });
    expect((await app.karts()).map(kart => kart.name).toSorted()).toEqual(
      ['true', '41 # x', '"', 'a: b', '#', '- x', '☃'].toSorted(),
    );
  });
});

describe('a part that was new before the book began', () => {
  test('is said only before the kart has run or been worked on', async () => {
    await begin({});
    const fitted = { kind: 'fitted', part: 'piston', fresh: true, carriedMinutes: 60 };
    expect(await app.record('7', [fitted], { by: 'A' })).toMatchObject({ kind: 'recorded' });
    await app.record('7', [{ kind: 'ran', minutes: 10 }], { by: 'A' });
    expect(await app.record('7', [{ ...fitted, part: 'chain' }], { by: 'A' })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'already on' }],
    });
  });
});

async function read(template: string) {
  const found = await reader.read(`kart: 1\nname: x\ntemplate: ${template}\n`);
  if (!found.ok) throw new Error('the template must read');
  return found;
}
