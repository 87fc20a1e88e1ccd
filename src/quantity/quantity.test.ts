import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Dimension,
  findUnit,
  formatQuantity,
  inchFraction,
  inUnit,
  parseQuantity,
  parseRange,
  UNITS,
  unitsOf,
} from './index.ts';

/** m, as typed: one rounding. */
const inch = (inches: number): number => (inches * 254) / 10000;
const si = (text: string, dimension?: Dimension): number => {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`${parsed.got}: ${parsed.remedy}`);
  return parsed.value.si;
};
const refusal = (text: unknown, dimension?: Dimension): string => {
  const parsed = parseQuantity(text, dimension);
  if (parsed.ok) throw new Error(`took ${JSON.stringify(parsed.value)}`);
  return `${parsed.expected} | ${parsed.got} | ${parsed.remedy}`;
};

describe('reading a quantity', () => {
  it('takes the ways a mechanic writes it', () => {
    expect(si('1045 mm')).toBe(1.045);
    for (const written of ['5 3/4 in', '5-3/4 in', '5.75"', '5.75 inches', '5¾ in', '5 3/4″', '5 - 3/4 in'])
      expect(si(written)).toBe(0.14605);
    for (const written of ['24 N·m', '24 Nm', '24 N.m', '24 N m', '24 N*m', '24N-m']) expect(si(written)).toBe(24);
    expect(si('70 in-lb')).toBeCloseTo(7.908938, 6); // 70 × 0.45359237 × 9.80665 × 0.0254, exact factors
    expect(si('70 in lb')).toBe(si('70 lbf·in'));
    expect(si('0.9 bar')).toBe(90000);
    expect(si('10 psi')).toBeCloseTo(68947.57293, 5);
    expect(si('1,5 mm')).toBe(0.0015);
    expect(si('\u22122.5 mm')).toBe(-0.0025);
    expect(si('-1/8 in')).toBe(-0.003175);
    expect(si('.5 mm')).toBe(0.0005);
    expect(si('1e3 mm')).toBe(1);
    expect(si('-0 mm')).toBe(0);
    expect(si('2 MM')).toBe(0.002);
    expect(si('½ in')).toBe(0.0127);
    expect(si('-½ in')).toBe(-0.0127);
    expect(si('5/4 in')).toBe(0.03175);
    expect(si('5\u00a03/4 in')).toBe(0.14605); // a space that does not break, as a document has it
    expect(si('0 K')).toBe(0);
    expect(si(`${'0'.repeat(93)}1045 mm`)).toBe(1.045); // as long as a text may be
    expect(si('1e15 m')).toBe(1e15); // as large as a number may be
  });

  it('takes a comma for the point wherever that is the only way to read it', () => {
    expect(si('1234,567 mm')).toBe(1.234567);
    expect(si('1,0455 mm')).toBe(0.0010455);
    expect(refusal('12,345 mm')).toContain('write "12345" or "12.345" with the unit');
  });

  it('keeps the text as it was written and names the unit one way', () => {
    expect(parseQuantity('17', 'count')).toEqual({
      ok: true,
      value: { si: 17, unit: '', text: '17', dimension: 'count' },
    });
    expect(parseQuantity(' 24 Nm ')).toEqual({
      ok: true,
      value: { si: 24, unit: 'N·m', text: '24 Nm', dimension: 'torque' },
    });
  });

  it('lets the dimension tell gauge from absolute and a temperature from a difference', () => {
    expect(parseQuantity('1 bar')).toMatchObject({ value: { dimension: 'pressure-gauge' } });
    expect(parseQuantity('1 bar', 'pressure-absolute')).toMatchObject({ value: { dimension: 'pressure-absolute' } });
    expect(si('20 °C')).toBeCloseTo(293.15, 9);
    expect(si('20 °C', 'temperature-difference')).toBe(20);
    expect(si('32 °F')).toBeCloseTo(273.15, 9);
  });

  it('takes g as gravity only where an acceleration is asked for, and shows it so', () => {
    expect(si('1.5 g', 'acceleration')).toBe(14.709975); // 1.5 × 9.80665, 3rd CGPM 1901
    expect(si('1.5 g0', 'acceleration')).toBe(14.709975);
    expect(si('1.5 g')).toBe(0.0015);
    expect(refusal('1.5 g', 'length')).toContain('"g" is a unit of mass');
    expect(refusal('1.5', 'acceleration')).toContain('understood: m/s², g');
    expect(formatQuantity(14.709975, 'g0', 2)).toBe('1.50 g');
  });

  it('refuses a bare number and says which units are understood', () => {
    expect(refusal('1045', 'length')).toMatch(/add the unit; understood: mm, cm, m, .*in/);
    expect(refusal(1045, 'length')).toContain('"1045 mm"');
    expect(refusal('1045')).toContain('mm, in');
    expect(si('0.35', 'ratio')).toBe(0.35);
    expect(si('17', 'count')).toBe(17);
  });

  it('refuses what is no quantity, and what reads two ways', () => {
    for (const bad of [
      '',
      '  ',
      'NaN mm',
      'Infinity mm',
      '1e999 mm',
      'mm',
      '1 2 mm',
      '1.2.3 mm',
      '3/0 in',
      null,
      undefined,
      {},
      { toString: [] },
      [],
      Number.NaN,
      'x'.repeat(500),
      `1${'0'.repeat(200)} mm`,
    ])
      expect(refusal(bad, 'length')).toMatch(/length with its unit/);
    expect(refusal('1,045 mm')).toContain('reads two ways');
    expect(si('0,125 in')).toBe(0.003175);
    expect(refusal('3 parsec', 'length')).toContain('not a unit known here');
    expect(refusal('5 bar', 'length')).toContain('"bar" is a unit of pressure, gauge');
    expect(refusal('5 4/3 in')).toContain('below 1 after a whole number');
    for (const milli of ['5 mPa', '5 mJ', '5 Mbar', '5 ML']) expect(refusal(milli)).toContain('not a unit known here');
    expect(si('10 PSI')).toBe(si('10 psi'));
    expect(refusal('-300 °C')).toContain('absolute zero');
  });
});

describe('a refusal', () => {
  it.each([
    [1045, '1045', 'write it as text with its unit, for example "1045 mm"'],
    [null, 'null', 'write text such as "12 mm"'],
    [undefined, 'undefined', 'write text such as "12 mm"'],
    [[], 'a list', 'write text such as "12 mm"'],
    [{}, 'an object', 'write text such as "12 mm"'],
    ['  ', '"  "', 'write a number and its unit, for example "12 mm"'],
    ['mm', '"mm"', 'begin with a number, for example "12 mm"'],
    [
      '1'.repeat(60),
      `"${'1'.repeat(60)}"`,
      'add the unit; understood: mm, in, kg, lb, N·m, in·lb, bar, psi, °C, °, min, h, l, ml',
    ],
    ['1'.repeat(101), `"${'1'.repeat(60)}…"`, 'write a single quantity, for example "12 mm"'],
    ['3/0 in', '"3/0 in"', 'write a fraction whose lower number is not 0'],
    ['5 4/4 in', '"5 4/4 in"', 'write a fraction below 1 after a whole number, for example "5 3/4 in"'],
    ['1e16 m', '"1e16 m"', 'write a number that is not beyond all measure'],
  ])('of %j says what came and what to do', (text, got, remedy) => {
    expect(parseQuantity(text)).toEqual({ ok: false, expected: 'a number with its unit', got, remedy });
  });

  it('says what the place asks for, in words and with every unit it takes', () => {
    expect(parseQuantity('5 mm', 'temperature-difference')).toEqual({
      ok: false,
      expected: 'temperature difference with its unit (K, °C, °F)',
      got: '"5 mm"',
      remedy: '"mm" is a unit of length; understood: K, °C, °F',
    });
    expect(parseQuantity('-1 bar', 'pressure-absolute')).toMatchObject({
      expected: expect.stringContaining('pressure, absolute with its unit (bar, mbar, '),
      remedy: 'nothing lies below absolute zero of pressure, absolute: check the sign and the unit',
    });
    expect(parseQuantity('', 'torque')).toMatchObject({ remedy: 'write a number and its unit, for example "12 N·m"' });
  });
});

describe('reading a range', () => {
  it('takes one unit for both ends, a unit each, or one quantity', () => {
    expect(parseRange('18..22 N·m')).toMatchObject({
      value: { min: { si: 18, unit: 'N·m', text: '18 N·m' }, max: { si: 22 } },
    });
    expect(parseRange('1 in to 50 mm')).toMatchObject({ value: { min: { si: 0.0254 }, max: { si: 0.05 } } });
    expect(parseRange('1.5..2.5 bar')).toMatchObject({ value: { min: { si: 150000 }, max: { si: 250000 } } });
    expect(parseRange('-2..-1°')).toMatchObject({ ok: true });
    expect(parseRange('20 N·m')).toMatchObject({ ok: true, value: { min: { si: 20 }, max: { si: 20 } } });
    expect(parseRange('+18..22 N·m')).toMatchObject({ ok: true, value: { min: { si: 18 } } });
    expect(parseRange('1in..2in')).toMatchObject({ ok: true, value: { min: { si: 0.0254 } } });
    expect(parseRange('5..5 mm')).toMatchObject({ ok: true });
  });
  it('says of a range that is none what is wrong with it', () => {
    expect(parseRange('22..18 mm')).toEqual({
      ok: false,
      expected: 'the lower end first',
      got: '"22..18 mm"',
      remedy: 'exchange the two ends, or correct the one that is wrong',
    });
    expect(parseRange('1..2..3 mm')).toEqual({
      ok: false,
      expected: 'a range of two ends',
      got: '"1..2..3 mm"',
      remedy: 'write it as "18..22 N·m"',
    });
    expect(parseRange('1..2 parsec')).toMatchObject({ got: '"1..2 parsec"' });
    expect(parseRange('1 kg..2 mm')).toMatchObject({
      got: '"1 kg..2 mm"',
      remedy: expect.stringContaining('"kg" is a unit of mass'),
    });
  });
  it('refuses ends that are exchanged, too many, of two dimensions or bare', () => {
    for (const bad of ['22..18 mm', '1..2..3 mm', '1 kg..2 mm', '1..2', '..2 mm', 5])
      expect(parseRange(bad)).toMatchObject({ ok: false });
  });
});

describe('writing a quantity', () => {
  it('rounds only what is shown', () => {
    expect(formatQuantity(0.14605, 'mm')).toBe('146.05 mm');
    expect(formatQuantity(1.397, 'mm')).toBe('1397 mm');
    expect(formatQuantity(1.397, 'mm', 1)).toBe('1397.0 mm');
    expect(formatQuantity(-0.0000001, 'mm')).toBe('0 mm');
    expect(formatQuantity(Number.NaN, 'mm')).toBe('not known');
    expect(() => inUnit(1, 'parsec')).toThrow(/^inUnit: unit must be one of the table, got "parsec"$/);
    expect(() => formatQuantity(1, 'bar', 1, 'length')).toThrow(
      'formatQuantity: unit must be one of the table for length, got "bar"',
    );
  });

  it('sets degrees and ratios close, keeps the minus of what is shown, and needs no unit', () => {
    expect(formatQuantity(Math.PI / 2, '°')).toBe('90°');
    expect(formatQuantity(2.5, ':1')).toBe('2.5:1');
    expect(formatQuantity(-0.0015, 'mm')).toBe('-1.5 mm');
    expect(formatQuantity(0.125, '')).toBe('0.125');
    expect(formatQuantity(0.12345, '')).toBe('0.123');
    expect(formatQuantity((100 * 2 * Math.PI) / 60, 'rpm')).toBe('100 rpm'); // noughts before the point stay
  });

  it('gives back what was read, in every unit', () => {
    fc.assert(
      fc.property(fc.constantFrom(...UNITS), fc.double({ min: 0.001, max: 99999, noNaN: true }), (u, value) => {
        const read = si(`${value} ${u.symbol}`, u.dimension);
        expect(Math.abs(inUnit(read, u.symbol, u.dimension) - value)).toBeLessThanOrEqual(
          1e-11 * Math.max(value, 1000),
        );
        expect(si(formatQuantity(read, u.symbol, 12, u.dimension), u.dimension) - read).toBeCloseTo(0, 6);
      }),
    );
  });

  it('scales: twice the number is twice the quantity, the sign turns it round', () => {
    const plain = UNITS.filter(
      u => u.plus === 0 && u.dimension !== 'pressure-absolute' && u.dimension !== 'temperature',
    );
    fc.assert(
      fc.property(fc.constantFrom(...plain), fc.integer({ min: 1, max: 100000 }), (u, n) => {
        expect(si(`${2 * n} ${u.symbol}`, u.dimension)).toBe(2 * si(`${n} ${u.symbol}`, u.dimension));
        expect(si(`-${n} ${u.symbol}`, u.dimension)).toBe(-si(`${n} ${u.symbol}`, u.dimension));
      }),
    );
  });
});

describe('a tape in inch fractions', () => {
  it('gives lowest terms, halves rounded up', () => {
    expect(inchFraction(0.14605, 16)).toEqual({ sign: 1, whole: 5, num: 3, den: 4, text: '5 3/4 in', errorMetres: 0 });
    expect(inchFraction(inch(0.03125), 16).text).toBe('1/16 in');
    expect(inchFraction(inch(-0.03125), 16).text).toBe('-1/16 in');
    expect(inchFraction(0.0001, 16)).toMatchObject({ sign: 0, text: '0 in' });
    expect(() => inchFraction(Number.NaN, 16)).toThrow('finite');
    expect(() => inchFraction(1, 0)).toThrow('whole number');
    expect(inchFraction(inch(2.6), 1)).toMatchObject({ whole: 3, num: 0, den: 1, text: '3 in' }); // a tape of whole inches
  });

  it('is never further than half a division away, and reads back to what it shows', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.constantFrom(2, 4, 8, 16, 32, 64), (length, den) => {
        const f = inchFraction(length, den);
        expect(Math.abs(f.errorMetres)).toBeLessThanOrEqual(inch(0.5 / den) * (1 + 1e-8));
        expect(si(f.text, 'length')).toBeCloseTo(length + f.errorMetres, 12);
        expect(inchFraction(-length, den).text.replace('-', '')).toBe(f.text.replace('-', ''));
      }),
    );
  });

  it('rounds every exact half up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2000 }), fc.constantFrom(8, 16, 32), (n, den) => {
        const f = inchFraction(inch((n + 0.5) / den), den);
        expect((f.whole + f.num / f.den) * den).toBe(n + 1);
      }),
    );
  });
});

describe('the table of units', () => {
  it('never lets two units of one dimension share a spelling', () => {
    const seen = new Set<string>();
    for (const u of UNITS)
      for (const s of new Set([u.symbol, ...u.also])) {
        expect(seen.has(`${u.dimension} ${s}`), `${u.dimension} ${s}`).toBe(false);
        seen.add(`${u.dimension} ${s}`);
      }
    expect(seen.size).toBeGreaterThan(100);
    expect(unitsOf('length')[0]).toBe('mm');
  });

  it('finds a unit whose capitals are hurried, but takes no single letter and no milli for another', () => {
    for (const [written, symbol] of [
      ['KG', 'kg'],
      ['Cm', 'cm'],
      ['KM', 'km'],
      ['Mpa', 'MPa'],
      [' mm ', 'mm'],
      ['in   lb', 'in·lb'],
    ] as const)
      expect(findUnit(written)?.symbol, written).toBe(symbol);
    for (const written of ['H', 'n', 'k', 'MBAR', 'mpA']) expect(findUnit(written), written).toBeUndefined();
  });

  it('has no two units that only capitals tell apart, but for g: whichever is found is the one meant', () => {
    const symbols = new Map<string, Set<string>>();
    for (const { symbol, also } of UNITS)
      for (const written of [symbol, ...also])
        symbols.set(written.toLowerCase(), (symbols.get(written.toLowerCase()) ?? new Set()).add(symbol));
    expect([...symbols].filter(([, found]) => found.size > 1).map(([written]) => written)).toEqual(['g']);
  });
});
