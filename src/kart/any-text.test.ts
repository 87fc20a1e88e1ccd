import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bad, good, HEAD, KINDS, library, only, TEMPLATE, withKinds } from '../../test/fixtures/kart-text.ts';
import { newKartFile, readKart } from './index.ts';

describe('no text makes the reader throw', () => {
  const fragment = fc.constantFrom(
    ...[
      'kart: 1\n',
      'name: x\n',
      'template: small\n',
      'parts:\n',
      '  clip:\n',
      '    behind: [',
      'self',
      ']',
      '{',
      '}',
      ': ',
      '- ',
    ],
    ...[
      'none',
      '1045 mm',
      '\n',
      '  ',
      '*a',
      '&a ',
      '!!set ',
      '---\n',
      '"',
      "'",
      '#',
      '__proto__: 1\n',
      '? ',
      '| ',
      '\t',
      'functions:\n',
    ],
    ...[
      '  f: { severity: 1, needs: ',
      '{ all of: [clip] }',
      'null',
      '1e999',
      '\u0000',
      '\ud800',
      'items: ',
      'measure: ',
    ],
  );
  test('nonsense of YAML pieces', () => {
    fc.assert(
      fc.property(fc.array(fragment, { maxLength: 40 }), pieces => {
        const read = readKart(pieces.join(''), library);
        if (!read.ok) for (const p of read.problems) expect(p.line * p.column * p.remedy.length).toBeGreaterThan(0);
      }),
      { numRuns: 600 },
    );
  });

  test('any text at all, alone and below a good head', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), text => {
        readKart(text, library);
        readKart(HEAD + text, library);
        readKart(HEAD, withKinds(text));
      }),
    );
  });

  test('any value at any key', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('parts', 'functions', 'dimensions', 'rules', 'name'),
        fc.json({ maxDepth: 6 }),
        (key, json) => {
          readKart(`kart: 1\ntemplate: small\n${key}: ${json}\n`, library);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('one value of a good template or kind replaced by any other', () => {
    const other = fc.oneof(
      fc.json({ maxDepth: 2 }),
      fc.constantFrom('none', '[self]', '[[self]]', '[[]]', '1 mm', '{}', 'wet'),
    );
    fc.assert(
      fc.property(fc.boolean(), fc.nat(), other, (kinds, at, value) => {
        const text = kinds ? KINDS : TEMPLATE;
        const spots = [...text.matchAll(/(?<=: )(?:\[\[.*?\]\]|\[.*?\]|\{.*?\}|[^,{}[\]\n]+)/g)];
        const spot = spots[at % spots.length];
        const broken = text.slice(0, spot?.index) + value + text.slice((spot?.index ?? 0) + (spot?.[0].length ?? 0));
        readKart(HEAD, kinds ? withKinds(broken) : { ...library, templates: { 's.yaml': broken } });
        readKart(broken.replace('template: small', 'kart: 1\nname: "7"'), library);
      }),
      { numRuns: 250 },
    );
  });

  test.each(['', '[', '{'.repeat(100), '['.repeat(200_000), 'a: '.repeat(3000), '- '.repeat(50_000), '12', 'null'])(
    '%.9s',
    text => {
      expect(bad(text).length).toBeGreaterThan(0);
    },
  );

  test('a text longer than a book holds', () => {
    expect(only(`# ${'x'.repeat(2_000_001)}`).expected).toContain('2000000 characters');
  });
});

describe('a new kart file', () => {
  test('it reads at once, with the dimensions of the template marked to be measured', () => {
    const made = newKartFile('small', '7', library, '../kart.schema.json');
    if (!made.ok) throw new Error(made.problems[0]?.message);
    expect(made.text).toMatch(/^# yaml-language-server: \$schema=\.\.\/kart\.schema\.json\n/);
    expect(made.text.match(/# measure yours/g)).toHaveLength(2);
    expect(good(made.text)).toEqual(good(HEAD));
  });

  test('any name comes back as it was given', () => {
    const names = fc.string({ minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(fc.oneof(names, fc.constantFrom('41', 'yes', 'null', '1e3', '# x', 'a: b')), name => {
        const made = newKartFile('small', name, library);
        expect(made.ok && good(made.text).name).toBe(name);
      }),
    );
  });

  test('an unknown template suggests the nearest', () => {
    expect(newKartFile('smal', '7', library)).toMatchObject({
      ok: false,
      problems: [{ remedy: expect.stringContaining('"small"') }],
    });
  });
});
