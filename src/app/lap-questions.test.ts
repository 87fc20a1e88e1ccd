/** Laps of the book compared, and what a change of the set-up did. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { smallBench } from '../../test/fixtures/small-bench.ts';
import { compareLaps, helpedOf, Refusal } from './index.ts';

type Bench = Awaited<ReturnType<typeof smallBench>>;
const log = readFileSync(new URL('../../test/fixtures/laps/K1_10hz.csv', import.meta.url));
const by = { by: 'A' };
const refusal = (asked: Promise<unknown>) =>
  asked.then(
    () => 'answered',
    (error: unknown) =>
      error instanceof Refusal ? error.problems.map(({ message, remedy }) => `${message} ${remedy}`).join(' ') : error,
  );

/** Laps by hand of one run after the other, each with its set-up. */
async function tested({ app, say }: Bench, runs: readonly (readonly [width: string, times: string])[]) {
  for (const [n, [width, times]] of runs.entries()) {
    await say({ kind: 'set-up', changes: { 'rear width': width } });
    const done = await app.lapsByHand('small', times, { ...by, session: `Run ${n + 1}`, track: 'Loop', minutes: 5 });
    if (done.kind !== 'recorded') throw new Error(JSON.stringify(done));
  }
}
const SLOW = '52.41 52.33 52.38 52.29 52.36';
const FAST = '52.12 52.07 52.15 52.04 52.11';

describe('two laps of the book', () => {
  test('are compared by distance from the log that was kept, and close at the difference of their times', async () => {
    const { app } = await smallBench();
    await app.importLaps('small', { chunks: [log] }, { ...by, name: 'heat.csv', track: 'Loop', session: 'Heat 1' });
    const answer = await compareLaps(app, 'small', { a: 'Heat 1#2', b: 'heat 1#5' });
    const [a, b] = answer.laps;
    expect(answer.difference).toBeCloseTo((b?.time ?? 0) - (a?.time ?? 0), 9);
    expect(answer.along.delta.at(-1)).toBe(answer.difference);
    expect(answer.pieces.length).toBeGreaterThan(8);
    expect(answer.driven[0]?.ideal).toBeLessThanOrEqual(answer.driven[0]?.best.time ?? 0);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    const best = await compareLaps(app, 'small', { a: 'Heat 1', b: 'Heat 1' });
    expect(best.difference).toBe(0);
  });
  test('of a session, a lap or a log that is not there are refused, and what there is is named', async () => {
    const bench = await smallBench();
    const { app } = bench;
    expect(await refusal(compareLaps(app, 'small', { a: 'Heat 1', b: 'Heat 1' }))).toContain('No laps are in the book');
    await tested(bench, [['1360 mm', SLOW]]);
    expect(await refusal(compareLaps(app, 'small', { a: 'Run 1', b: 'Run 1' }))).toContain(
      'a session whose log is kept',
    );
    expect(await refusal(compareLaps(app, 'small', { a: 'Run 1#9', b: 'Run 1' }))).toContain('It has laps 1 to 5');
    expect(await refusal(compareLaps(app, 'small', { a: 'Run 7', b: 'Run 1' }))).toContain('The last: ');
  });
});

describe('did a change help', () => {
  test('is answered from what was set between the runs of a day', async () => {
    const bench = await smallBench();
    await tested(bench, [
      ['1380 mm', SLOW],
      ['1360 mm', FAST],
      ['1360 mm', FAST],
      ['1380 mm', SLOW],
    ]);
    const answer = await helpedOf(bench.app, 'small');
    expect(answer).toMatchObject({
      track: 'Loop',
      runs: [{ on: [] }, { on: ['rear width 1360 mm'] }, { on: ['rear width 1360 mm'] }, { on: [], laps: 5 }],
      effects: [{ change: 'rear width 1360 mm', verdict: 'faster' }],
      say: [expect.stringMatching(/^rear width 1360 mm gained 0\.2\d ± 0\.\d\d s a lap\.$/)],
    });
    expect(await helpedOf(bench.app, 'small', { change: 'Rear W' })).toEqual(answer);
    expect(await refusal(helpedOf(bench.app, 'small', { change: 'jet' }))).toContain(
      'Changed so far: rear width 1360 mm',
    );
  });
  test('counts a dimension that was set between runs, by its name on the set-up sheet, and what the tape cannot tell apart as one', async () => {
    const bench = await smallBench();
    const runs = [
      ['1380 mm', SLOW],
      ['1360 mm', FAST],
      ['1360 mm', FAST],
      ['1380.5 mm', SLOW],
    ] as const;
    for (const [n, [text, times]] of runs.entries()) {
      await bench.say({ kind: 'set', item: 'hub/width', reading: { text, instrument: 'tape', resolution: '1 mm' } });
      await bench.app.lapsByHand('small', times, { ...by, session: `Run ${n + 1}`, track: 'Loop', minutes: 5 });
    }
    const answer = await helpedOf(bench.app, 'small', { change: 'width' });
    expect(answer.runs.map(({ on }) => on)).toEqual([[], ['width 1360 mm'], ['width 1360 mm'], []]);
    expect(answer.effects).toMatchObject([{ change: 'width 1360 mm', verdict: 'faster' }]);
  });
  test('takes a set-up written and a dimension set under one name for one setting, and leaves out what was struck', async () => {
    const bench = await smallBench();
    await bench.say({ kind: 'set-up', changes: { Width: '138 cm' } });
    await bench.app.lapsByHand('small', SLOW, { ...by, session: 'Run 1', track: 'Loop', minutes: 5 });
    await bench.say({ kind: 'set', item: 'hub/width', reading: '1360 mm' });
    await bench.app.lapsByHand('small', FAST, { ...by, session: 'Run 2', track: 'Loop', minutes: 5 });
    await bench.say({ kind: 'set', item: 'hub/width', reading: '1380 mm' });
    await bench.app.lapsByHand('small', SLOW, { ...by, session: 'Run 3', track: 'Loop', minutes: 5 });
    const asked = () => helpedOf(bench.app, 'small').then(({ runs }) => runs.map(({ on }) => on));
    expect(await asked()).toEqual([[], ['Width 1360 mm'], []]);
    const set = (await bench.app.facts('small')).find(({ fact }) => fact.kind === 'set');
    await bench.say({ kind: 'struck', fact: set?.fact.id ?? '', why: 'not done' });
    expect(await refusal(asked())).toContain('None changed so far');
  });
  test('of a change that came once cannot be told from the track, and says what to drive', async () => {
    const bench = await smallBench();
    await tested(bench, [
      ['1380 mm', SLOW],
      ['1360 mm', FAST],
    ]);
    const { effects, say } = await helpedOf(bench.app, 'small');
    expect(effects).toMatchObject([{ verdict: 'cannot tell', why: 'cannot separate the change from the track' }]);
    expect(say).toHaveLength(2);
  });
  test('without laps, or without a change between them, is refused with what to do', async () => {
    const bench = await smallBench();
    expect(await refusal(helpedOf(bench.app, 'small'))).toContain('Bring in laps first');
    await tested(bench, [
      ['1380 mm', SLOW],
      ['1380 mm', FAST],
    ]);
    expect(await refusal(helpedOf(bench.app, 'small'))).toContain('None changed so far');
  });
});
