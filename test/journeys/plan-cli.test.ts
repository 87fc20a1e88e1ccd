/** The plan for several hands and a time that is too short, told to the built program on the invented demo kart. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Problem, Replanned } from '../../src/app/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import { type Run, runCli } from './run-cli.ts';

let folder = '';
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-plan-'));
  expect((await kw(['book', 'import'], (await kw(['book', 'export', '--demo'])).out)).code).toBe(0);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const kw = (words: readonly string[], input = ''): Promise<Run> => runCli(folder, words, { input });
const plan = async (...words: readonly string[]): Promise<Plan> => {
  const run = await kw(['plan', ...words, '--json']);
  expect(run).toMatchObject({ code: 0, err: '' });
  return JSON.parse(run.out);
};
const refused = async (...words: readonly string[]): Promise<readonly Problem[]> => {
  const run = await kw(['plan', ...words, '--json']);
  expect([words, run.code]).toEqual([words, 3]);
  return JSON.parse(run.out).problems;
};
const toDo = (one: Plan) => one.steps.filter(({ state }) => state !== 'done');

describe('two people and two evenings', () => {
  test('are done sooner than one, share the work, and say how far from the shortest it can be', async () => {
    const [one, two] = [await plan(), await plan('--people', '2', '--window', '120', '--window', '300')];
    expect(two.span).toBeLessThan(one.span);
    expect(two.bound).toBeLessThanOrEqual(two.span);
    expect(new Set(toDo(two).flatMap(({ people }) => people))).toEqual(new Set([1, 2]));
    expect(two.windows.map(({ minutes }) => minutes)).toEqual([120, 300]);
    expect(two.leftOut).toEqual([]);
    for (const step of toDo(two)) expect(step.whyNow.length, step.key).toBeGreaterThan(0);
    const look = toDo(two).find(({ action }) => action === 'second-look');
    const first = toDo(two).find(({ key }) => key !== look?.key && key.endsWith(` ${look?.item}`));
    if (look && first) expect(look.people).not.toEqual(first.people);
    const said = (await kw(['plan', '--people', '2', '--short'])).out;
    expect(said.replace(/\s+/g, ' ')).toMatch(/done in .* by 2 people/);
  });
});

describe('a time that is too short', () => {
  test('leaves the kart not fit by name, and says how many minutes or people would do', async () => {
    const short = await plan('--minutes', '60');
    const safety = short.leftOut.filter(({ grade }) => grade === 'safety');
    expect(short.span).toBeLessThanOrEqual(60);
    expect(safety.length).toBeGreaterThan(0);
    expect(short.safetyShortBy).toBeGreaterThan(0);
    expect(safety[0]?.consequence).toMatch(/^Not fit to run until it is done/);
    const said = (await kw(['plan', '--minutes', '60', '--short'])).out;
    expect(said.replace(/\s+/g, ' ')).toMatch(/NOT FIT TO RUN AFTER THIS PLAN: .* more are needed/);
  });
  test('with so much as an item needs, it enters', async () => {
    const short = await plan('--minutes', '70');
    const first = short.leftOut.find(({ needs }) => needs !== null);
    expect(first?.needs).toBeGreaterThan(70);
    const enough = await plan('--minutes', String(first?.needs));
    expect(enough.leftOut.map(({ item }) => item)).not.toContain(first?.item);
  });
});

describe('a find in the middle', () => {
  test('makes the plan anew: what is done stays done, and what is new is named', async () => {
    const before = toDo(await plan());
    const next = before.find(({ action, state }) => action === 'look' && state === 'ready');
    const at = new Date().toISOString();
    expect((await kw(['log', 'checked', String(next?.item), '--pass'])).code).toBe(0);
    expect((await kw(['log', 'loosened', 'rear hub right/pinch bolts', '--why', 'to look at the seat'])).code).toBe(0);
    const run = await kw(['plan', '--since', at, '--json']);
    expect(run).toMatchObject({ code: 0, err: '' });
    const otherwise: Replanned = JSON.parse(run.out);
    expect(otherwise.done.map(({ key }) => key)).toContain(next?.key);
    expect(otherwise.added.map(({ joint }) => joint)).toContain('rear hub right/pinch bolts');
    expect(toDo(await plan()).map(({ key }) => key)).not.toContain(next?.key);
  });
});

describe('what cannot be', () => {
  test.each([
    [['--people', '4'], /1 to 3 people/],
    [['--people', '1.5'], /1 to 3 people/],
    [['--window', '120@2020-01-01T08:00:00Z'], /not over/],
    [['--window', '120@tomorrowish'], /when it begins/],
    [['--minutes', '99999999'], /to a year/],
  ])('%j is refused in words', async (words, message) => {
    const problems = await refused(...words);
    expect(problems.map(one => one.message).join(' ')).toMatch(message);
  });
  test.each([
    ['--people', '0'],
    ['--window', '-5'],
    ['--minutes', 'soon'],
  ])('%s %s is no number above 0', async (flag, value) => {
    const run = await kw(['plan', `${flag}=${value}`]);
    expect(run.code).not.toBe(0);
    expect(run.err + run.out).toMatch(/number above 0/);
  });
});
