import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { type AlikeAnswer, type App, createApp, type Problem } from '../app/index.ts';
import type { Fact } from '../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createServer } from './server.ts';

const read = (file: string): string => readFileSync(new URL(`../../data/${file}`, import.meta.url), 'utf8');
const riskTexts = async () => ({ retentions: read('retentions.yaml'), priors: read('priors.yaml') });
const reader = kartReader(libraryFiles());
const PINS = 'brake push rod/clevis pins';
const AT = '2026-04-01T10:00:00.000Z';
let app: App;
let server: ReturnType<typeof createServer>;

/** Two karts of one owner, the second with less running. */
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
  const file = demoText().kart;
  await app.fileKart(file, { by: 'R. Vale', at: AT });
  await app.fileKart(file.replace(/^name: .*$/m, 'name: "42"'), { by: 'R. Vale', at: AT });
  await app.record('41', [{ kind: 'ran', minutes: 120 }], { by: 'R. Vale', at: '2026-04-02T10:00:00.000Z' });
  await app.record(
    '42',
    [
      { kind: 'ran', minutes: 30 },
      { kind: 'made', joint: PINS },
    ],
    {
      by: 'S. Other',
      at: '2026-04-03T10:00:00.000Z',
    },
  );
  server = createServer(app, { riskTexts });
});

const headers = { host: 'localhost:4100', 'content-type': 'application/json' };
const get = (path: string) => server.request(`http://localhost${path}`, { headers });
const post = (path: string, body: unknown) =>
  server.request(`http://localhost${path}`, { method: 'POST', headers, body: JSON.stringify(body) });
const failed = async (more: object): Promise<Fact> => {
  const body = { payloads: [{ kind: 'failed', how: 'pin gone', ...more }], by: 'R. Vale' };
  const { facts } = (await (await post('/api/karts/41/facts', body)).json()) as { facts: [Fact] };
  return facts[0];
};
const alike = async (query: string): Promise<AlikeAnswer> =>
  (await (await get(`/api/karts/41/alike?${query}`)).json()) as AlikeAnswer;
const due = async (kart: string) =>
  (await app.due(kart)).due.filter(({ cause }) => cause === 'asked').map(({ item }) => item);

describe('what else of this kind', () => {
  test('is named on every kart of the owner with its age and its last look, twins first', async () => {
    const fact = await failed({ part: 'brake push rod', joint: PINS, lost: ['stop'], stopped: true });
    const found = await alike(`fact=${fact.id}`);
    expect(found).toMatchObject({
      of: { kart: '41', joint: PINS },
      retention: 'spring clip',
      why: 'pin gone on 2026-05-01',
    });
    expect(found.parts).toMatchObject([
      {
        kart: '42',
        part: 'brake push rod',
        hours: 0.5,
        lastLook: null,
        items: expect.arrayContaining([expect.any(String)]),
      },
    ]);
    const [first] = found.joints;
    expect(first).toMatchObject({ kart: '42', joint: PINS, twin: true, lastLook: { by: 'S. Other' }, items: [PINS] });
    expect(found.joints.length).toBeGreaterThan(3);
    expect(found.joints.filter(one => one.kart === '41' && one.joint === PINS)).toEqual([]);
    const places = found.joints.map(({ twin }) => twin);
    expect(places).toEqual(places.toSorted((a, b) => Number(b) - Number(a)));
  });

  test('of a part that broke is every other part of its kind, and no joint', async () => {
    const found = await alike('of=tie rod left');
    expect(found.parts.map(({ kart, part }) => `${kart} ${part}`).sort()).toEqual([
      '41 tie rod right',
      '42 tie rod left',
      '42 tie rod right',
    ]);
    expect(found).toMatchObject({ joints: [], retention: null, why: null, fact: null });
  });

  test('is due for a look after one request, on each kart, and the karts are not fit until it is taken', async () => {
    const fact = await failed({ part: 'brake push rod', joint: PINS });
    const response = await post('/api/karts/41/alike', { fact: fact.id, by: 'R. Vale' });
    expect(response.status).toBe(201);
    expect(await due('42')).toContain(PINS);
    expect(await due('41')).not.toContain(PINS); // open, which is more
    const [why] = (await app.due('42')).due.filter(({ item }) => item === PINS);
    expect(why?.why).toBe('Asked for on 2026-05-01: brake push rod/clevis pins of kart 41: pin gone on 2026-05-01.');
    const few = (await due('42')).length;
    await post('/api/karts/41/alike', { fact: fact.id, all: true, by: 'R. Vale' });
    expect((await due('42')).length).toBeGreaterThan(few);
    await app.record('42', [{ kind: 'made', joint: PINS }], { by: 'S. Other' });
    expect(await due('42')).not.toContain(PINS);
  });

  test('says nothing of the lives of what is to be looked at', async () => {
    const fact = await failed({ part: 'tie rod left' });
    await post('/api/karts/41/alike', { fact: fact.id, by: 'R. Vale' });
    const { livesOf } = await import('../life/index.ts');
    const books = await Promise.all(
      ['41', '42'].map(async kart => ({
        kart: await app.kart(kart),
        facts: (await app.facts(kart)).map(line => line.fact),
      })),
    );
    const kind = (await app.kart('41')).parts['tie rod left']?.kind ?? '';
    expect(
      livesOf(books, kind)
        .map(({ kart, part, fate }) => `${kart} ${part} ${fate}`)
        .sort(),
    ).toEqual([
      '41 tie rod left failed',
      '41 tie rod right running',
      '42 tie rod left running',
      '42 tie rod right running',
    ]);
  });

  test.each([
    ['fact=nothing', 'unknown fact', /that says what failed/],
    ['of=tie rod lift', 'unknown part', /Did you mean "tie rod left"/],
    ['', 'unknown part', /got nothing/],
  ])('asked with "%s" is refused with the way out', async (query, code, said) => {
    const { problems } = (await (await get(`/api/karts/41/alike?${query}`)).json()) as { problems: [Problem] };
    expect(problems[0].code).toBe(code);
    expect(`${problems[0].message} ${problems[0].remedy}`).toMatch(said);
    const before = (await app.facts('42')).length;
    expect((await post('/api/karts/41/alike', { of: 'nothing', by: 'R. Vale' })).status).toBeGreaterThanOrEqual(400);
    expect((await post('/api/karts/41/alike', { of: 'tie rod left', by: ' ' })).status).toBe(422);
    expect(await app.facts('42')).toHaveLength(before);
  });
});
