import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SMALL_KART, smallBench } from '../../test/fixtures/small-bench.ts';
import { predictLaps, Refusal } from './index.ts';

const log = (name: string) => ({
  chunks: [readFileSync(new URL(`../../test/fixtures/laps/${name}`, import.meta.url))],
});
/** The kart that the logs were made with: invented. */
const KART = SMALL_KART.replace(
  'dimensions: { wheelbase: 1045 mm }',
  `dimensions: { wheelbase: 1045 mm, mass with driver: 180 kg, drag area: 0.5 m², rolling resistance: 2.5 % }
engine:
  primary: 3.95
  gears: [2.54, 1.81, 1.5, 1.23, 1.045, 0.926]
  limiter: 14500 rpm
  torque: { 4000 rpm: 8 N·m, 5000 rpm: 9.5 N·m, 6000 rpm: 11 N·m, 7000 rpm: 13 N·m, 8000 rpm: 16 N·m, 9000 rpm: 19.5 N·m, 10000 rpm: 22.5 N·m, 11000 rpm: 24.3 N·m, 11500 rpm: 24.6 N·m, 12000 rpm: 24.3 N·m, 12500 rpm: 23.6 N·m, 13000 rpm: 22 N·m, 13500 rpm: 18.5 N·m, 14000 rpm: 14 N·m, 14500 rpm: 8 N·m }
  source: invented
box: { front sprockets: [17], rear sprockets: [21, 22, 23, 24, 25, 28] }`,
);

async function bench(kart = KART) {
  const { app, say } = await smallBench();
  const filed = await app.fileKart(kart, { by: 'A' });
  if (filed.kind === 'refused') throw new Error(JSON.stringify(filed.problems));
  return { app, say };
}
const refusal = async (asked: Promise<unknown>): Promise<string> => {
  const error = await asked.catch((thrown: unknown) => thrown);
  if (error instanceof Refusal) return error.message;
  throw new Error('a refusal was expected');
};

describe('a lap predicted from the book', () => {
  test('takes track and kart from the log, and comes within 2 % of what was driven', async () => {
    const { app, say } = await bench();
    await say({ kind: 'set-up', changes: { gearing: '17/23' } });
    await app.importLaps('small', log('K1_10hz.csv'), { by: 'A', name: 'heat-1.csv', session: 'Heat 1' });
    const answer = await predictLaps(app, 'small');
    expect(answer.track.length).toBeGreaterThan(985);
    expect(answer.track.length).toBeLessThan(1005);
    expect(Math.abs(answer.lap.time / answer.driven.time - 1)).toBeLessThan(0.02);
    const from = Object.fromEntries(answer.figures.map(one => [one.what, one.from]));
    expect(from).toMatchObject({ 'mass with driver': 'kart file', 'rolling radius': 'log', 'grip sideways': 'log' });
    expect(from).toMatchObject({ 'power over the torque table': 'log', 'drag area': 'kart file' });
    expect(from).toMatchObject({ 'time of a shift': 'starting guess', 'rear over front sprocket': 'book' });
    // What was lost by tenths is what was lost in all.
    const lost = answer.lost.reduce((sum, { seconds }) => sum + seconds, 0);
    expect(lost).toBeCloseTo(answer.driven.time - answer.lap.time, 6);
    const level = answer.sprockets?.pairs.filter(pair => pair.level).map(({ rear }) => rear);
    expect(level).toContain(23);
    expect(level).not.toContain(28);
    expect(answer.say.join(' ')).toContain('level');
    expect(JSON.parse(JSON.stringify(answer)).sensitivities).toHaveLength(8);
  });
  test('says the slowest of each corner, predicted and driven, and tries the sprockets that were typed', async () => {
    const { app } = await bench();
    await app.importLaps('small', log('K1_10hz.csv'), { by: 'A', name: 'heat-1.csv' });
    const { slowest, sprockets, lap } = await predictLaps(app, 'small', { box: '16, 17 / 22 23 22' });
    expect(slowest.length).toBeGreaterThan(4);
    expect(Math.min(...slowest.map(({ predicted }) => predicted))).toBeCloseTo(lap.vMin, 1);
    for (const { predicted, driven } of slowest) expect(Math.abs(predicted / driven - 1)).toBeLessThan(0.2);
    const pairs = sprockets?.pairs.map(({ front, rear }) => `${front}/${rear}`).toSorted();
    expect(pairs).toEqual(['16/22', '16/23', '17/22', '17/23']);
    for (const box of ['/', 'many', '17/22/23', '17/0', '22.5', '23,-1'])
      expect(await refusal(predictLaps(app, 'small', { box }))).toContain('Write those behind like 21, 22, 23');
  });
  test('of a kart of which nothing is written, names all that is guessed', async () => {
    const { app } = await bench(SMALL_KART);
    await app.importLaps('small', log('clean_10hz.csv'), { by: 'A', name: 'heat-1.csv' });
    const { figures, sprockets, say } = await predictLaps(app, 'small', { gearing: '17/23' });
    expect(figures.find(({ what }) => what === 'mass with driver')?.why).toContain('kart file');
    expect(figures.find(({ what }) => what === 'rolling radius')?.why).toBe('The log has no engine speed.');
    expect(sprockets).toBeNull();
    expect(say.join(' ')).toContain('Guessed: mass with driver');
  });
  test('is refused where no log is, no such session, and for sprockets that are none', async () => {
    const { app } = await bench();
    expect(await refusal(predictLaps(app, 'small'))).toContain('laps import');
    await app.lapsByHand('small', '41.2 41.0', { by: 'A' });
    expect(await refusal(predictLaps(app, 'small'))).toContain('laps import');
    await app.importLaps('small', log('K1_05hz.csv'), { by: 'A', name: 'heat-1.csv', session: 'Heat 1' });
    expect(await refusal(predictLaps(app, 'small', { session: 'Heat 9' }))).toContain('Heat 1');
    expect(await refusal(predictLaps(app, 'small', { gearing: '17' }))).toContain('17/23');
  });
});
