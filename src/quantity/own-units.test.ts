import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  figureInOwnUnits,
  inOwnUnit,
  limitsInOwnUnit,
  type OwnUnits,
  ownUnit,
  readOwnUnits,
  textInOwnUnits,
} from './own-units.ts';
import { parseQuantity } from './parse.ts';

const IMPERIAL: OwnUnits = {
  size: 'in',
  distance: 'ft',
  torque: 'ft·lb',
  pressure: 'psi',
  temperature: '°F',
  mass: 'lb',
  volume: 'US gal',
  speed: 'mph',
};
const METRIC: OwnUnits = {
  size: 'mm',
  distance: 'm',
  torque: 'N·m',
  pressure: 'bar',
  temperature: '°C',
  mass: 'kg',
  volume: 'l',
  speed: 'km/h',
};
const measure = (text: string) => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`measure: text must be a quantity, got ${text}`);
  return read.value;
};
const shown = (text: string, own: OwnUnits): string => inOwnUnit(measure(text), own);

// NIST SP 811 (2008), Appendix B.8, factors as printed there to seven figures; inch, foot, pound and gallon exact.
test.each([
  ['1 psi', { pressure: 'kPa' }, 6.894757, 'kPa'],
  ['100 psi', { pressure: 'bar' }, 6.894757, 'bar'],
  ['100 ft·lb', { torque: 'N·m' }, 135.5818, 'N·m'],
  ['100 in·lb', { torque: 'N·m' }, 11.29848, 'N·m'],
  ['100 lb', { mass: 'kg' }, 45.35924, 'kg'],
  ['100 US gal', { volume: 'l' }, 378.5412, 'l'],
  ['100 mph', { speed: 'km/h' }, 160.9344, 'km/h'],
  ['100 ft', { distance: 'm' }, 30.48, 'm'],
] as const)('%s by the factor of NIST SP 811', (text, own, value, unit) => {
  const said = shown(text, own);
  const decimals = said.split(' ')[0]?.split('.')[1]?.length ?? 0;
  expect(said.endsWith(` ${unit}`)).toBe(true);
  expect(Math.abs(Number(said.split(' ')[0]) - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals);
});

test('a size is said in the unit that was chosen, no finer than it was written', () => {
  expect(shown('146.05 mm', IMPERIAL)).toBe('5 3/4 in');
  expect(shown('147 mm', IMPERIAL)).toBe('5.79 in');
  expect(shown('0.65 bar', IMPERIAL)).toBe('9.4 psi');
  expect(shown('0.65 bar', { pressure: 'kPa' })).toBe('65 kPa');
  expect(shown('24 N·m', IMPERIAL)).toBe('17.7 ft·lb');
  expect(shown('21 °C', IMPERIAL)).toBe('70 °F');
  expect(shown('5 3/4 in', METRIC)).toBe('146.1 mm');
});

test('a rise in kelvins is a rise in degrees, without the zero of the scale', () => {
  const rise = { si: 10, unit: 'K', text: '10 K' };
  expect(inOwnUnit(rise, { temperature: '°C' })).toBe('10 °C');
  expect(inOwnUnit(rise, { temperature: '°F' })).toBe('18 °F');
  expect(inOwnUnit({ ...rise, text: '10 °C' }, { temperature: '°F' })).toBe('18 °F'); // as the numbers say a rise
});

test('a barometer has units of its own: the pressure of tyres leaves it alone', () => {
  // 1 inHg = 3386.389 Pa: NIST SP 811 (2008), Appendix B.8
  expect(shown('1013.25 hPa', { barometer: 'inHg' })).toBe('29.92 inHg');
  expect(textInOwnUnits('17 °C, 1007 hPa (station)', { barometer: 'inHg' })).toBe('17 °C, 29.74 inHg (station)');
  expect(shown('1013 hPa', IMPERIAL)).toBe('1013 hPa');
  expect(ownUnit('hPa', IMPERIAL)).toBe('hPa');
  expect(textInOwnUnits('0.65 bar in 1007 hPa', { pressure: 'psi' })).toBe('9.4 psi in 1007 hPa');
});

test('a choice is read from one line; a unit that cannot be chosen, or two of a kind, is told', () => {
  expect(readOwnUnits('in, psi, °F, ft-lb')).toEqual({
    ok: true,
    units: { size: 'in', pressure: 'psi', temperature: '°F', torque: 'ft·lb' },
  });
  expect(readOwnUnits(' ; ')).toEqual({ ok: true, units: {} });
  expect(readOwnUnits('in, furlong')).toMatchObject({
    ok: false,
    got: 'furlong',
    expected: expect.stringMatching('mm or in'),
  });
  expect(readOwnUnits('mm, in')).toEqual({ ok: false, got: 'mm and in', expected: 'mm or in' });
  const every = Object.values(IMPERIAL).join(', ');
  expect(readOwnUnits(every)).toEqual({ ok: true, units: IMPERIAL });
});

test('where nothing was chosen, and for a unit that has no other, the text stays as it was', () => {
  expect(shown('146.05 mm', {})).toBe('146.05 mm');
  expect(shown('12 °', IMPERIAL)).toBe('12 °');
  expect(ownUnit('mm', IMPERIAL)).toBe('in');
});

test('every quantity of a text is said anew, and the rest stays', () => {
  const said = (text: string): string => textInOwnUnits(text, IMPERIAL);
  expect(said('142.55 mm (5 5/8 in)')).toBe('5.612 in (5 5/8 in)');
  expect(said('18 N·m to 22 N·m, computed')).toBe('13.3 ft·lb to 16.2 ft·lb, computed');
  expect(said('18 to 22 N·m')).toBe('13.3 ft·lb to 16.2 ft·lb');
  expect(said('all 0.65 bar')).toBe('all 9.4 psi');
  expect(said('at least 20 N·m, at most 24 N·m')).toBe('at least 14.8 ft·lb, at most 17.7 ft·lb');
  expect(said('20 N·m to 20 N·m')).toBe('20 N·m to 20 N·m');
  expect(said('± 0.5 mm')).toBe('± 0.019 in');
  expect(said('70 °C ± 5 °C')).toBe('158 °F ± 9 °F');
  expect(said('M8x1.25, 12 teeth, 1013 hPa')).toBe('M8x1.25, 12 teeth, 1013 hPa');
  expect(said('1.18 kg/m³')).toBe('1.18 kg/m³');
});

test('a tolerance that is shown lies inside the true one, whatever it is and whichever unit was chosen', () => {
  const units = ['mm', 'in', 'N·m', 'ft·lb', 'bar', 'psi', 'kPa', '°C', 'kg', 'lb', 'l'] as const;
  const cases = fc.record({
    unit: fc.constantFrom(...units),
    low: fc.integer({ min: 1, max: 200000 }),
    width: fc.integer({ min: 0, max: 5000 }),
    decimals: fc.integer({ min: 0, max: 2 }),
    own: fc.constantFrom(IMPERIAL, METRIC, { ...IMPERIAL, torque: 'in·lb', pressure: 'kPa' }),
  });
  fc.assert(
    fc.property(cases, ({ unit, low, width, decimals, own }) => {
      const end = (n: number) => measure(`${(n / 100).toFixed(decimals)} ${unit}`);
      const [min, max] = [end(low), end(low + width)];
      const said = limitsInOwnUnit({ min, max }, own);
      const [lowest, highest] = [measure(said.min ?? ''), measure(said.max ?? '')];
      const bit = 1e-11 * Math.max(Math.abs(min.si), Math.abs(max.si));
      expect(lowest.si).toBeGreaterThanOrEqual(min.si - bit);
      expect(highest.si).toBeLessThanOrEqual(max.si + bit);
      expect(lowest.si).toBeLessThanOrEqual(highest.si + bit);
    }),
  );
});

test('limits round to their strict side, and one end alone does too', () => {
  const limits = (min: string | null, max: string | null) =>
    limitsInOwnUnit({ min: min === null ? null : measure(min), max: max === null ? null : measure(max) }, IMPERIAL);
  expect(limits('141.5 mm', '143.5 mm')).toEqual({ min: '5.571 in', max: '5.649 in' }); // 5.57087, 5.64961
  expect(limits(null, '1400 mm')).toEqual({ min: null, max: '55.11 in' }); // 55.11811
  expect(limits('20 N·m', '24 N·m')).toEqual({ min: '14.8 ft·lb', max: '17.7 ft·lb' }); // 14.7512, 17.7015
});

test('a fraction of an inch is as fine as a tenth of its own mark, below nothing too', () => {
  // 1/32 in = 0.79375 mm
  expect(shown('5/32 in', METRIC)).toBe('3.97 mm');
  expect(shown('12 11/32 in', METRIC)).toBe('313.53 mm');
  expect(shown('-5/32 in', METRIC)).toBe('-3.97 mm');
  expect(shown('-1.5 mm', IMPERIAL)).toBe('-0.059 in');
});

test('noughts at the end are left out, and no others', () => {
  expect(shown('2.54 mm', IMPERIAL)).toBe('0.1 in');
  expect(shown('8.89 mm', IMPERIAL)).toBe('0.35 in');
  expect(shown('508 mm', IMPERIAL)).toBe('20 in');
});

test('a limit that comes out even is that, and two ends that are one stay one', () => {
  const bar = (min: string, max: string) =>
    limitsInOwnUnit({ min: measure(min), max: measure(max) }, { pressure: 'kPa' });
  expect(bar('2 bar', '3 bar')).toEqual({ min: '200 kPa', max: '300 kPa' });
  expect(bar('1 bar', '1 bar')).toEqual({ min: '100 kPa', max: '100 kPa' });
  expect(limitsInOwnUnit({ min: measure('146.05 mm'), max: null }, IMPERIAL)).toEqual({ min: '5 3/4 in', max: null });
  expect(textInOwnUnits('1 bar to 1 bar', { pressure: 'kPa' })).toBe('100 kPa to 100 kPa');
});

test('what is written in the chosen unit already stays letter by letter, and a minus of print is a minus', () => {
  expect(textInOwnUnits('5 to 6 in', IMPERIAL)).toBe('5 to 6 in');
  expect(textInOwnUnits('\u22125 °C', IMPERIAL)).toBe('23 °F');
  expect([ownUnit('Nm', IMPERIAL), ownUnit('Nm', METRIC)]).toEqual(['ft·lb', 'Nm']);
});

test('a figure kept in kelvins is a rise, whatever its text says', () => {
  const figure = { si: 10, unit: 'K', text: '10 °C' };
  expect(figureInOwnUnits(figure, { temperature: '°F' })).toBe('18 °F');
  expect(figureInOwnUnits({ ...figure, si: 283.15, unit: '°C' }, { temperature: '°F' })).toBe('50 °F');
});

test('a choice may be said twice; what can be chosen is told kind by kind', () => {
  expect(readOwnUnits('in, in')).toEqual({ ok: true, units: { size: 'in' } });
  expect(readOwnUnits('furlong')).toMatchObject({
    expected:
      'mm or in; m or ft; N·m or ft·lb or in·lb; bar or psi or kPa; hPa or inHg; °C or °F; kg or lb; l or US gal; km/h or mph',
  });
});
