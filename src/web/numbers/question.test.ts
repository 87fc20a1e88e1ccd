import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { subjects } from '../../numbers/index.ts';
import { parseQuantity } from '../../quantity/index.ts';
import { allFields, type Form, formOf, limitsIn } from './fields.ts';
import { problemsElsewhere, questionOf, typedFrom, typedOf, withoutRow } from './question.ts';

const named = (name: string) => {
  const found = subjects.find(one => one.name === name);
  if (found === undefined) throw new Error(`no subject is called ${name}`);
  return found;
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
