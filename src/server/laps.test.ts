import { readFileSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { smallBench } from '../../test/fixtures/small-bench.ts';
import type { App } from '../app/index.ts';
import { createServer } from './server.ts';

const log = readFileSync(new URL('../../test/fixtures/laps/clean_05hz.csv', import.meta.url));
let app: App;
let server: ReturnType<typeof createServer>;
beforeEach(async () => {
  ({ app } = await smallBench());
  server = createServer(app);
});

const post = (query: string, body: BodyInit, type = 'text/csv') =>
  server.request(`http://localhost/api/karts/small/laps?${query}`, {
    method: 'POST',
    headers: { host: 'localhost', 'content-type': type },
    body,
  });

test('a log is sent as it is, and its session is read back', async () => {
  const sent = await post('by=A&name=heat-1.csv&track=Loop&session=Heat%201', log);
  expect(sent.status).toBe(201);
  const { session, log: report, gate } = await sent.json();
  expect(gate).toBe('proposed');
  expect(report).toMatchObject({ format: 'csv', bytes: log.length, kept: true, stopped: null });
  const read = await server.request('http://localhost/api/karts/small/laps');
  expect(await read.json()).toEqual({ sessions: [session] });
});

test('the same log again asks, 409, and nothing is written; what is no log is 422', async () => {
  await post('by=A', log);
  const facts = (await app.facts('small')).length;
  const again = await post('by=A', log);
  expect(again.status).toBe(409);
  expect(await again.json()).toMatchObject({ asksAgain: true, problems: [{ code: 'already in the book' }] });
  for (const [body, code] of [
    ['', 'log'],
    ['<!doctype html><title>Sign in</title>', 'log'],
    ['<!DOCTYPE gpx [<!ENTITY a "b">]><gpx/>', 'log'],
  ]) {
    const answer = await post('by=A', body ?? '');
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({ asksAgain: false, problems: [{ code }] });
  }
  expect((await post('by=A&gate=1,2', log)).status).toBe(422);
  expect((await post('sure=true', log)).status).toBe(422);
  expect(await app.facts('small')).toHaveLength(facts);
});

test('times of a stopwatch come as JSON', async () => {
  const sent = await post('', JSON.stringify({ times: '52.31 52.4', by: 'A', minutes: 3 }), 'application/json');
  expect(sent.status).toBe(201);
  expect(await sent.json()).toMatchObject({ session: { timed: 'by hand', laps: 2, minutes: 3 } });
  expect((await post('', JSON.stringify({ times: 7 }), 'application/json')).status).toBe(422);
});

test('more than 64 MB is refused before it is read, and other writes stay small', async () => {
  const large = { host: 'localhost', 'content-length': '64000001', 'content-type': 'text/csv' };
  const url = 'http://localhost/api/karts/small/laps?by=A';
  expect((await server.request(url, { method: 'POST', headers: large, body: 'x' })).status).toBe(413);
  const facts = await server.request('http://localhost/api/karts/small/facts', {
    method: 'POST',
    headers: { ...large, 'content-length': '1000001' },
    body: 'x',
  });
  expect(facts.status).toBe(413);
});

test('a lap is predicted on the track of a log that is in the book, and what cannot be is refused', async () => {
  const url = 'http://localhost/api/karts/small/laps/predict';
  const get = (query: string) => server.request(`${url}?${query}`, { headers: { host: 'localhost' } });
  expect((await get('')).status).toBe(422); // no log yet
  await post('by=A&session=Heat%201', log);
  const answer = await get('session=Heat%201&gearing=17/23');
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ lap: { time: expect.any(Number) }, sprockets: null });
  for (const wrong of ['session=none', 'gearing=seventeen']) expect((await get(wrong)).status).toBe(422);
});

test('two laps are compared, and a change that never was is 4xx with what to do', async () => {
  await post('by=A&name=heat-1.csv&track=Loop&session=Heat%201', log);
  const get = (path: string) => server.request(`http://localhost/api/karts/small/laps/${path}`);
  const compared = await get('compare?a=Heat%201%232&b=Heat%201%234');
  expect(compared.status).toBe(200);
  expect(await compared.json()).toMatchObject({ laps: [{ lap: 2 }, { lap: 4 }], difference: expect.any(Number) });
  expect((await get('compare?a=Heat%201')).status).toBe(422);
  expect((await get('helped?worth=0.1')).status).toBe(422);
  const helped = await get('helped');
  expect(helped.status).toBeGreaterThanOrEqual(400);
  expect(await helped.json()).toMatchObject({ problems: [{ message: expect.stringContaining('Expected a day') }] });
});
