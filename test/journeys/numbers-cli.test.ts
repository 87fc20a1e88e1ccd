/** Measuring at the bench, told to the built program: read, told what to move, moved, read again. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DueAnswer, ReadingJudged } from '../../src/app/index.ts';
import { type Run, runCli } from './run-cli.ts';
import { startBuilt } from './served.ts';

let folder = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-numbers-'));
  const demo = (await kw(['book', 'export', '--demo'])).out;
  expect((await kw(['book', 'import'], demo)).code).toBe(0);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const kw = (words: readonly string[], input = ''): Promise<Run> => runCli(folder, words, { input });

/** Records, and gives what the reading was found to say. */
async function judged(words: readonly string[]): Promise<ReadingJudged | undefined> {
  const run = await kw(['log', ...words, '--json']);
  expect(run).toMatchObject({ code: 0, err: '' });
  return (JSON.parse(run.out) as { judgements?: ReadingJudged[] }).judgements?.[0];
}

const dueItems = async (): Promise<readonly string[]> =>
  (JSON.parse((await kw(['due', '--json'])).out) as DueAnswer).due.map(one => one.item);

describe('rear track', () => {
  const left = 'rear hub left/rear track';

  test('a left hub too far in is told to move out, is set, and then stands on its target', async () => {
    // Target of the demo kart: (1390 - 655 - 2 × 75 - 2 × 149.95) / 2 = 142.55 mm; 5 1/2 in is 139.7 mm.
    const read = [
      'checked',
      left,
      '--fail',
      '--why',
      'left gap too small',
      '--value',
      '5 1/2 in',
      '--instrument',
      'tape',
    ];
    const told = await kw(['log', ...read]);
    expect(told.code).toBe(0);
    expect(told.out).toContain('1/8 in under the target');
    expect(told.out).toContain('Move the left hub out 1/8 in.');
    expect(await judged(['set', left, '--value', '5 5/8 in', '--instrument', 'tape'])).toMatchObject({
      move: null,
      target: { way: 'on' },
    });
    expect(await dueItems()).toEqual(
      expect.arrayContaining([left, 'rear hub left/pinch bolts', 'axle/overall rear width']),
    );
    const again = await judged(['checked', left, '--pass', '--value', '5 5/8 in; 5 5/8 in', '--instrument', 'tape']);
    expect(again).toMatchObject({ readings: 2, move: null, instrument: 'tape' });
    expect(await dueItems()).not.toContain(left);
  });

  test('a width over the limit is no pass, and read by itself says how far both hubs go in', async () => {
    const width = ['checked', 'axle/overall rear width', '--value', '1402.8 mm', '--instrument', 'tape'];
    expect(await kw(['log', ...width, '--pass'])).toMatchObject({ code: 3, err: expect.stringContaining('1400 mm') });
    expect(await judged([...width, '--fail', '--why', 'too wide'])).toMatchObject({
      state: 'outside',
      verdict: 'outside: 2.8 mm over the largest allowed, 1400 mm',
      move: 'Move both hubs in, each 1.4 mm or more.',
    });
  });
});

describe('weight', () => {
  const mass = 'frame/total mass';

  test('too light, ballast added, weighed again: inside the limit with its chance', async () => {
    const light = ['checked', mass, '--value', '173.6 kg', '--instrument', 'four scales'];
    expect(await kw(['log', ...light, '--pass'])).toMatchObject({
      code: 3,
      err: expect.stringContaining('at least 175 kg'),
    });
    expect(await judged([...light, '--fail', '--why', '1.4 kg short'])).toMatchObject({
      verdict: 'outside: 1.4 kg under the least allowed, 175 kg',
    });
    expect((await kw(['log', 'set-up', 'ballast=2.5 kg', '--why', 'under the class minimum'])).code).toBe(0);
    expect(await dueItems()).toContain(mass); // failed, and not yet weighed again
    const again = await judged([
      'checked',
      mass,
      '--pass',
      '--value',
      '176.1 kg; 176.0 kg; 176.1 kg',
      '--instrument',
      'four scales',
    ]);
    expect(again).toMatchObject({ state: 'inside', readings: 3 });
    expect(again?.chance).toBeGreaterThan(0.99);
    expect(await dueItems()).not.toContain(mass);
  });

  test('a reading that only just keeps the limit says that it cannot prove it', async () => {
    const near = await judged(['checked', mass, '--pass', '--value', '175.0 kg', '--instrument', 'four scales']);
    expect(near).toMatchObject({ state: 'unproven', verdict: expect.stringContaining('cannot prove it at 95 %') });
  });
});

test('toe that was set and passed is due again once caster has been set', async () => {
  const toe = 'steering column/toe';
  const caster = 'kingpin left/caster and camber';
  expect(await judged(['set', toe, '--value', '2 mm', '--instrument', 'toe bar or projector'])).toMatchObject({
    target: { way: 'on' },
  });
  await judged(['checked', toe, '--pass', '--value', '2 mm', '--instrument', 'toe bar or projector']);
  expect(await dueItems()).not.toContain(toe);
  await judged(['set', caster, '--value', '12 °', '--instrument', 'angle gauge']);
  expect(await dueItems()).toContain(toe);
});

test('a number asked of a kart takes from its file and its rule set what the question leaves out, and says so', async () => {
  const weigh = ['calc', 'scales', '--input', '{"total":"181 kg"}', '--json'];
  const alone = JSON.parse((await kw(weigh)).out);
  expect(alone.figures).not.toHaveProperty('margin at the flag');
  const of = JSON.parse((await kw([...weigh, '--kart', '41'])).out);
  expect(of.fromKart).toMatchObject({ 'least mass': '175 kg', 'bolt diameter': '8 mm' });
  expect(of.figures['margin at the flag'].si).toBeCloseTo(181 - 0.004 * 745 - 175, 9); // 4 l of the kart file, 0.745 kg/l
});

test('over HTTP the same reading gets the same answer', async () => {
  const served = await startBuilt();
  try {
    const reading = { text: '5 1/2 in', instrument: 'tape' };
    const fact = { kind: 'checked', item: 'rear hub left/rear track', result: 'fail', why: 'too far in', reading };
    const done = await served.post('/api/karts/41/facts', { payloads: [fact], by: 'A. Bench' });
    expect(done.status).toBe(201);
    expect(done.body).toMatchObject({ judgements: [{ move: 'Move the left hub out 1/8 in.' }] });
  } finally {
    await served.stop();
  }
});

describe('a fault tree', () => {
  test('is read as XML from standard input, and a bad one is refused with its line', async () => {
    const gate = '<define-gate name="off"><and><event name="nut"/><event name="pin"/></and></define-gate>';
    const event = (name: string) => `<define-basic-event name="${name}"><float value="0.5"/></define-basic-event>`;
    const tree = `<opsa-mef><define-fault-tree name="hub">${gate}${event('nut')}${event('pin')}</define-fault-tree></opsa-mef>`;
    const run = await kw(['calc', 'fault-tree'], tree);
    expect(run).toMatchObject({ code: 0, err: '' });
    expect(JSON.parse(run.out)).toEqual({ cutSets: { count: 1, byOrder: [0, 1] }, singlePoints: [], top: 0.25 });
    const cut = await kw(['calc', 'fault-tree'], '<opsa-mef>\n<define-fault-tree>');
    expect(cut.code).not.toBe(0);
    expect(cut.err).toMatch(/line 2: Expected <\/define-fault-tree>/);
  });
});
