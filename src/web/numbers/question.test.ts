import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { smallKart } from '../../../test/small-kart.ts';
import type { Kart } from '../../kart/index.ts';
import { subjects } from '../../numbers/index.ts';
import { type Measure, parseQuantity } from '../../quantity/index.ts';
import { allFields, type Form, formOf, limitsIn } from './fields.ts';
import { fromKart, problemsElsewhere, questionOf, typedFrom, typedOf, withoutRow } from './question.ts';

const named = (name: string) => {
  const found = subjects.find(one => one.name === name);
  if (found === undefined) throw new Error(`no subject is called ${name}`);
  return found;
};

const size = (text: string): Measure => {
  const read = parseQuantity(text, 'length');
  if (!read.ok) throw new Error(read.remedy);
  return read.value;
};

describe('the form of every number', () => {
  test('there are numbers to ask', () => expect(subjects.length).toBeGreaterThan(4));

  for (const subject of subjects)
    test(`${subject.name}: its example, typed into the form, is the same question and is answered`, () => {
      const typed = typedOf(subject.example);
      expect(questionOf(formOf(subject), typed)).toEqual(subject.example);
      expect(subject.ask(questionOf(formOf(subject), typed)).kind).toBe('answer');
    });

  for (const subject of subjects)
    test(`${subject.name}: what a bare number is refused for has a field to stand beside`, () => {
      const form = formOf(subject);
      const typed = Object.fromEntries(
        Object.entries(typedOf(subject.example)).map(([path, text]) => [path, /^\D*\d/.test(text) ? '7' : text]),
      );
      const asked = subject.ask(questionOf(form, typed));
      expect(asked.kind).toBe('problems');
      if (asked.kind === 'problems') expect(problemsElsewhere(form, typed, asked.problems)).toEqual([]);
    });

  for (const subject of subjects)
    test(`${subject.name}: each field says what it means or what may be chosen`, () => {
      const mute = (form: Form): readonly string[] =>
        allFields(form).flatMap(field => {
          if (field.is === 'group' || field.is === 'list') return mute(field.form);
          return field.meaning !== '' || field.is === 'choice' || field.key === 'name' ? [] : [field.key];
        });
      expect(mute(formOf(subject))).toEqual([]);
    });

  test('how limits are written is shown in the words of the subject, and not where none can be used', () => {
    expect(limitsIn(formOf(named('tolerance')))).toBe('40 mm ± 0.1 mm');
    expect(limitsIn(formOf(named('rear-track')))).toBe('655 mm ± 0.5 mm');
    expect(limitsIn(formOf(named('scales')))).toMatch(/^[\d.]+ kg ± 0.1 kg$/);
    expect(limitsIn(formOf(named('retention')))).toBeUndefined();
  });

  for (const subject of subjects)
    test(`${subject.name}: limits are in the unit of what they belong to`, () => {
      const shown = (form: Form): readonly string[] =>
        allFields(form).flatMap(field => {
          if (field.is === 'group' || field.is === 'list') return shown(field.form);
          return field.is === 'text' && field.limits !== undefined ? [field.limits] : [];
        });
      for (const text of shown(formOf(subject))) {
        const [size, half] = text.split(' ± ').map(part => parseQuantity(part));
        if (!size?.ok) expect(text).toMatch(/^[\d.]+ ± [\d.]+$/);
        else expect(half?.ok && half.value.unit, text).toBe(size.value.unit);
      }
    });
});

test('what the kart file says is filled in by name, and its rule set gives the limit', () => {
  const rear = named('rear-track');
  const kart: Kart = {
    ...smallKart(),
    dimensions: { 'bearing faces': size('655 mm') },
    rules: {
      id: 'invented',
      body: 'An invented club',
      year: 2026,
      note: 'Invented.',
      limits: { 'overall rear width': { max: size('1400 mm'), source: 'invented' } },
    },
  };
  expect(fromKart(formOf(rear), rear, kart)).toEqual({ 'bearing faces': '655 mm', 'width limit': '1400 mm' });
});

test('a size of the front brakes comes from the front of the kart', () => {
  const brakes = named('brakes');
  const kart: Kart = { ...smallKart(), dimensions: { 'front tyre diameter': size('260 mm') } };
  expect(fromKart(formOf(brakes), brakes, kart)).toEqual({ 'front/tyre diameter': '260 mm' });
});

test('toe can be asked with what the kart file says filled in: what belongs to squareness alone is left to the person', () => {
  const alignment = named('alignment');
  const kart: Kart = { ...smallKart(), dimensions: { 'kingpin spacing': size('640 mm') } };
  const form = formOf(alignment);
  const typed = fromKart(form, alignment, kart);
  expect(typed).toEqual({});
  const toe = { ...typed, 'measuring diameter': '255 mm', 'front apart': '1000 mm', 'rear apart': '1002 mm' };
  expect(alignment.ask(questionOf(form, toe)).kind).toBe('answer');
});

test('gears and jets come from the engine sheet and the box of the kart file', () => {
  const kart: Kart = {
    ...smallKart(),
    engine: { primary: 3.9, gears: [2.29, 1.78], jetsNumberedBy: 'diameter' },
    box: { mainJets: [160, 165], frontSprockets: [17], rearSprockets: [] },
  };
  const [gearing, carburation] = [named('gearing'), named('carburation')];
  expect(fromKart(formOf(gearing), gearing, kart)).toEqual({
    drive: 'gearbox',
    'primary ratio': '3.9',
    gears: '2.29 1.78',
  });
  expect(fromKart(formOf(carburation), carburation, kart)).toEqual({
    'numbered by': 'diameter',
    'jets in the box': '160 165',
  });
  const typed = { ...fromKart(formOf(gearing), gearing, kart), 'front sprocket': '17', 'rear sprocket': '25' };
  const asked = { ...typed, 'rolling circumference': '860 mm', 'engine speed': '13000 rpm' };
  expect(gearing.ask(questionOf(formOf(gearing), asked)).kind).toBe('answer');
});

test('a row taken out leaves the others as they were typed, in their order', () => {
  const rows = fc.array(fc.record({ name: fc.string({ minLength: 1 }), size: fc.string({ minLength: 1 }) }), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(rows, fc.nat(), (links, pick) => {
      const row = pick % links.length;
      const left = withoutRow(typedOf({ links, min: '1 mm' }), 'links', row);
      expect(left).toEqual(typedOf({ links: links.filter((_, n) => n !== row), min: '1 mm' }));
    }),
  );
});

test('what the device kept comes back, and what it cannot be is as if nothing was kept', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), fc.string()), typed => {
      expect(typedFrom(JSON.stringify(typed))).toEqual(JSON.parse(JSON.stringify(typed)));
    }),
  );
  for (const kept of ['', '{', '[]', '7', 'null', '{"gap":7}', '{"links":[{}]}'])
    expect(typedFrom(kept)).toBeUndefined();
});
