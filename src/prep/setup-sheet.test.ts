import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { item, smallKart } from '../../test/small-kart.ts';
import { CHAIN_START, type Draft, type Fact, type Reading, sealAll } from '../book/index.ts';
import { amountOf, changeOf, toeSaid } from './setting-value.ts';
import { readSetupEffects } from './setup-effects.ts';
import { setupSheet } from './setup-sheet.ts';

const TEXT = readFileSync(new URL('../../data/setup-effects.yaml', import.meta.url), 'utf8');
const effects = readSetupEffects(TEXT);

const width = item('frame/rear width', [{ on: 'event' }], {
  action: 'measure',
  grade: 'performance',
  measure: { unit: 'mm', dimension: 'rear width' },
});
const wear = item('frame/wear', [{ on: 'event' }], { action: 'measure', measure: { unit: 'mm' } });
const kart = smallKart(width, wear);

type Said = Record<string, unknown> & { readonly kind: string };
const hour = (n: number): string => new Date(Date.parse('2026-05-01T08:00:00.000Z') + n * 3_600_000).toISOString();
/** Facts an hour apart, f1, f2, f3 ... */
const log = (...said: readonly Said[]): readonly Fact[] =>
  sealAll(
    CHAIN_START,
    said.map(
      (what, n) =>
        ({ ...what, id: `f${n + 1}`, kart: 'small', at: hour(n), recorded: hour(n), by: 'A', device: 'b' }) as Draft,
    ),
  );
const set = (changes: Readonly<Record<string, string>>, why?: string): Said => ({
  kind: 'set-up',
  changes,
  ...(why === undefined ? {} : { why }),
});
const ran = (session: string, more: Record<string, unknown> = {}): Said => ({
  kind: 'ran',
  event: 'Round 1',
  session,
  minutes: 10,
  ...more,
});
const read = (mm: number, id = 'frame/rear width'): Said => {
  const reading: Reading = { text: `${mm} mm`, si: mm / 1000, unit: 'mm' };
  return { kind: 'checked', item: id, result: 'pass', reading };
};

describe('the settings', () => {
  test('are the last that were written down or read, with who and when', () => {
    const { settings, kart: name } = setupSheet(
      kart,
      log(set({ caster: '18°' }), set({ caster: '16°', toe: '2 mm out' })),
    );
    expect(name).toBe('small');
    expect(settings.map(one => [one.name, one.value, one.from, one.by, one.fact])).toEqual([
      ['caster', '16°', 'set-up', 'A', 'f2'],
      ['toe', '2 mm out', 'set-up', 'A', 'f2'],
    ]);
  });

  test('a reading and a set-up of one name: the newer counts; wear is no setting', () => {
    const facts = log(set({ 'rear width': '1390 mm' }), read(1392), read(3, 'frame/wear'));
    expect(setupSheet(kart, facts).settings).toMatchObject([{ value: '1392 mm', from: 'reading', item: width.id }]);
    const again = log(read(1392), set({ 'Rear width': '1390 mm' }));
    expect(setupSheet(kart, again).settings).toMatchObject([{ value: '1390 mm', from: 'set-up' }]);
  });

  test('a reading names its part, once; degrees have one spelling; what a part is measured for twice is one setting', () => {
    const one = (id: string, unit: 'mm' | '°', number?: 'toe') =>
      item(id, [{ on: 'event' }], {
        action: 'measure',
        grade: 'performance',
        measure: { unit, ...(number && { number }) },
      });
    const toe = [one('frame/toe', 'mm', 'toe'), one('frame/toe again', 'mm', 'toe')];
    const of = smallKart(...toe, one('frame/lean', '°'), one('axle/lean', '°'));
    const lean = (id: string): Said => ({
      kind: 'checked',
      item: id,
      result: 'pass',
      reading: { text: '18 °', si: Math.PI / 10, unit: '°' },
    });
    const facts = log(read(2, 'frame/toe'), read(1, 'frame/toe again'), lean('axle/lean'), lean('frame/lean'));
    expect(setupSheet(of, facts).settings.map(({ name, part, value }) => [name, part, value])).toEqual([
      ['lean, axle', null, '18°'],
      ['lean, frame', null, '18°'],
      ['toe', 'frame', '1 mm out'],
    ]);
  });

  test('a struck set-up counts no more', () => {
    const facts = log(set({ caster: '18°' }), set({ caster: '12°' }), { kind: 'struck', fact: 'f2', why: 'slip' });
    expect(setupSheet(kart, facts).settings).toMatchObject([{ value: '18°' }]);
  });

  test('an empty book has no baseline and nothing to say', () => {
    expect(setupSheet(kart, [], { effects })).toMatchObject({ at: null, against: null, settings: [], differences: [] });
  });
});

describe('against the baseline or a past moment', () => {
  const facts = log(
    set({ caster: '10°' }),
    set({ caster: '18°', 'rear width': '1390 mm', gearing: '17/24' }, 'Base of the season'),
    ran('Heat 1'),
    set({ 'rear width': '1385 mm', gearing: '17/23' }),
    ran('Heat 2'),
    set({ tape: 'black' }),
  );

  test('the baseline is the set-up that is called one, else the first', () => {
    expect(setupSheet(kart, facts).against).toMatchObject({ label: 'baseline (Base of the season)', at: hour(1) });
    const first = setupSheet(kart, log(set({ toe: '1 mm' }), set({ toe: '2 mm' })));
    expect(first.against).toMatchObject({ label: 'the first set-up written down', at: hour(0) });
  });

  test('what differs says which way and how far; what is new says that it was not written down', () => {
    expect(setupSheet(kart, facts).differences).toEqual([
      { name: 'gearing', part: null, was: '17/24', now: '17/23', way: 'less', by: 'ratio -0.059' },
      { name: 'rear width', part: null, was: '1390 mm', now: '1385 mm', way: 'less', by: '-5 mm' },
      { name: 'tape', part: null, was: null, now: 'black', way: 'other', by: null },
    ]);
  });

  test('against a moment after the change, nothing of it differs', () => {
    const later = setupSheet(kart, facts, { against: { label: 'Heat 2', at: hour(4) } });
    expect(later.differences.map(({ name }) => name)).toEqual(['tape']);
    expect(later.sessions.map(({ label }) => label)).toEqual(['Round 1 › Heat 1', 'Round 1 › Heat 2']);
  });

  test('hints go with the way of the change, name source and disagreement, and say when they speak of the other way', () => {
    const { hints } = setupSheet(kart, facts, { effects });
    expect(hints.map(hint => [hint.for, hint.change, hint.opposite])).toEqual([
      ['gearing', 'gearing shorter (more rear teeth)', true],
      ['rear width', 'rear width narrower', false],
    ]);
    expect(hints[1]?.source).toContain('2005');
    expect(hints[1]?.disagreement).toContain('54.5');
    const about = setupSheet(kart, facts, { effects, about: 'Rear width' });
    expect(about.hints.map(({ change }) => change)).toEqual(['rear width wider', 'rear width narrower']);
    expect(about.observed.map(({ setting }) => setting)).toEqual(['rear width']);
  });
});

describe('what this kart showed', () => {
  const one = (...said: readonly Said[]) => setupSheet(kart, log(...said)).observed[0];

  test('a change on its own has its runs before and after, its notes, and no doubt', () => {
    const seen = one(
      set({ caster: '18°' }),
      ran('Heat 1'),
      set({ caster: '16°' }, 'binds'),
      ran('Heat 2', { conditions: 'warm' }),
      { kind: 'note', text: 'freer at entry' },
    );
    expect(seen).toMatchObject({ setting: 'caster', was: '18°', now: '16°', way: 'less', by: '-2°', why: 'binds' });
    expect([seen?.before?.label, seen?.after?.label]).toEqual(['Round 1 › Heat 1', 'Round 1 › Heat 2']);
    expect(seen?.notes).toEqual(['freer at entry']);
    expect(seen?.doubts).toEqual([]);
  });

  test('two changes at once, other tyres, rain and another track are doubts', () => {
    const seen = one(
      set({ caster: '18°', toe: '2 mm' }),
      ran('Heat 1', { track: 'A' }),
      { kind: 'tyres', set: 'wet' },
      set({ caster: '16°', toe: '3 mm' }),
      ran('Heat 2', { track: 'B', wet: true }),
    );
    expect(seen?.doubts).toEqual([
      'changed together with toe',
      'other tyres',
      'wet after, dry before',
      'another track',
    ]);
    expect(one(set({ caster: '18°' }), set({ caster: '16°' }))?.doubts).toEqual([
      'nothing ran before it',
      'nothing ran after it',
    ]);
  });

  test('notes of other days and of later changes are not laid at its door', () => {
    const late = Array.from({ length: 24 }, () => ({ kind: 'fuel mixed', litres: 5, oilMillilitres: 200 }));
    const seen = one(set({ toe: '1 mm' }), set({ toe: '2 mm' }), ran('Heat 1'), ...late, {
      kind: 'note',
      text: 'later',
    });
    expect(seen?.notes).toEqual([]);
  });
});

describe('the number in a setting', () => {
  test('is read with words after it, as teeth, as a plain number, with toe-out above 0', () => {
    expect(amountOf('15 mm each side')).toMatchObject({ si: 0.015, of: 'length each side' });
    expect(amountOf('17/24')).toMatchObject({ of: 'teeth' });
    expect(amountOf('165')?.si).toBe(165);
    expect(amountOf('2 mm in')?.si).toBe(-0.002);
    expect(amountOf('2 mm out')?.si).toBe(0.002);
    expect(amountOf('54 3/4 in')?.si).toBeCloseTo(1.39065, 9);
    for (const none of ['medium', '', '0/24', 'black tape']) expect(amountOf(none)).toBeUndefined();
  });

  test('is compared over units, and never with another kind of thing', () => {
    expect(changeOf('1 in', '25.4 mm')).toBeUndefined();
    expect(changeOf('1 in', '30 mm')).toEqual({ way: 'more', by: '+4.6 mm' });
    expect(changeOf('15 mm each side', '15 mm')).toEqual({ way: 'other', by: null });
    expect(changeOf('medium', 'hard')).toEqual({ way: 'other', by: null });
    expect(changeOf('2 mm out', '1 mm in')).toEqual({ way: 'less', by: '-3 mm' });
  });

  test('of toe that was read is said out or in, as what was set', () => {
    expect(toeSaid('1.96 mm')).toBe('1.96 mm out');
    expect(toeSaid('-1 mm')).toBe('1 mm in');
    expect(toeSaid('1/16 in')).toBe('1/16 in out');
    expect(toeSaid('0 mm')).toBe('0 mm');
    expect(changeOf('2 mm out', toeSaid('1.96 mm'))).toEqual({ way: 'less', by: '-0.04 mm' });
    expect(changeOf('2 mm out', toeSaid('-1 mm'))).toEqual({ way: 'less', by: '-3 mm' });
  });

  test('a change and its way back are opposite, whatever the texts', () => {
    const text = fc.oneof(
      fc.string(),
      fc
        .tuple(fc.integer({ min: 1, max: 99 }), fc.constantFrom('mm', '°', 'bar', 'mm out', ''))
        .map(([n, u]) => `${n} ${u}`),
    );
    fc.assert(
      fc.property(text, text, (a, b) => {
        const [there, back] = [changeOf(a, b)?.way, changeOf(b, a)?.way];
        const opposite = { more: 'less', less: 'more', other: 'other' } as const;
        expect(back).toBe(there === undefined ? undefined : opposite[there]);
      }),
    );
  });
});

describe('the hints that are shipped', () => {
  test('each say where they were read, what is said, and which setting they are about', () => {
    expect(effects.effects.length).toBeGreaterThan(20);
    for (const effect of effects.effects) {
      expect(effect.source, effect.change).toMatch(/read|common practice/);
      expect(
        [effect.entry, effect.mid, effect.exit, effect.use].some(said => said !== undefined),
        effect.change,
      ).toBe(true);
    }
    expect(new Set(effects.effects.map(({ change }) => change)).size).toBe(effects.effects.length);
    expect(effects.effects.filter(({ disagreement }) => disagreement !== undefined).length).toBeGreaterThan(10);
  });

  test('a file of another shape is told with its place', () => {
    expect(() => readSetupEffects('note: x\neffects: [{ change: y }]')).toThrow(/settings/);
  });
});
