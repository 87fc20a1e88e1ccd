import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test } from 'vitest';
import { type App, createApp, type WeakLinksAnswer, weakLinksOf } from '../app/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createServer } from './server.ts';

const read = (file: string): string => readFileSync(new URL(`../../data/${file}`, import.meta.url), 'utf8');
const riskTexts = async () => ({
  retentions: read('retentions.yaml'),
  priors: read('priors.yaml'),
  severity: read('severity.yaml'),
});
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
const post = (path: string, body: unknown) =>
  server.request(`http://localhost${path}`, {
    method: 'POST',
    headers: { host: 'localhost:4100', 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
const weak = async (query = ''): Promise<WeakLinksAnswer> =>
  (await (await get(`/api/karts/41/weak-links${query}`)).json()) as WeakLinksAnswer;

describe('weak links over HTTP', () => {
  test('are what the app answers, each link with its place on the kart', async () => {
    const found = await weak('?minutes=20&money=10');
    const asked = await weakLinksOf(app, '41', { minutes: 20, money: 10 }, await riskTexts());
    expect(found).toEqual(JSON.parse(JSON.stringify(asked)));
    const points = found.hazards.flatMap(({ singlePoints }) => singlePoints);
    expect(points.length).toBeGreaterThan(40);
    expect(points.filter(({ place, says }) => place === undefined || says === '')).toEqual([]);
    expect(found.seconds.chosen.minutes).toBeLessThanOrEqual(20);
    expect(found.seconds.chosen.money).toBeLessThanOrEqual(10);
  });

  test('have their code over the season beside the chance over one event', async () => {
    const [one] = (await weak('?season=1')).hazards;
    const [many] = (await weak('?season=12')).hazards;
    expect(one?.season?.chance).toBe((one?.top ?? one?.atLeast)?.chance);
    expect(many?.season).toMatchObject({
      events: 12,
      code: expect.stringMatching(/^1[A-E]$/),
      whole: one?.top !== null,
    });
    expect(many?.season?.chance).toBeGreaterThan(one?.season?.chance ?? 1);
  });

  test('a second retention that is wanted is in the plan after one request, and no longer among what could be added', async () => {
    const [first] = (await weak()).seconds.chosen.fittings;
    const wanted = { joint: first?.joint, retention: first?.retention, by: 'R. Vale' };
    const response = await post('/api/karts/41/second-retention', wanted);
    expect(response.status).toBe(201);
    const { steps } = await app.plan('41');
    expect(steps.filter(({ item, state }) => item === first?.item && state !== 'done')).not.toEqual([]);
    expect((await weak()).seconds.candidates.filter(({ joint }) => joint === first?.joint)).toEqual([]);
    expect((await app.fitness('41')).verdict).toBe('not fit');
  });

  test('nothing is written of a second retention that does not go there', async () => {
    const before = (await app.facts('41')).length;
    for (const body of [
      { joint: 'brake pedal/pivot bolt', retention: 'second clip', by: 'R. Vale' },
      { joint: 'nothing/there', retention: 'split pin', by: 'R. Vale' },
      { joint: 'brake pedal/pivot bolt', retention: 'split pin', by: '  ' },
      { joint: 'brake pedal/pivot bolt' },
    ])
      expect((await post('/api/karts/41/second-retention', body)).status).toBe(422);
    expect(await app.facts('41')).toHaveLength(before);
  });

  test.each(['?minutes=-1', '?minutes=soon', '?money=1e9', '?event=None', '?season=0', '?season=1.5'])(
    '%s is refused',
    async query => {
      expect((await get(`/api/karts/41/weak-links${query}`)).status).toBe(422);
    },
  );
});
