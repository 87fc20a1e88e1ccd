import { describe, expect, test } from 'vitest';
import { carburation } from './index.ts';

const EXAMPLE = carburation.example;
const COLD = EXAMPLE['air now'];
const HOT = EXAMPLE['air then'];
const PLAIN = {
  jet: '165',
  'numbered by': 'flow',
  'air then': { density: '1.2 kg/m³' },
  'air now': { density: '1.1 kg/m³' },
};

function answer(input: Readonly<Record<string, unknown>>) {
  const got = carburation.ask(input);
  if (got.kind !== 'answer') throw new Error(JSON.stringify(got.problems));
  return got;
}
function against(input: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> {
  const got = carburation.ask(input);
  return got.kind === 'answer' ? {} : Object.fromEntries(got.problems.map(({ path, remedy }) => [path, remedy]));
}

describe('the main jet answers', () => {
  test('a cold morning after a hot day: richer, and what leaner leads to in plain words', () => {
    const { say, figures } = answer(EXAMPLE);
    expect(figures['change of air']?.text).toContain('denser');
    expect(figures['mixture with the jet as it is']?.text).toContain('leaner');
    expect(say.join(' ')).toContain('seizure');
    expect(say.join(' ')).toMatch(/Fit 17\d, before the run/);
  });

  test('a hot afternoon after a cold morning: one size leaner at most, with the leak test and seizure said', () => {
    const { say } = answer({
      ...EXAMPLE,
      'air then': COLD,
      'air now': { ...(HOT as object), temperature: '36 °C ± 0.5 °C' },
    });
    const all = say.join(' ');
    expect(all).toContain('162 may be tried');
    expect(all).toContain('seizure');
    expect(all).toContain('air leak');
  });

  test('humidity nobody read on a hot day leaves the jet: it hides more oxygen than density', () => {
    const hot = { temperature: '34 °C', pressure: '965 hPa', 'pressure is': 'station', humidity: '40 % ± 5 %' };
    const { humidity: _, ...unread } = hot;
    const asked = (now: object) => answer({ ...EXAMPLE, 'air then': COLD, 'air now': now });
    const doubt = (now: object): number => asked(now).figures['change of air known to']?.si ?? Number.NaN;
    expect(asked(hot).figures['jet to fit']?.text).toBe('162');
    expect(doubt(unread)).toBeGreaterThan(3 * doubt(hot));
    expect(asked(unread).figures['jet to fit']?.text).toBe('165');
  });

  test('fuel vapour has its caution wherever a jet comes out', () => {
    for (const input of [EXAMPLE, PLAIN]) expect(answer(input).say.at(-1)).toContain('vapour burns');
  });

  test('without a box it says the least number; with one it says one of the box', () => {
    expect(answer(PLAIN).figures['jet to fit, at least']?.text).toBe('165');
    expect(answer({ ...PLAIN, 'smallest good jet': '150' }).figures['jet to fit, at least']?.text).toBe('160');
    expect(
      answer({ ...PLAIN, 'smallest good jet': '150', 'jets in the box': '165; 160 155' }).figures['jet to fit']?.text,
    ).toBe('160');
  });

  test('below the smallest good jet only on purpose, and then it is said', () => {
    const input = { ...PLAIN, 'jets in the box': '155 160 165' };
    expect(answer(input).say.join(' ')).toContain('none smaller was ever logged as good');
    expect(answer({ ...input, 'go below it': 'yes' }).say.join(' ')).toContain('your decision');
  });

  test('a log is learned from, or it says what is still missing', () => {
    const log = [1.08, 1.12, 1.16, 1.2, 1.24, 1.27].map((rho, n) => ({
      jet: String(157 + 2 * n),
      density: `${rho} kg/m³`,
      plug: 'right',
    }));
    expect(answer({ ...PLAIN, log }).figures['exponent of the log']?.text).toMatch(/^0\.\d\d \(/);
    expect(answer({ ...PLAIN, log: log.slice(0, 3) }).notes.join(' ')).toContain('cannot tell yet: 3 of the 5');
  });

  test('a needle in the way says how little of the main jet reaches the engine', () => {
    const needle = { 'numbered by': 'diameter', 'needle jet': '2.68 mm', needle: '1.90 mm' };
    expect(answer({ ...PLAIN, ...needle }).figures['share of the main jet']?.text).toBe('63 %');
  });

  test('air far apart, and a bore no jet has, are marked', () => {
    const notes = (more: object): string => answer({ ...PLAIN, ...more }).notes.join(' ');
    expect(notes({ 'air now': { density: '0.8 kg/m³' } })).toContain('more than 25 %');
    expect(notes({ jet: '400', 'numbered by': 'diameter' })).toContain('Is the number a flow?');
    expect(notes({ 'numbered by': 'not known' })).toContain('both are in the band');
  });
});

describe('the main jet refuses', () => {
  test('a number without its meaning, and a bore in place of a number', () => {
    const { 'numbered by': _, ...rest } = PLAIN;
    expect(Object.keys(against(rest))).toEqual(['numbered by']);
    expect(against({ ...PLAIN, jet: '1.65 mm' }).jet).toContain('"165"');
    expect(Object.keys(against({ ...PLAIN, jet: '-165' }))).toEqual(['jet']);
    expect(against({ ...PLAIN, 'jets in the box': '160 1a5' })['jets in the box']).toContain('apart by spaces');
  });

  test('air read in the wrong unit or kind, each as the air itself refuses it', () => {
    const air = (more: object): Readonly<Record<string, string>> =>
      against({
        ...PLAIN,
        'air now': { temperature: '21 °C', pressure: '985 hPa', 'pressure is': 'station', ...more },
      });
    expect(air({ temperature: '82 °C' })['air now/temperature']).toContain('°F');
    expect(air({ humidity: '55' })['air now/humidity']).toContain('55 %');
    expect(air({ pressure: '0.2 bar' })['air now/pressure']).toContain('gauge');
    expect(air({ 'pressure is': 'QNH' })['air now/elevation']).toBeDefined();
    expect(Object.keys(air({ 'pressure is': undefined }))).toEqual(['air now/pressure is']);
    expect(Object.keys(air({ density: '1.1 kg/m³' }))).toEqual(['air now/density']);
    expect(Object.keys(against({ ...PLAIN, 'air now': {} }))).toEqual(['air now']);
    expect(against({ ...PLAIN, 'air now': { density: '745 kg/m³' } })['air now/density']).toContain('density of air');
    expect(against({ ...PLAIN, 'air now': { density: '1.1 kg/m³', 'dry-air density': '1.2 kg/m³' } })).toHaveProperty(
      'air now/dry-air density',
    );
    expect(against({ ...PLAIN, 'air now': { 'dry-air density': '1.2 kg/m³' } })).toHaveProperty('air now/density');
  });

  test('one time without the other, a needle thicker than its jet, a good jet above this one: all at once', () => {
    const found = against({
      ...PLAIN,
      'oil now': '20:1',
      'ethanol then': '10 %',
      'fuel temperature now': '90 °F',
      'needle jet': '1.9 mm',
      needle: '2.68 mm',
      'smallest good jet': '170',
      'jets in the box': '45 165',
      log: [{ jet: '165', density: '745 kg/m³', plug: 'right' }],
    });
    expect(Object.keys(found).toSorted()).toEqual([
      'ethanol now',
      'fuel temperature then',
      'jets in the box',
      'log/0/density',
      'main jet bore',
      'needle',
      'oil then',
      'smallest good jet',
    ]);
  });

  test('a ratio upside down is refused with the right way', () => {
    expect(against({ ...PLAIN, 'oil then': '1:20', 'oil now': '20:1' })['oil then']).toContain('"20:1"');
  });

  test('what is no question at all', () => {
    for (const input of [undefined, null, 7, 'x', [], { jet: {} }])
      expect(carburation.ask(input).kind).toBe('problems');
  });
});
