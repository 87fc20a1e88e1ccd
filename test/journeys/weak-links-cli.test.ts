/** From "what is weak" to a strapped clevis in the plan, and to a lower number once it is done and looked at twice, never below its floor. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Problem, WeakLinksAnswer } from '../../src/app/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import type { Fitness, Hazard } from '../../src/risk/index.ts';
import { type Run, runCli } from './run-cli.ts';

const PINS = 'rod/clevis pins';
const STRAP = 'strap round the clevis';
const KART = `kart: 1
name: "9"
# My own brake: one rod, no second link.
parts:
  pedal: { kind: brake pedal, system: brakes } # as bought
  rod: { kind: brake push rod, system: brakes, corner: front left, place: { x: 1050 mm, y: 170 mm }, joints: { clevis pins: { second: none } } }
functions:
  stop: { severity: 1, hazard: no brakes, needs: { all of: [pedal, rod] } }
lives:
  brake pedal: { one in ten gone by: 200 h, half gone by: 500 h }
  brake push rod: { one in ten gone by: 200 h, half gone by: 500 h }
`;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-weak-'));
  writeFileSync(join(folder, 'nine.yaml'), KART);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const kw = (words: readonly string[], input = ''): Promise<Run> => runCli(folder, words, { input });
const json = async <T>(...words: readonly string[]): Promise<T> => JSON.parse((await kw([...words, '--json'])).out);
async function log(by: string, ...payloads: readonly object[]): Promise<void> {
  const input = payloads.map(one => JSON.stringify(one)).join('\n');
  expect(await kw(['log', '--kart', '9', '--by', by], input)).toMatchObject({ code: 0, err: '' });
}
async function stop(...words: readonly string[]): Promise<Hazard & Pick<WeakLinksAnswer, 'seconds'>> {
  const { hazards, seconds } = await json<WeakLinksAnswer>('weak-links', '--kart', '9', ...words);
  return { ...(hazards[0] as Hazard), seconds };
}
const chance = ({ top }: Hazard): number => top?.chance ?? Number.NaN;
const looks = [PINS, 'rod/lock nut', 'pedal/pivot bolt'];

describe('from what is weak to a strapped clevis', () => {
  test('the kart is in the book, made by one and looked at by another', async () => {
    expect(
      (await kw(['log', 'event', 'Round 1', '--kart', 'nine.yaml', '--from', '2027-05-01', '--minutes', '90'])).err,
    ).toBe('');
    await log('A. Bench', ...looks.map(joint => ({ kind: 'made', joint })));
    await log('B. Other', ...looks.map(item => ({ kind: 'checked', item, result: 'pass', secondLook: true })));
  });

  test('one clip stands between the driver and no brakes, and a strap pays most', async () => {
    const before = await stop('--minutes', '10');
    const [first] = before.singlePoints.filter(({ joint }) => joint === PINS);
    expect(first?.sentence).toContain('spring clip stands between you and no brakes: rod, 2 × clevis pins');
    expect(first).toMatchObject({ corner: 'front left', place: { x: 1.05, y: 0.17 } });
    expect(before.seconds.chosen.fittings.map(({ joint, retention }) => [joint, retention])).toContainEqual([
      PINS,
      STRAP,
    ]);
    expect(before.top?.words).toMatch(/ in 1,000, between /);
    const { out } = await kw(['weak-links', '--kart', '9', '--minutes', '10']);
    expect(out).toContain('spring clip stands between you and no brakes');
    expect(out).toContain(`${PINS}: ${STRAP}, 6 min`);
    expect(out).toMatch(/Over a season of 1 event alike: .*\s+Code 1[A-E], /);
    expect(out).toContain('By minutes: joints that alone are enough');
    expect((await json<WeakLinksAnswer>('weak-links', '--kart', '9', '--season', '8')).hazards[0]?.season?.events).toBe(
      8,
    );
  });

  test('a strap that is wanted is due, stands in the plan, and keeps the kart from being fit', async () => {
    expect(await kw(['weak-links', 'fit', PINS, '--with', STRAP, '--kart', '9'])).toMatchObject({ code: 0, err: '' });
    const { steps } = await json<Plan>('plan', '--kart', '9');
    const step = steps.find(({ joint, state }) => joint === PINS && state !== 'done');
    expect(step).toMatchObject({
      state: 'ready',
      action: 'secure',
      writes: 'made',
    });
    expect(step?.accept).toContain(`${STRAP} in place`);
    expect(step?.why).toContain(`${STRAP} wanted as second retention, not fitted yet`);
    expect((await json<Fitness>('fit', '--kart', '9')).verdict).toBe('not fit');
    // The rest of the file is as its owner wrote it.
    const filed = (await kw(['book', 'export'])).out
      .split('\n')
      .flatMap(line => (line.includes('kart filed') ? [JSON.parse(line).text as string] : []));
    expect(filed.at(-1)).toContain('# My own brake: one rod, no second link.');
    expect(filed.at(-1)).toContain('brakes } # as bought');
    expect(filed.at(-1)).toContain(`second: ${STRAP}`);
  });

  test('done it is a lower number, looked at twice a lower one again, and never below what takes both at once', async () => {
    const single = chance(await stop('--at', await beforeWanted()));
    await log('A. Bench', { kind: 'made', joint: PINS });
    const once = await stop();
    await log('B. Other', { kind: 'checked', item: PINS, result: 'pass', secondLook: true });
    const twice = await stop();
    expect(chance(once)).toBeLessThan(single);
    expect(chance(twice)).toBeLessThan(chance(once));
    const floor = twice.links.find(({ sort, joint }) => sort === 'one hand' && joint === PINS);
    expect(floor?.says).toContain('looked at twice, by two people');
    expect(chance(twice)).toBeGreaterThan(floor?.likely?.chance ?? 1);
    expect(twice.singlePoints.filter(({ joint, sort }) => joint === PINS && sort === 'joint')).toEqual([]);
  });
});

describe('when it fails all the same', () => {
  test('the failure opens the joint, the kart is not fit, and what else of its kind there is follows at once', async () => {
    const before = await stop();
    await log('A. Bench', { kind: 'ran', minutes: 12, event: 'Round 1' });
    const words = ['--joint', PINS, '--how', 'pin and strap gone', '--lost', 'stop', '--lap', '7', '--stopped'];
    const said = await kw(['log', 'failed', 'rod', ...words, '--kart', '9']);
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(said.out).toContain('WHAT ELSE OF THIS KIND: ROD/CLEVIS PINS');
    expect(said.out).toContain('Nothing else of this kind');
    const fit = await json<Fitness>('fit', '--kart', '9');
    expect(fit.against.map(({ what, on }) => [what, on])).toContainEqual(['joint open', PINS]);
    const { steps } = await json<Plan>('plan', '--kart', '9');
    expect(steps.some(({ joint, state }) => joint === PINS && state !== 'done')).toBe(true);
    const now = await stop();
    expect(now.unknown.find(({ joint }) => joint === PINS)?.unknown).toMatch(/^open since/);
    await log('A. Bench', { kind: 'made', joint: PINS });
    await log('B. Other', { kind: 'checked', item: PINS, result: 'pass', secondLook: true });
    const made = await stop();
    const clip = (of: Hazard) => of.links.find(({ id }) => id === `${PINS}, first`)?.likely;
    expect(clip(made)?.chance).toBeGreaterThan(clip(before)?.chance ?? 1);
    expect(clip(made)?.basis).toMatch(
      /^Mostly our starting guess: spring clip on every kart: 1 event looked at after, and it had let go once/,
    );
  });

  test('a part that broke ends its life, and is against running until another one is on', async () => {
    expect(
      await kw(['log', 'failed', 'pedal', '--how', 'arm cracked through', '--after', '12 min', '--kart', '9']),
    ).toMatchObject({ code: 0 });
    const unknown = (await stop()).unknown.find(({ id }) => id === 'pedal');
    expect(unknown?.unknown).toMatch(/failed already/);
    expect((await json<Fitness>('fit', '--kart', '9')).against.map(({ text }) => text)).toContain(
      'pedal: arm cracked through',
    );
    const wanted = await json<Problem[]>('alike', 'pedal', '--kart', '9', '--look');
    expect(wanted).toMatchObject({ problems: [{ code: 'nothing to record' }] });
    expect((await kw(['log', 'failed', '--kart', '9'])).err).toMatch(/part.*Expected/);
  });

  test('its kind names no replacing, so the plan has one: off, another one on, made and looked at; then it stands no longer', async () => {
    const before = await json<Plan>('plan', '--kart', '9');
    const keys = before.steps.filter(({ state }) => state !== 'done').map(({ key }) => key);
    const wanted = ['take-off pedal', 'refit pedal', 'torque pedal/pivot bolt', 'second-look pedal/pivot bolt'];
    expect(keys.filter(key => wanted.includes(key))).toEqual(wanted);
    expect(before.steps.find(({ key }) => key === 'refit pedal')).toMatchObject({ fresh: true, writes: 'fitted' });
    const { out } = await kw(['plan', '--kart', '9']);
    expect(out).toContain('Fit the new pedal');
    expect(out).toMatch(/Failed while it ran on .*: arm cracked\s+through/);
    await log('A. Bench', { kind: 'taken off', part: 'pedal' });
    await log('A. Bench', { kind: 'fitted', part: 'pedal', fresh: true, carriedMinutes: 90 });
    expect((await json<Fitness>('fit', '--kart', '9')).against.map(({ text }) => text)).not.toContain(
      'pedal: arm cracked through',
    );
    const done = (await json<Plan>('plan', '--kart', '9')).steps.filter(({ state }) => state === 'done');
    expect(done.map(({ key }) => key)).toContain('refit pedal');
    const likely = (await stop()).links.find(({ id }) => id === 'pedal')?.likely;
    expect(likely?.chance).toBeGreaterThan(0);
  });
});

/** A moment after everything was looked at and before the strap was wanted. */
async function beforeWanted(): Promise<string> {
  const { facts } = await json<{ facts: readonly { fact: { kind: string; recorded: string } }[] }>(
    'facts',
    '--kart',
    '9',
  );
  const wanted = facts.find(({ fact }) => fact.kind === 'look asked')?.fact.recorded ?? '';
  return new Date(Date.parse(wanted) - 1).toISOString();
}

describe('what is asked wrongly is refused with the way out', () => {
  test.each([
    [['weak-links', '--kart', '9', '--minutes', '-5'], 'wrong shape', /minutes of 0 or more/],
    [['weak-links', '--kart', '9', '--money', 'much'], 'wrong shape', /money of 0 or more/],
    [['weak-links', '--kart', '9', '--event', 'Round 9'], 'unknown event', /Round 1/],
    [['weak-links', 'fit', 'rod/clevis pin', '--kart', '9', '--with', STRAP], 'unknown joint', /rod\/clevis pins/],
    [
      ['weak-links', 'fit', PINS, '--kart', '9', '--with', 'glue'],
      'wrong shape',
      /There are: second clip, strap round the clevis/,
    ],
    [['weak-links', 'fit', PINS, '--kart', '9'], 'wrong shape', /--with/],
  ] as const)('%j', async (words, code, said) => {
    const run = await kw([...words, '--json']);
    expect(run.code).toBe(3);
    const { problems } = JSON.parse(run.out) as { problems: readonly Problem[] };
    expect(problems.map(one => one.code)).toEqual([code]);
    expect(problems.map(one => `${one.message} ${one.remedy}`).join()).toMatch(said);
  });
});
