/** In a terminal: how long parts last, two answers that say it, what to carry and to buy, and what lies in the box. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LifeAnswer, LivesAnswer, SparesAnswer } from '../../src/app/index.ts';
import { type Run, runCli } from './run-cli.ts';

const KART = `kart: 1
name: "9"
# Invented: a plug, a pedal and a switch.
parts:
  plug: { kind: spark plug, system: ignition and electrics }
  pedal: { kind: brake pedal, system: brakes }
  switch: { kind: kill switch, system: ignition and electrics }
functions:
  keep running: { severity: 4, needs: { all of: [plug, switch] } }
  stop: { severity: 1, needs: { all of: [pedal] } }
lives:
  brake pedal: { one in ten gone by: 8 h, half gone by: 14 h }
costs:
  lost weekend: 300
  spares:
    spark plug: { price: 14, mass: 0.1 kg, change: 5 min }
    brake pedal: { price: 40, mass: 0.9 kg, change: 15 min }
`;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-lives-'));
  writeFileSync(join(folder, 'nine.yaml'), KART);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const kw = (words: readonly string[], input = ''): Promise<Run> => runCli(folder, words, { input });
const json = async <T>(...words: readonly string[]): Promise<T> =>
  JSON.parse((await kw([...words, '--kart', '9', '--json'])).out);
const line = (out: string): string => out.replace(/\s+/g, ' ');

describe('lives in a terminal', () => {
  test('without anybody’s guess nothing is said of a plug, and how to say it is', async () => {
    const event = ['Round 1', '--from', '2027-05-01', '--minutes', '120'];
    expect((await kw(['log', 'event', ...event, '--kart', 'nine.yaml'])).err).toBe('');
    expect((await kw(['log', 'ran', '--minutes', '240', '--kart', '9'])).err).toBe('');
    const { hours, parts } = await json<LivesAnswer>('life');
    expect(hours).toBe(2);
    expect(parts.map(({ part, chance }) => [part, chance !== null])).toEqual([
      ['pedal', true],
      ['plug', false],
      ['switch', false],
    ]);
    const { out } = await kw(['life', 'plug', '--kart', '9']);
    expect(line(out)).toContain(
      'Nobody said how long it lasts: kartwright life guess "spark plug" --half HOURS --tenth HOURS.',
    );
  });

  test('two answers give a chance that says it is a guess, and the kart has it in its list', async () => {
    const said = await kw([
      'life',
      'guess',
      'spark plug',
      '--half',
      '12',
      '--tenth',
      '6',
      '--why',
      'four plugs',
      '--kart',
      '9',
    ]);
    expect(said).toMatchObject({ code: 0, err: '' });
    expect(line(said.out)).toContain('Written down of spark plug. It is a starting guess');
    const { life } = await json<LifeAnswer>('life', 'plug');
    expect(life).toMatchObject({ age: 4, hours: 2, mostlyGuess: true, guess: expect.stringContaining('four plugs') });
    expect(life.chance?.mean).toBeGreaterThan(0.01);
    const { out } = await kw(['life', '--kart', '9']);
    expect(out).toMatch(/plug +4 h {2}\d+ in 100, between .* \*/);
    expect(line(out)).toContain('Not known of 1 part: switch.');
    expect(line((await kw(['life', 'plug', '--kart', '9'])).out)).toMatch(/Of 100 weekends .* would see it fail/);
  });
});

describe('spares in a terminal', () => {
  test('what to carry and to buy for the money there is, and what was never counted is taken as not there', async () => {
    const { box } = await json<SparesAnswer>('spares', '--money', '60');
    expect(box?.buy.reduce((sum, { money }) => sum + money, 0)).toBeLessThanOrEqual(60);
    expect(box?.finish.chosen.chance).toBeGreaterThan(box?.finish.none.chance ?? 1);
    const { out } = await kw(['spares', '--money', '60', '--kart', '9']);
    expect(out).toContain('BUY');
    expect(line(out)).toContain('taken as not in the box: kartwright spares have PART N.');
    expect(line(out)).toContain('1 part can end a weekend and has no chance to count with: switch.');
  });

  test('what is counted lies in the box and is not bought; a new one fitted comes out of it', async () => {
    expect(await kw(['spares', 'have', 'spark plug', '2', '--kart', '9'])).toMatchObject({
      code: 0,
      err: '',
      out: 'In the spares box: 2 × spark plug.\n',
    });
    const plugs = async () =>
      (await json<SparesAnswer>('spares', '--money', '0')).box?.piles.find(({ name }) => name === 'spark plug');
    expect(await plugs()).toMatchObject({ have: 2, counted: true, buy: 0 });
    await kw(['log', 'taken-off', 'plug', '--kart', '9']);
    expect((await kw(['log', 'fitted', 'plug', '--fresh', '--kart', '9'])).err).toBe('');
    expect(await plugs()).toMatchObject({ have: 1 });
  });
});

describe('nonsense', () => {
  test.each([
    [['spares', '--money', '-5'], /Expected money .*-5/],
    [['spares', '--money', 'much'], /Expected .*money.*much/],
    [['spares', '--kilograms', '1e99x'], /Expected .*kilograms.*1e99x/],
    [['spares', '--hours', '1e99'], /Expected running hours .*1e\+99/],
    [['spares', '--minutes', ''], /Expected .*minutes/],
    [['spares', 'have', 'spark plug', '-1'], /Expected .*-1/],
    [['spares', 'have', 'spark plug', 'two'], /Expected .*two/],
    [['spares', 'have', 'plugg', '1'], /Did you mean "/],
    [['life', '--hours', '0'], /Expected running hours above 0, got 0/],
    [['life', 'plugg'], /Did you mean "/],
    [['life', 'plug', '--cap', '200 %'], /Expected a chance between 0 and 1, got 2/],
    [['life', 'guess', 'spark plug'], /got neither/],
    [['life', 'guess', 'spark plug', '--half', '-3'], /Expected .*-3|half/],
    [['life', 'guess', 'spark plug', '--half', '5', '--tenth', '9'], /Expected 1 in 10 to be gone before half are/],
    [['life', 'guess', 'spark plug', '--half', '1e99'], /Expected hours of running below 10,000, got 1e\+99/],
    [['life', 'guess', 'spark plug', '--half', 'long'], /Expected .*half.*long/],
  ])('%j is refused in one clear sentence', async (words, said) => {
    const { code, out, err } = await kw([...words, '--kart', '9']);
    expect(code).not.toBe(0);
    expect(out).toBe('');
    expect(line(err)).toMatch(said);
    expect(err).not.toMatch(/\bat .*\.(js|ts):\d/);
  });
});
