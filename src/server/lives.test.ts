import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { type App, createApp, type LifeAnswer, type LivesAnswer, type SparesAnswer, sparesOf } from '../app/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createServer } from './server.ts';

const read = (file: string): string => readFileSync(new URL(`../../data/${file}`, import.meta.url), 'utf8');
const riskTexts = async () => ({ retentions: read('retentions.yaml'), priors: read('priors.yaml') });
const reader = kartReader(libraryFiles());
let app: App;
let server: ReturnType<typeof createServer>;

beforeEach(async () => {
  let n = 0;
  const now = () => new Date('2026-05-01T10:00:00.000Z');
  app = createApp({
    store: memoryStore(),
    clock: { now },
    ids: { next: () => `id-${++n}`, salt: () => '0'.repeat(32) },
    reader,
    device: 'test',
  });
  await app.fileKart(demoText().kart, { by: 'R. Vale', at: '2026-04-01T10:00:00.000Z' });
  server = createServer(app, { riskTexts });
});

const get = (path: string) => server.request(`http://localhost${path}`, { headers: { host: 'localhost:4100' } });
const json = async <T>(path: string): Promise<T> => (await (await get(path)).json()) as T;
const lives = (query = '') => json<LivesAnswer>(`/api/karts/41/life${query}`);
const life = (part: string, query = '') =>
  json<LifeAnswer>(`/api/karts/41/life?part=${encodeURIComponent(part)}${query}`);
const spares = (query: string) => json<SparesAnswer>(`/api/karts/41/spares${query}`);
const say = async (...payloads: readonly object[]) => {
  const done = await app.record('41', payloads, { by: 'R. Vale' });
  if (done.kind === 'refused') throw new Error(done.problems.map(({ message }) => message).join(' '));
  return done.facts;
};
const ran = (hours: number) => Array.from({ length: hours }, () => ({ kind: 'ran', minutes: 60 }));

describe('lives over HTTP', () => {
  test('are every part once, the most likely to fail first, and no number without hours to come', async () => {
    expect((await lives()).parts.filter(({ chance }) => chance !== null)).toEqual([]);
    await say(...ran(5));
    const { parts, hours } = await lives('?hours=1.5');
    expect(hours).toBe(1.5);
    expect(new Set(parts.map(({ part }) => part)).size).toBe(parts.length);
    const means = parts.flatMap(({ chance }) => (chance ? [chance.mean] : []));
    expect(means.length).toBeGreaterThan(20);
    expect(means).toEqual(means.toSorted((a, b) => b - a));
    const loom = parts.find(({ part }) => part === 'loom');
    expect(loom).toMatchObject({ chance: null, words: null, unknown: expect.stringMatching(/Nobody guessed/) });
    expect(parts.find(({ part }) => part === 'chain')).toMatchObject({ age: 5, fate: 'running', mostlyGuess: true });
  });

  test('of one part have its record, guess, ages, replacement and cost', async () => {
    await say(...ran(5));
    const { life: chain } = await life('chain', '&hours=1.5');
    expect(chain.words?.long).toMatch(/^Of \d+0 weekends like this one with a part this old, about/);
    expect(chain.basis).toMatch(/^Mostly our starting guess: 1 on record/);
    expect(chain.tenth?.mean).toBeLessThan(chain.median?.mean ?? 0);
    expect(chain.replacement?.say[0]).toMatch(/^Replace it before it runs again, at 5 h.*limit of 6 h/);
    expect(chain.cost?.perHour.mean).toBeGreaterThan(chain.cost?.perHour.low ?? Number.NaN);
    expect(chain.cost?.counts).toContain('420 more where its failure ends a weekend');
    const { life: loom } = await life('loom', '&hours=1.5');
    expect(loom).toMatchObject({
      chance: null,
      median: null,
      tenth: null,
      shape: null,
      replacement: null,
      cost: null,
    });
    expect(loom.lacking.join()).toContain('kartwright life guess "loom" --half HOURS --tenth HOURS');
  });

  test('are moved by a guess that is written down, and back when it is struck', async () => {
    await say(...ran(5));
    const chance = async () => (await life('chain', '&hours=1.5')).life.chance?.mean ?? Number.NaN;
    const before = await chance();
    const [guess] = await say({ kind: 'life expected', of: 'chain', halfHours: 60, tenthHours: 40 });
    expect(await chance()).toBeLessThan(before / 2);
    expect((await life('chain', '&hours=1.5')).life.guess).toMatch(/half gone by 60 h.*R\. Vale/);
    await say({ kind: 'struck', fact: guess?.id, why: 'a slip' });
    expect(await chance()).toBe(before);
  });

  test('of a part that was found cracked come first and give no chance', async () => {
    await say(...ran(5), { kind: 'found', part: 'axle', defect: 'crack at the keyway', grade: 'safety' });
    const [first] = (await lives('?hours=1.5')).parts;
    expect(first).toMatchObject({
      part: 'axle',
      fate: 'failed',
      chance: null,
      unknown: expect.stringMatching(/replace it/),
    });
  });

  test.each(['?part=chian', '?hours=0', '?hours=soon', '?event=None', '?part=chain&cap=2'])(
    '%s is refused',
    async query => {
      expect((await get(`/api/karts/41/life${query}`)).status).toBe(422);
    },
  );
});

describe('the spares box over HTTP', () => {
  test('is what the app answers, inside its budget, and better than without', async () => {
    await say(...ran(6));
    const found = await spares('?hours=4&money=150&kilograms=6');
    const asked = await sparesOf(app, '41', { hours: 4, money: 150, kilograms: 6 }, (await riskTexts()).priors);
    expect(found).toEqual(JSON.parse(JSON.stringify(asked)));
    const { box } = found;
    expect(box?.money).toBeLessThanOrEqual(150);
    expect(box?.kilograms).toBeLessThanOrEqual(6);
    expect(box?.money).toBe(box?.buy.reduce((sum, one) => sum + one.count * one.price, 0));
    expect(box?.finish.chosen.chance).toBeGreaterThan(box?.finish.none.chance ?? 1);
    expect(box?.frontier.map(({ finish }) => finish.chance)).toEqual(
      box?.frontier.map(({ finish }) => finish.chance).toSorted((a, b) => a - b),
    );
    expect(box?.unknown.map(({ part }) => part)).toContain('loom');
    expect(box?.piles.map(({ name }) => name)).not.toContain('loom');
  });

  test('for no money is the box as it is; what goes on the kart comes out of it', async () => {
    await say(...ran(4), { kind: 'spares counted', of: 'spark plug', count: 2 });
    const pile = async () => {
      const { box } = await spares('?hours=4&money=0');
      expect(box?.buy).toEqual([]);
      expect(box?.finish.chosen).toEqual(box?.finish.box);
      return box?.piles.find(({ name }) => name === 'spark plug');
    };
    expect(await pile()).toMatchObject({ have: 2, carry: 2, counted: true });
    await say({ kind: 'taken off', part: 'spark plug' }, { kind: 'fitted', part: 'spark plug', fresh: true });
    expect(await pile()).toMatchObject({ have: 1, carry: 1 });
  });

  test('parts that are not alike have spares of their own, and each is counted by itself', async () => {
    const refused = await app.record('41', [{ kind: 'spares counted', of: 'stub axle', count: 1 }], { by: 'R. Vale' });
    expect(refused).toMatchObject({ kind: 'refused', problems: [{ remedy: /stub axle left, stub axle right/ }] });
    await say({ kind: 'spares counted', of: 'stub axle left', count: 1 });
    const { box } = await spares('?hours=4&money=0');
    const have = (name: string) => box?.piles.find(pile => pile.name === name)?.have;
    expect([have('stub axle left'), have('stub axle right'), have('stub axle')]).toEqual([1, 0, undefined]);
  });

  test('what takes longer to change than there is between two sessions is no help, and is named', async () => {
    const { box } = await spares('?hours=4&money=9000&minutes=30');
    const piston = box?.piles.find(({ name }) => name === 'piston');
    expect(piston).toMatchObject({ carry: 0, buy: 0, why: expect.stringMatching(/120 min, longer than/) });
    expect(box?.piles.find(({ name }) => name === 'chain')?.why).toBeNull();
  });

  test('what work that is due puts on new is asked for before any spare, and reckoned as new', async () => {
    await say(...ran(7));
    const { due, box } = await spares('?hours=1');
    expect(due).toContainEqual(expect.objectContaining({ part: 'chain', pile: 'chain', inBox: 0, price: 68 }));
    const chain = box?.piles.find(({ name }) => name === 'chain');
    const old = (await lives('?hours=1')).parts.find(({ part }) => part === 'chain');
    expect(chain?.fails.chance).toBeLessThan(old?.chance?.mean ?? 0);
  });

  test('without an event and hours says so, and gives no number', async () => {
    expect(await spares('')).toMatchObject({ box: null, unknown: expect.stringMatching(/no event ahead/) });
  });

  test.each(['?money=-1', '?kilograms=much', '?hours=0', '?event=None'])('%s is refused', async query => {
    expect((await get(`/api/karts/41/spares${query}`)).status).toBe(422);
  });
});
