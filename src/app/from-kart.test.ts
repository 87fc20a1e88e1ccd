import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallKart } from '../../test/small-kart.ts';
import type { Kart } from '../kart/index.ts';
import { subjects } from '../numbers/index.ts';
import { type Dimension, type Measure, parseQuantity } from '../quantity/index.ts';
import { askWithKart, fromKart } from './from-kart.ts';

const named = (name: string) => {
  const found = subjects.find(one => one.name === name);
  if (found === undefined) throw new Error(`no subject is called ${name}`);
  return found;
};

const measure = (text: string, dimension: Dimension = 'length'): Measure => {
  const read = parseQuantity(text, dimension);
  if (!read.ok) throw new Error(read.remedy);
  return read.value;
};

const rules = (limits: NonNullable<Kart['rules']>['limits']): Pick<Kart, 'rules'> => ({
  rules: { id: 'invented', body: 'An invented club', year: 2026, note: 'Invented.', limits },
});

describe('what the kart says of a question', () => {
  test('its dimensions by name, and its rule set for the limit', () => {
    const kart: Kart = {
      ...smallKart(),
      dimensions: { 'bearing faces': measure('655 mm') },
      ...rules({ 'overall rear width': { max: measure('1400 mm'), source: 'invented' } }),
    };
    expect(fromKart(named('rear-track'), kart)).toEqual({ 'bearing faces': '655 mm', 'width limit': '1400 mm' });
  });

  test('least mass and how ballast is fixed come from the rule set, and the answer then assumes none of them', () => {
    const kart: Kart = {
      ...smallKart(),
      ...rules({
        mass: { min: measure('175 kg', 'mass'), source: 'invented' },
        'ballast bolt diameter': { min: measure('8 mm'), source: 'invented' },
        'ballast bolts a block': { min: measure('2 pieces', 'count'), source: 'invented' },
        'ballast block mass': { max: measure('5 kg', 'mass'), source: 'invented' },
      }),
    };
    const scales = named('scales');
    const said = fromKart(scales, kart);
    expect(said).toEqual({
      'least mass': '175 kg',
      'bolt diameter': '8 mm',
      'bolts a block': '2 pieces',
      'largest block': '5 kg',
    });
    const { 'least mass': _, ...weighed } = scales.example;
    const { answered: answer, taken } = askWithKart(scales, weighed, said);
    expect(taken).toEqual(said);
    expect(answer).toMatchObject({ kind: 'answer', figures: { 'margin at the flag': {} } });
    expect(answer.kind === 'answer' && answer.notes.join(' ')).not.toContain('Not given');
  });

  test('a bolt of a hub is no bolt of the ballast', () => {
    const kart = {
      ...smallKart(),
      ...rules({ 'ballast bolt diameter': { min: measure('8 mm'), source: 'invented' } }),
    };
    expect(fromKart(named('hub-hold'), kart)).toEqual({});
  });

  test('a size of the front brakes comes from the front of the kart', () => {
    const kart: Kart = { ...smallKart(), dimensions: { 'front tyre diameter': measure('260 mm') } };
    expect(fromKart(named('brakes'), kart)).toEqual({ 'front/tyre diameter': '260 mm' });
  });

  test('toe can be asked: what belongs to squareness alone is left to the person', () => {
    const alignment = named('alignment');
    const said = fromKart(alignment, { ...smallKart(), dimensions: { 'kingpin spacing': measure('640 mm') } });
    expect(said).toEqual({});
    const toe = { 'measuring diameter': '255 mm', 'front apart': '1000 mm', 'rear apart': '1002 mm' };
    expect(askWithKart(alignment, toe, said).answered.kind).toBe('answer');
  });

  test('gears and jets come from the engine sheet and the box of the kart file', () => {
    const kart: Kart = {
      ...smallKart(),
      engine: { primary: 3.9, gears: [2.29, 1.78], jetsNumberedBy: 'diameter' },
      box: { mainJets: [160, 165], frontSprockets: [17], rearSprockets: [] },
    };
    const gears = fromKart(named('gearing'), kart);
    expect(gears).toEqual({ drive: 'gearbox', 'primary ratio': '3.9', gears: '2.29 1.78' });
    expect(fromKart(named('carburation'), kart)).toEqual({
      'numbered by': 'diameter',
      'jets in the box': '160 165',
    });
    const asked = { 'front sprocket': '17', 'rear sprocket': '25', 'rolling circumference': '860 mm' };
    const { answered } = askWithKart(named('gearing'), { ...asked, 'engine speed': '13000 rpm' }, gears);
    expect(answered.kind).toBe('answer');
  });
});

describe('put into a question', () => {
  const heard: unknown[] = [];
  const listening = {
    ask: (question: unknown) => {
      heard.push(question);
      return { kind: 'answer' as const, figures: {}, say: [], notes: [] };
    },
  };
  const said = { wheelbase: '1045 mm', 'front/tyre diameter': '260 mm', 'front/bore': '16 mm' };

  test('what the question says itself stands, in groups too, and what was taken is named', () => {
    const { taken } = askWithKart(listening, { wheelbase: '1050 mm', front: { bore: '19 mm' } }, said);
    expect(heard.at(-1)).toEqual({ wheelbase: '1050 mm', front: { bore: '19 mm', 'tyre diameter': '260 mm' } });
    expect(taken).toEqual({ 'front/tyre diameter': '260 mm' });
  });

  test('a total alone is answered though the kart names shares that need four readings; its least mass still counts', () => {
    const scales = named('scales');
    const of = { 'front target': '43 %', 'left target': '50 %', 'least mass': '175 kg' };
    const { answered, taken } = askWithKart(scales, { total: '181 kg' }, of);
    expect(answered.kind).toBe('answer');
    expect(taken).toEqual({ 'least mass': '175 kg' });
  });

  test('a wrong question is refused for itself, never for what the kart says', () => {
    const { answered } = askWithKart(named('scales'), { total: '-3 kg' }, { 'front target': '43 %' });
    expect(answered.kind === 'problems' && answered.problems.map(({ path }) => path)).toEqual(['total']);
  });

  test('a question of another shape goes on as it is', () => {
    fc.assert(
      fc.property(fc.oneof(fc.array(fc.anything()), fc.string(), fc.integer(), fc.constant(null)), question => {
        expect(askWithKart(listening, question, said).taken).toEqual({});
        expect(heard.at(-1)).toBe(question);
      }),
    );
  });
});
