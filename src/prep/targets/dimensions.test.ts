import { describe, expect, it } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { Item, Kart, NumberName } from '../../kart/index.ts';
import { type Answer, subjects } from '../../numbers/index.ts';
import { type Measure, parseQuantity } from '../../quantity/index.ts';
import { aimOf, limitsOf } from './index.ts';

const q = (text: string): Measure => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.remedy}`);
  return read.value;
};
const kartOf = (dimensions: Readonly<Record<string, string>>, limits: Readonly<Record<string, string>> = {}): Kart => ({
  ...smallKart(),
  instruments: {
    'four scales': {
      name: 'four scales',
      resolution: q('0.1 kg'),
      scaleError: { si: 0.001, unit: '%', text: '0.1 %', dimension: 'ratio' },
      ends: 1,
      source: 'x',
    },
  },
  dimensions: Object.fromEntries(Object.entries(dimensions).map(([name, text]) => [name, q(text)])),
  rules: {
    id: 'x',
    body: 'x',
    year: 2026,
    note: '',
    limits: Object.fromEntries(
      Object.entries(limits).map(([name, text]) => [name, { min: q(text), source: 'rule 6' }]),
    ),
  },
});
const measured = (number: NumberName, more: Partial<NonNullable<Item['measure']>> = {}): Item =>
  item('hub/x', [{ on: 'event' }], {
    action: 'measure',
    tools: ['four scales'],
    measure: { unit: 'mm', number, ...more },
  });
const calc = (name: string, question: object): Answer => {
  const answer = subjects.find(one => one.name === name)?.ask(question);
  if (answer?.kind !== 'answer') throw new Error(JSON.stringify(answer));
  return answer;
};

describe('brake bias', () => {
  const brakes = {
    'bar spacing': '60 mm',
    'front master bore': '19 mm',
    'front piston diameter': '28 mm',
    'front pistons a side': '1 piece',
    'front effective radius': '62 mm',
    'front tyre diameter': '260 mm',
    'rear master bore': '22 mm',
    'rear piston diameter': '24 mm',
    'rear pistons a side': '2 pieces',
    'rear effective radius': '80 mm',
    'rear tyre diameter': '274 mm',
    wheelbase: '1045 mm',
    'front share': '43 %',
    'cg height': '240 mm',
    'tyre grip': '120 %',
  };
  const bar = measured('brake-bias');
  it('stands where the number of the brakes puts it, asked by itself', () => {
    const end = (name: 'front' | 'rear') => ({
      'master bore': brakes[`${name} master bore`],
      'piston diameter': brakes[`${name} piston diameter`],
      'pistons a side': brakes[`${name} pistons a side`],
      'effective radius': brakes[`${name} effective radius`],
      'tyre diameter': brakes[`${name} tyre diameter`],
    });
    const answer = calc('brakes', {
      'pedal force': '350 N',
      'pedal ratio': '4.2',
      'bar spacing': '60 mm',
      'bar offset': '0 mm',
      front: end('front'),
      rear: end('rear'),
      'pad friction': '0.4',
      mass: '177 kg',
      wheelbase: '1045 mm',
      'front load share': '43 %',
      'centre height': '240 mm',
      'tyre grip': '1.2',
    });
    const { target, say } = aimOf(kartOf(brakes), bar);
    expect(target?.si).toBeCloseTo(answer.figures['ideal bar offset']?.si ?? Number.NaN, 12);
    expect(target?.text).toBe('7.0 mm toward the front clevis');
    expect(say.join(' ')).toContain('70.6 %'); // 0.43 + 1.2 × 240 / 1045
  });
  it('says which dimension is missing, and keeps the figure of the item', () => {
    const { 'cg height': _, ...lacking } = brakes;
    const sheet = measured('brake-bias', { target: q('2 mm') });
    const { target, say } = aimOf(kartOf(lacking), sheet);
    expect(target?.text).toBe('2 mm');
    expect(say.join(' ')).toContain('does not give "cg height"');
    expect(aimOf(kartOf(lacking), bar).target).toBeNull();
    expect(aimOf(kartOf({ ...brakes, 'cg height': '240 kg' }), bar).say.join(' ')).toContain('"cg height"');
  });
  it('gives no place where the front would have to brake alone', () => {
    expect(aimOf(kartOf({ ...brakes, 'cg height': '900 mm' }), bar)).toMatchObject({
      target: null,
      say: [expect.stringContaining('brake alone')],
    });
  });
});

describe('toe', () => {
  const toe = measured('toe', { target: q('2 mm'), min: q('-1 mm'), max: q('3 mm') });
  it('is asked over the diameter at which this kart is read, with target and limits turned with it', () => {
    const kart = kartOf({ 'wanted toe diameter': '260 mm', 'measuring diameter': '130 mm' });
    const aim = aimOf(kart, toe);
    // The same angle over half of the diameter is half of the millimetres.
    expect(aim.target?.si).toBeCloseTo(0.001, 12);
    expect(aim.target?.text).toBe('1 mm toe-out over 130 mm');
    expect(aim.tolerance?.text).toBe('0.5 mm toe-in to 1.5 mm toe-out');
  });
  it('stays as the item has it where the diameter is not known, and says so', () => {
    const aim = aimOf(kartOf({ 'wanted toe diameter': '260 mm' }), toe);
    expect(aim.target?.text).toBe('2 mm');
    expect(aim.say.join(' ')).toContain('"measuring diameter"');
  });
});

describe('total mass', () => {
  const weigh = measured('least-mass', { unit: 'kg', rule: 'mass' });
  it('is the least reading that proves the minimum, as the number of the scales says', () => {
    // By hand: u² = 0.1²/12 + (0.001 × 175)²/3 = 8.33e-4 + 1.0208e-2, u = 0.10508 kg; 175 + 1.64485 u = 175.17284 kg.
    const { target, tolerance, orMore } = aimOf(kartOf({}, { mass: '175 kg' }), weigh);
    expect(target?.si).toBeCloseTo(175.17284, 4);
    expect(target?.text).toBe('175.2 kg or more');
    expect(tolerance?.text).toBe('at least 175 kg');
    expect(orMore).toBe(true);
    const alone = calc('scales', { total: '176 kg', 'least mass': '175 kg', 'standard uncertainty': '0.10508 kg' });
    expect(target?.si).toBeCloseTo(alone.figures['least reading before the run']?.si ?? Number.NaN, 4);
  });
  it('counts the fuel that will burn where the kart file says how much', () => {
    const { say } = aimOf(kartOf({ 'fuel to burn': '4 l' }, { mass: '175 kg' }), weigh);
    const alone = calc('scales', {
      total: '180 kg',
      'least mass': '175 kg',
      'standard uncertainty': '0.10508 kg',
      'fuel to burn': '4 l ± 0 l',
    });
    const least = alone.figures['least reading before the run']?.si ?? Number.NaN;
    expect(say.join(' ')).toContain(`4 l of fuel still to burn: ${(Math.ceil(least * 10) / 10).toFixed(1)} kg or more`);
  });
  it('is not known without a rule set', () => {
    expect(aimOf(smallKart(), weigh)).toMatchObject({ target: null, say: [expect.stringContaining('No least mass')] });
  });
});

describe('a dimension of the kart', () => {
  it('is the target of the item that reads it, of its own side first', () => {
    const caster = item('hub/caster', [{ on: 'event' }], { measure: { unit: '°', dimension: 'caster' } });
    expect(aimOf(kartOf({ caster: '12°' }), caster).target?.text).toBe('12°');
    expect(aimOf(kartOf({ caster: '12°', 'caster left': '14°' }), caster).target?.text).toBe('14°');
    expect(aimOf(kartOf({}), caster).target).toBeNull();
  });
  it('gives the front share its target, and says left and cross besides', () => {
    const shares = measured('weight-shares', { unit: '%', min: q('41 %') });
    const aim = aimOf(kartOf({ 'front target': '43 %', 'left target': '50 %' }), shares);
    expect(aim).toMatchObject({ target: { text: '43 %' }, say: ['Wanted besides: left share 50 %.'] });
    expect(aimOf(kartOf({}), shares).say.join(' ')).toContain('"front target"');
  });
});

it('the step, the judge and the refusal read one and the same limit', () => {
  const kart = kartOf({ 'wanted toe diameter': '260 mm', 'measuring diameter': '130 mm' });
  const toe = measured('toe', { target: q('2 mm'), min: q('0 mm'), max: q('3 mm') });
  const { tolerance } = aimOf(kart, toe);
  expect(limitsOf(kart, toe).max?.si).toBe(tolerance?.max?.si);
  expect(limitsOf(kart, toe).min?.si).toBe(tolerance?.min?.si);
});
