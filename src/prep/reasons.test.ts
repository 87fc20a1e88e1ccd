import { describe, expect, it } from 'vitest';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold } from '../book/index.ts';
import type { Joint, Kart } from '../kart/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import { whyWith } from './reasons.ts';
import { bareStep, stepOf } from './step.ts';

const q = (text: string) => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.remedy}`);
  return read.value;
};
const seat = item('hub/seat', [{ on: 'disturbed' }], { action: 'clean', reason: 'hub-hold' });
const BOLTS: Joint = {
  id: 'hub/bolts',
  part: 'hub',
  name: 'bolts',
  kind: 'clamp bolt',
  count: 2,
  thread: 'M8x1.25',
  torque: { min: q('20 N·m'), max: q('22 N·m'), source: 'common practice' },
  retention: 'nut',
  item: 'hub/bolts',
};

const kartWith = (bolts: Partial<Joint> = {}, dimensions: Readonly<Record<string, string>> = {}): Kart => {
  const kart = smallKart(seat);
  const known = { 'axle diameter': '50 mm', 'mass with driver': '175 kg', ...dimensions };
  return {
    ...kart,
    dimensions: Object.fromEntries(Object.entries(known).flatMap(([name, text]) => (text ? [[name, q(text)]] : []))),
    joints: { 'hub/bolts': { ...BOLTS, ...bolts } },
  };
};

describe('the reason of a hub seat', () => {
  it('says what the hub holds clean and with a film, from the least torque, rounded down', () => {
    // By hand: 2 x 0.65 x 20 / (0.2 x 0.008) = 16 250 N; 2 x 0.2 x 16 250 / (2 x 1.7 x 0.57 x 175 x 9.80665) = 1.95.
    expect(whyWith(kartWith(), seat, 'Disturbed when hub comes off.')).toBe(
      'Disturbed when hub comes off. Clean and dry this hub holds about 1.9 times the side load of the outer wheel; with a film of oil 0.9 times, ' +
        "and the key does not keep it on (least preload at 20 N·m on top of the nut's running torque, 175 kg, 57 % of it at the rear, tyre grip 1.7, doubled for kerbs; common practice).",
    );
  });
  it('is read on the step itself', () => {
    const job = { key: 'clean hub/seat', is: 'item', item: seat, why: 'Due.', due: undefined } as const;
    expect(stepOf(kartWith(), fold([]), job, bareStep).why).toMatch(/^Due\. Clean and dry this hub holds/);
  });
  it('takes the least mass of the class where the kart has none of its own', () => {
    const limits = { mass: { min: q('150 kg'), source: 'x' } };
    const rules = { id: 'x', body: 'x', year: 2026, note: '', limits };
    expect(whyWith({ ...kartWith({}, { 'mass with driver': '' }), rules }, seat, '')).toMatch(/, 150 kg,/);
  });
  it.each([
    ['the mass', kartWith({}, { 'mass with driver': '' })],
    ['the axle', kartWith({}, { 'axle diameter': '' })],
    ['an axle that is a length', kartWith({}, { 'axle diameter': '50 kg' })],
    ['a thread that exists', kartWith({ thread: 'M8x9' })],
    ['which joint clamps', kartWith({ kind: 'bolt' })],
  ])('is silent when it does not know %s', (_, kart) => {
    expect(whyWith(kart, seat, 'Due.')).toBe('Due.');
  });
  it('is silent when the bolts have no torque, and on an item that asks for no reason', () => {
    const { torque: _, ...bare } = BOLTS;
    const kart: Kart = { ...kartWith(), joints: { 'hub/bolts': bare } };
    expect(whyWith(kart, seat, 'Due.')).toBe('Due.');
    expect(whyWith(kartWith(), item('hub/cracks', []), 'Due.')).toBe('Due.');
  });
});

describe('the reason of a ballast joint', () => {
  const bolts = item('hub/bolts', [{ on: 'disturbed' }], { joint: 'hub/bolts', reason: 'ballast-fixing' });
  const under = (limits: NonNullable<Kart['rules']>['limits']): Kart => ({
    ...smallKart(),
    rules: { id: 'x', body: 'x', year: 2026, note: '', limits },
  });
  it('is what the rule set asks, with its source', () => {
    const kart = under({
      'ballast bolt diameter': { min: q('10 mm'), source: 'rule 7' },
      'ballast bolts a block': { min: q('3 pieces'), source: 'rule 7' },
      'ballast block mass': { max: q('4 kg'), source: 'rule 8' },
    });
    expect(whyWith(kart, bolts, '')).toBe(
      'Ballast that comes off hits whoever is behind: 3 bolts or more of 10 mm or more through each block, no block over 4 kg (rule 7; rule 8).',
    );
  });
  it('is the strictest of several rule books where the rule set is silent, and says for what', () => {
    expect(whyWith(smallKart(), bolts, '')).toContain(
      '2 bolts or more of 8 mm or more through each block, no block over 5 kg (the strictest of five',
    );
    expect(whyWith(under({ 'ballast block mass': { max: q('4 kg'), source: 'rule 8' } }), bolts, '')).toContain(
      '(rule 8; ballast bolt diameter, ballast bolts a block: the strictest of five',
    );
  });
});
