/** One kart, a cold morning and a hot afternoon: which way each answer must go is physics (gas law, density of air). */
import { describe, expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import { CHAIN_START, type Draft, type Fact, sealAll } from '../../book/index.ts';
import type { Corner, Kart, Part } from '../../kart/index.ts';
import { type Measure, parseQuantity } from '../../quantity/index.ts';
import { trackSheet } from './sheet.ts';

const measure = (text: string): Measure => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
const CORNERS: readonly Corner[] = ['front left', 'front right', 'rear left', 'rear right'];
const kart: Kart = (() => {
  const wheels = CORNERS.map(corner => `${corner} wheel`);
  const items = wheels.flatMap(wheel => [
    item(`${wheel}/cold pressure`, [{ on: 'session' }], { action: 'measure', measure: { unit: 'bar' } }),
    item(`${wheel}/hot pressure`, [{ on: 'after session' }], {
      action: 'measure',
      measure: { unit: 'bar', target: measure('0.80 bar') },
    }),
    item(`${wheel}/circumference`, [], { action: 'measure', measure: { unit: 'mm' } }),
  ]);
  const small = smallKart(...items);
  const [pattern] = Object.values(small.parts) as [Part];
  return {
    ...small,
    parts: {
      ...small.parts,
      ...Object.fromEntries(wheels.map((id, n) => [id, { ...pattern, id, corner: CORNERS[n] ?? 'whole' }])),
    },
    engine: {
      primary: 3.9,
      gears: [2.29, 1.78, 1.45, 1.24, 1.11, 1],
      limiter: measure('13500 rpm'),
      jetsNumberedBy: 'diameter',
      mixingRatio: '20:1',
    },
    box: {
      mainJets: [158, 160, 162, 165, 168, 170, 172, 175, 178, 180],
      frontSprockets: [16, 17, 18],
      rearSprockets: [23, 24, 25, 26],
    },
  };
})();

type Said = Record<string, unknown> & { readonly kind: string };
/** Facts at hours of the first of May. */
const log = (...said: readonly (readonly [hour: number, what: Said])[]): readonly Fact[] =>
  sealAll(
    CHAIN_START,
    said.map(([hour, what], n) => {
      const at = new Date(Date.parse('2026-05-01T00:00:00.000Z') + hour * 3_600_000).toISOString();
      return { ...what, id: `f${n + 1}`, kart: 'small', at, recorded: at, by: 'A', device: 'b' } as Draft;
    }),
  );
const weather = (celsius: number, hectopascal: number, humidity: number, trackCelsius: number): Said => ({
  kind: 'weather',
  celsius,
  pascal: hectopascal * 100,
  pressureIs: 'station',
  humidity,
  trackCelsius,
});
const pressures = (key: string, bar: number): readonly Said[] =>
  CORNERS.map(corner => ({
    kind: 'checked',
    item: `${corner} wheel/${key}`,
    result: 'pass',
    reading: { text: `${bar} bar`, si: bar * 1e5, unit: 'bar' },
  }));
const setUp: Said = { kind: 'set-up', changes: { 'main jet': '165', gearing: '17/24' } };
const round: Said = {
  kind: 'checked',
  item: 'rear left wheel/circumference',
  result: 'pass',
  reading: { text: '860 mm', si: 0.86, unit: 'mm' },
};
const at = (hour: number) => (what: Said) => [hour, what] as const;

/** Three sessions of a mild day before, each right on 165, with pressures and fuel. */
const before = [8, 9, 10].flatMap((hour, n) => [
  [hour, weather(18 + n, 1000, 0.5, 24 + 2 * n)] as const,
  ...pressures('cold pressure', 0.6).map(at(hour + 0.1)),
  [hour + 0.2, { kind: 'ran', session: `run ${n + 1}`, minutes: 10, laps: 12 }] as const,
  ...pressures('hot pressure', 0.8 + 0.01 * n).map(at(hour + 0.3)),
  [hour + 0.4, { kind: 'plug read', says: 'right' }] as const,
  [hour + 0.5, { kind: 'fuel used', litres: 3.6 + 0.05 * n }] as const,
]);
const start = [[6, setUp] as const, [6.5, round] as const, ...before];
const HOUR = (hour: number): string =>
  new Date(Date.parse('2026-05-01T00:00:00.000Z') + hour * 3_600_000).toISOString();
const sheetAt = (hour: number, ...more: readonly (readonly [number, Said])[]) =>
  trackSheet(kart, log(...start, ...more), { now: HOUR(hour) });
const cold = sheetAt(32, [31, weather(4, 1015, 0.8, 6)]);
const hot = sheetAt(38, [37, weather(33, 990, 0.4, 45)]);
/** A jet was right in warm air and a larger one in cold: the box may go down one size again. */
const withLog = trackSheet(
  kart,
  log(
    [6, { kind: 'set-up', changes: { 'main jet': '162' } }],
    [9, weather(27, 995, 0.4, 38)],
    [9.2, { kind: 'ran', session: 'run 1', minutes: 10, laps: 12 }],
    [9.3, { kind: 'plug read', says: 'right' }],
    [9.4, setUp],
    [32, weather(6, 1012, 0.4, 12)],
    [32.2, { kind: 'ran', session: 'run 2', minutes: 10, laps: 12 }],
    [32.3, { kind: 'plug read', says: 'right' }],
    [37, weather(34, 990, 0.4, 45)],
    [37.1, { kind: 'set-up', changes: { 'main jet': '162' } }],
  ),
  { now: HOUR(38) },
);
const figure = (sheet: typeof cold, subject: string, name: string): number => {
  const answer = sheet.parts.find(part => part.subject === subject)?.answer;
  return answer?.kind === 'answer' ? (answer.figures[name]?.si ?? Number.NaN) : Number.NaN;
};
const part = (sheet: typeof cold, subject: string) => {
  const found = sheet.parts.find(one => one.subject === subject);
  if (!found) throw new Error(subject);
  return found;
};

describe('before a session', () => {
  test('a cold morning is denser air, and asks for a larger jet than a hot afternoon', () => {
    expect(figure(cold, 'air', 'density')).toBeGreaterThan(figure(hot, 'air', 'density'));
    expect(figure(cold, 'carburation', 'jet to fit')).toBeGreaterThan(165);
    expect(figure(hot, 'carburation', 'jet to fit')).toBeLessThanOrEqual(165);
    expect(figure(hot, 'carburation', 'jet by theory')).toBeLessThan(165);
  });
  test('whichever way the answer leans out, the seizure is named', () => {
    expect(part(cold, 'carburation').warning).toMatch(/seiz/);
    expect(part(hot, 'carburation').warning).toBeNull(); // 165 stays, and is richer than it was
    expect(part(withLog, 'carburation').warning).toMatch(/seizes the engine/);
  });
  test('tyres that are colder when they are set are set lower for the same hot pressure (gas law)', () => {
    const [morning, afternoon] = [cold, hot].map(sheet => figure(sheet, 'tyres', 'cold rear left'));
    expect(morning).toBeGreaterThan(0.2e5);
    expect(morning).toBeLessThan(afternoon ?? Number.NaN);
  });
  test('on a day like those of the record the cold pressure is this kart’s own, with its interval', () => {
    const sheet = sheetAt(35, [34, weather(19, 1001, 0.5, 27)]);
    expect(figure(sheet, 'tyres', 'similar runs rear left')).toBe(3);
    expect(figure(sheet, 'tyres', 'cold rear left')).toBeCloseTo(0.594e5, -3);
  });
  test('fuel is reckoned from the litres of this kart for the laps of the session before', () => {
    expect(cold.laps).toBe(12);
    expect(figure(cold, 'premix', 'fuel a lap')).toBeCloseTo(3.65e-3 / 12, 6);
    expect(
      figure(trackSheet(kart, log(...start), { now: HOUR(12), laps: 20 }), 'premix', 'fuel to have in the tank'),
    ).toBeGreaterThan(figure(cold, 'premix', 'fuel to have in the tank'));
  });
  test('speeds come from the sprockets on the kart, and a wanted speed from the box', () => {
    expect(part(cold, 'gearing').lead[0]?.text).toBe('17/24');
    const wanted = trackSheet(kart, log(...start), {
      now: HOUR(12),
      wanted: { engineSpeed: '12800 rpm', speed: '115 km/h' },
    });
    expect(part(wanted, 'gearing').lead.map(({ label }) => label)).toContain('nearest pair in the box');
  });
  test('what has changed since the last session is named, the air first', () => {
    const sheet = sheetAt(
      32,
      [31, weather(4, 1015, 0.8, 6)],
      [31.5, { kind: 'set-up', changes: { 'main jet': '170' } }],
    );
    expect(sheet.since[0]).toMatchObject({ what: 'air' });
    expect(sheet.since[0]?.now).toMatch(/denser/);
    expect(sheet.since).toContainEqual({ what: 'main jet', was: '165', now: '170' });
  });
  test('a jet on the kart that is too lean for the air is said so plainly', () => {
    const sheet = sheetAt(
      32,
      [31, weather(4, 1015, 0.8, 6)],
      [31.5, { kind: 'set-up', changes: { 'main jet': '162' } }],
    );
    expect(part(sheet, 'carburation').warning).toMatch(/162 is leaner than this air asks for.*can seize/);
  });
  test('the day’s readings are points of a curve with the air the jet was right in', () => {
    const sheet = sheetAt(38, [31, weather(4, 1015, 0.8, 6)], [37, weather(33, 990, 0.4, 45)]);
    expect(sheet.air).toHaveLength(2);
    expect(sheet.baseline).toBeGreaterThan(1.1);
    expect(sheet.air.every(({ band }) => band > 0)).toBe(true);
  });
});

describe('what the record lacks', () => {
  const lacks = (subject: string, ...facts: readonly (readonly [number, Said])[]) =>
    part(trackSheet(kart, log(...facts), { now: HOUR(12) }), subject)
      .missing.map(({ what }) => what)
      .join(' ');
  test('no weather, or weather of yesterday, gives no air and no jet', () => {
    expect(lacks('air', [1, setUp])).toMatch(/No weather was read/);
    expect(lacks('air', [-3, weather(20, 1000, 0.5, 25)])).toMatch(/No weather was read/);
  });
  test('a pressure of which nobody said what it is gives no air', () => {
    const { pressureIs: _, ...unsaid } = weather(20, 1000, 0.5, 25);
    expect(lacks('air', [11, unsaid as Said])).toMatch(/which pressure/);
  });
  test('a plug nobody read as right gives no jet', () => {
    expect(lacks('carburation', [11, weather(20, 1000, 0.5, 25)])).toMatch(/not known which jet/);
  });
  test('a struck plug reading teaches nothing', () => {
    const all = log(...start, [11, weather(20, 1000, 0.5, 25)]);
    const plugs = all.filter(({ kind }) => kind === 'plug read').map(({ id }) => id);
    const struck = log(
      ...start,
      [11, weather(20, 1000, 0.5, 25)],
      ...plugs.map(fact => [11.5, { kind: 'struck', fact, why: 'misread' }] as const),
    );
    expect(part(trackSheet(kart, all, { now: HOUR(12) }), 'carburation').answer?.kind).toBe('answer');
    expect(part(trackSheet(kart, struck, { now: HOUR(12) }), 'carburation').answer).toBeNull();
  });
  test('every question that was asked stands as it is asked of the number', () => {
    for (const one of hot.parts) expect([one.subject, one.answer?.kind]).toEqual([one.subject, 'answer']);
  });
});
