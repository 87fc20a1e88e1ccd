import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Densities,
  litresForSession,
  litresPerLap,
  massRatio,
  mixDensity,
  type OilQuestion,
  oilFor,
  petrolShareRatio,
  premix,
  volumeRatio,
} from './index.ts';

const D: Densities = { petrol: 745, oil: 900 };
const ratio = fc.integer({ min: 8, max: 100 });
const litre = (l: number): number => l / 1000;
const volume = fc.double({ min: 0.0005, max: 0.05, noNaN: true });

function pour(asked: OilQuestion) {
  const found = oilFor(asked);
  if (found.kind !== 'pour') throw new Error(found.kind);
  return found;
}

describe('oil for petrol', () => {
  test('5 % of the petrol is 4.76 % of the mix: in the total and into petrol are two amounts', () => {
    const asked = { ratio: 20, by: 'volume', volume: litre(10) } as const;
    expect(pour({ ...asked, of: 'petrol poured' }).oil).toBeCloseTo(litre(0.5), 12);
    expect(pour({ ...asked, of: 'mix in the can' }).oil).toBeCloseTo(litre(0.47619), 8);
  });

  test('what is in the can then has the ratio that was asked, whatever was in it', () => {
    fc.assert(
      fc.property(
        volume,
        volume,
        ratio,
        fc.option(ratio, { nil: undefined }),
        fc.constantFrom('volume' as const, 'mass' as const),
        fc.constantFrom('mix in the can' as const, 'petrol poured' as const),
        (wanted, had, r, before, by, of) => {
          const can = { volume: had, ...(before === undefined ? {} : { ratio: before }) };
          const found = oilFor({ ratio: r, by, volume: wanted, of, densities: D, can });
          const inVolume = (each: number): number => (by === 'mass' ? volumeRatio(each, D) : each);
          const oilHad = before === undefined ? 0 : had / (inVolume(before) + 1);
          if (found.kind === 'pour') {
            const [oil, petrol] = [oilHad + found.oil, had - oilHad + found.petrol];
            expect(petrol / oil / inVolume(r)).toBeCloseTo(1, 6);
            expect(found.mix).toBeCloseTo(oil + petrol, 12);
            if (of === 'mix in the can') expect(found.mix).toBeCloseTo(wanted, 9);
          } else {
            expect(found.mixAtLeast).toBeGreaterThan(of === 'mix in the can' ? wanted : had);
            const least = oilFor({
              ratio: r,
              by,
              volume: found.mixAtLeast * (1 + 1e-9),
              of: 'mix in the can',
              densities: D,
              can,
            });
            expect(least.kind).toBe('pour');
          }
        },
      ),
    );
  });

  test('by mass and by volume are each other turned round, and the mix lies between its parts', () => {
    fc.assert(
      fc.property(ratio, r => {
        expect(volumeRatio(massRatio(r, D), D)).toBeCloseTo(r, 9);
        expect(mixDensity(r, D)).toBeGreaterThan(D.petrol);
        expect(mixDensity(r, D)).toBeLessThan(D.oil);
      }),
    );
    // 20:1 by volume is 17.13:1 by mass with oil of 0.87 and petrol of 0.745 kg/l; worked in Python, outside the project
    expect(massRatio(20, { petrol: 745, oil: 870 })).toBeCloseTo(17.13, 2);
  });

  test('more oil is less petrol through the same jet, and there and back is nothing', () => {
    fc.assert(
      fc.property(ratio, ratio, (a, b) => {
        expect(petrolShareRatio(a, b) < 1).toBe(b < a);
        expect(petrolShareRatio(a, b) * petrolShareRatio(b, a)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('what is not known is never a smaller amount of oil', () => {
    for (const more of [{ ratio: Number.NaN }, { ratio: 0.05 }, { volume: 0 }, { volume: Number.NaN }])
      expect(oilFor({ ratio: 20, by: 'volume', volume: 0.01, of: 'petrol poured', ...more })).toMatchObject({
        kind: 'not known',
      });
  });
});

describe('litres for the session', () => {
  const RECORD = [4.6, 3.7, 5.6, 4.3].map((l, n) => ({ volume: litre(l), laps: [15, 12, 18, 14][n] ?? 1 }));

  test('the fill is what the high end takes and the reserve, so the most that burns leaves the reserve', () => {
    const perLap = litresPerLap(RECORD);
    const found = litresForSession({ laps: 14, spare: 2, reserve: litre(1.5), perLap });
    if (perLap.kind !== 'known' || found.kind === 'not known') throw new Error('not known');
    expect(perLap.low).toBeLessThan(perLap.mean);
    expect(found.fill).toBeCloseTo(16 * perLap.high + litre(1.5), 12);
    expect(found.leftLeast).toBeGreaterThan(litre(1.5));
    expect(litresForSession({ laps: 14, spare: 2, reserve: litre(1.5), perLap, tank: litre(6) })).toMatchObject({
      kind: 'does not fit',
      over: found.fill - litre(6),
    });
  });

  test('a record twice as thirsty asks for twice as much; more laps never for less', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            volume: fc.double({ min: 1e-4, max: 1e-2, noNaN: true }),
            laps: fc.integer({ min: 5, max: 30 }),
          }),
          {
            minLength: 3,
            maxLength: 12,
          },
        ),
        record => {
          const fillOf = (times: number, laps: number): number => {
            const perLap = litresPerLap(record.map(run => ({ ...run, volume: run.volume * times })));
            const found = litresForSession({ laps, reserve: 0, perLap });
            return found.kind === 'not known' ? Number.NaN : found.fill;
          };
          expect(fillOf(2, 12) / fillOf(1, 12)).toBeCloseTo(2, 9);
          expect(fillOf(1, 13)).toBeGreaterThan(fillOf(1, 12));
        },
      ),
    );
  });

  test('two fills are no record, and fills that are no numbers are left out', () => {
    expect(litresPerLap(RECORD.slice(0, 2))).toMatchObject({ kind: 'too few', fills: 2 });
    expect(
      litresPerLap([
        { volume: Number.NaN, laps: 10 },
        { volume: 0.004, laps: 0 },
      ]),
    ).toEqual({ kind: 'too few', fills: 0, needed: 3 });
    const perLap = litresPerLap(RECORD.slice(0, 2));
    expect(litresForSession({ laps: 14, reserve: 0, perLap })).toMatchObject({ kind: 'not known' });
    expect(litresForSession({ laps: Number.NaN, reserve: 0, perLap: litresPerLap(RECORD) })).toMatchObject({
      kind: 'not known',
    });
  });
});

const EXAMPLE = premix.example;
const MIX = { ratio: '20:1', 'ratio by': 'volume', volume: '10 l', 'volume is': 'mix in the can' };
function answer(input: Readonly<Record<string, unknown>>) {
  const got = premix.ask(input);
  if (got.kind !== 'answer') throw new Error(JSON.stringify(got.problems));
  return got;
}
function against(input: Readonly<Record<string, unknown>>): Readonly<Record<string, string>> {
  const got = premix.ask(input);
  return got.kind === 'answer' ? {} : Object.fromEntries(got.problems.map(({ path, remedy }) => [path, remedy]));
}

describe('fuel and oil answer', () => {
  test('what to pour, in millilitres and by mass, with the caution of vapour', () => {
    const { figures, say } = answer(MIX);
    expect(figures['oil to pour']?.text).toBe('476 ml');
    expect(figures['petrol to pour']?.text).toBe('9.52 l');
    expect(say.at(-1)).toContain('vapour burns');
    expect(answer({ ...MIX, 'volume is': 'petrol poured' }).figures['oil to pour']?.text).toBe('500 ml');
  });

  test('more oil than before is leaner, said with seizure and the jet; less oil is no way to tune', () => {
    expect(answer({ ...MIX, ratio: '16:1', 'ratio before': '25:1' }).say.join(' ')).toMatch(
      /2\.1 % leaner.*seizure.*main jet/,
    );
    expect(answer({ ...MIX, ratio: '30:1', 'ratio before': '20:1' }).say.join(' ')).toMatch(
      /richer.*too little oil seizes/,
    );
    expect(answer({ ...MIX, 'ratio before': '20:1' }).say.join(' ')).toContain('the jets stay');
  });

  test('the fill is never shown less than it is, and a tank too small is told by how much', () => {
    const { figures } = answer(EXAMPLE);
    const fill = figures['fuel to have in the tank'];
    expect(Number.parseFloat(fill?.text ?? '') / 1000).toBeGreaterThanOrEqual(fill?.si ?? Number.NaN);
    expect(answer({ ...EXAMPLE, 'tank holds': '5 l' }).say.join(' ')).toContain('It does not fit');
  });

  test('the scales: with an empty tank the fill is added, and ballast is asked for where the flag would be too light', () => {
    const { figures } = answer(EXAMPLE);
    const empty = answer({ ...EXAMPLE, 'weighed with': 'an empty tank' });
    const more = (empty.figures['mass at the flag']?.si ?? 0) - (figures['mass at the flag']?.si ?? 0);
    expect(more).toBeCloseTo(
      (figures['fuel to have in the tank']?.si ?? 0) * (figures['density of the mix']?.si ?? 0),
      6,
    );
    expect(answer({ ...EXAMPLE, 'least mass': '178 kg' }).say.join(' ')).toMatch(/under the least mass.*of ballast/);
  });

  test('a record that power cannot explain, or one that scatters, is doubted', () => {
    const power = { 'peak power': '29 kW', 'lap time': '52 s' };
    expect(answer({ ...EXAMPLE, ...power }).notes.join(' ')).toContain('miscounted');
    const record = [
      { fuel: '2 l', laps: '20' },
      { fuel: '2.1 l', laps: '20' },
      { fuel: '4 l', laps: '20' },
    ];
    const { notes } = answer({ ...EXAMPLE, ...power, record });
    expect(notes.join(' ')).not.toContain('miscounted');
    expect(notes.join(' ')).toContain('differ by more than 15 %');
  });

  test('too short a record gives no fill', () => {
    const { say, figures } = answer({ ...EXAMPLE, record: [{ fuel: '4.6 l', laps: '15' }] });
    expect(figures['fuel to have in the tank']).toBeUndefined();
    expect(say.join(' ')).toContain('1 of the 3 fills');
  });

  test('a ratio no kart oil is sold for is marked', () => {
    expect(answer({ ...MIX, ratio: '80:1' }).notes.join(' ')).toContain("maker's sheet");
  });
});

describe('fuel and oil refuse', () => {
  test('a ratio upside down, in per cent, bare or by half, each with the right way', () => {
    expect(against({ ...MIX, ratio: '1:20' }).ratio).toContain('"20:1"');
    expect(against({ ...MIX, ratio: '5 %' }).ratio).toMatch(/"20:1".*"19:1"/);
    expect(against({ ...MIX, ratio: '20' }).ratio).toContain('"20:1"');
    expect(against({ ...MIX, ratio: 20 }).ratio).toContain('"20:1"');
    expect(against({ ...MIX, ratio: '40:2' }).ratio).toContain('1 part of oil');
    expect(against({ ...MIX, ratio: '400:1' }).ratio).toContain('maker');
    for (const odd of ['', 'x', ':', {}, null]) expect(against({ ...MIX, ratio: odd }).ratio).toContain('20:1');
  });

  test('by volume or mass, total or petrol, mixed or not: asked and not guessed', () => {
    const { 'ratio by': _, ...rest } = MIX;
    expect(Object.keys(against(rest))).toEqual(['ratio by']);
    expect(Object.keys(against({ ...MIX, 'volume is': undefined }))).toEqual(['volume is']);
    expect(against({ ...MIX, 'in the can': '2 l' })['in the can is']).toContain('empty the can');
    expect(against({ ...MIX, 'in the can': '2 l', 'in the can is': 'mixed' })['ratio in the can']).toContain(
      'empty the can',
    );
    expect(
      Object.keys(against({ ...MIX, 'in the can': '2 l', 'in the can is': 'petrol only', 'ratio in the can': '20:1' })),
    ).toEqual(['ratio in the can']);
    expect(Object.keys(against({ ...MIX, 'ratio in the can': '20:1' }))).toEqual(['in the can']);
    expect(Object.keys(against({ ...EXAMPLE, 'weighed with': undefined }))).toEqual(['weighed with']);
  });

  test('a can with too much oil, or more than is wanted, with the least that can be made', () => {
    const can = { 'in the can': '3 l', 'in the can is': 'mixed', 'ratio in the can': '16:1' };
    expect(against({ ...MIX, ...can, ratio: '25:1', volume: '3 l' })['in the can']).toContain('4.59 l or more');
    expect(against({ ...MIX, ...can, ratio: '12:1', volume: '2 l' }).volume).toContain('or more');
  });

  test('all at once: no reserve, half laps, no litres, oil as heavy as lead', () => {
    const found = against({
      ...MIX,
      volume: '10000 l',
      laps: '12.5',
      'oil density': '9 kg/l',
      record: [{ fuel: '46 l', laps: '10' }],
      'peak power': '29 kW',
      'on the scales': '180 kg',
    });
    expect(Object.keys(found).toSorted()).toEqual([
      'lap time',
      'laps',
      'least mass',
      'oil density',
      'record/0/fuel',
      'reserve',
      'volume',
      'weighed with',
    ]);
  });

  test('what is no question at all', () => {
    for (const input of [undefined, null, 7, 'x', []]) expect(premix.ask(input).kind).toBe('problems');
  });
});
