/**
 * The units a person may write, as data. SI value = written value × mul / div + plus.
 *
 * Kept as a quotient of two short decimals so that one division rounds once: 1045 mm is exactly the number 1.045.
 * Factors: inch, foot, pound, mile and standard gravity are exact by definition (international yard and pound
 * agreement 1959; 3rd CGPM 1901; BIPM, The International System of Units, 9th ed. 2019; NIST SP 811, 2008, App. B).
 */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'force'
  | 'torque'
  | 'pressure-gauge'
  | 'pressure-absolute'
  | 'temperature'
  | 'temperature-difference'
  | 'angle'
  | 'time'
  | 'speed'
  | 'acceleration'
  | 'density'
  | 'flow'
  | 'power'
  | 'energy'
  | 'frequency'
  | 'rotational-speed'
  | 'stiffness'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'sound-level'
  | 'ratio'
  | 'count'
  | 'money';

export type Unit = {
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly mul: number;
  readonly div: number;
  readonly plus: number; // SI, after scaling; only °C and °F
  readonly decimals: number; // shown when nobody asks for a number of digits
  readonly also: readonly string[]; // other ways to write it
};

const LBF = 4.4482216152605; // N, exact: 0.45359237 kg × 9.80665 m/s²
const PSI_DIV = 0.00064516; // m², exact: (0.0254 m)²

const unit = (
  dimension: Dimension,
  symbol: string,
  mul: number,
  div: number,
  decimals: number,
  also: readonly string[] = [],
  plus = 0,
): Unit => ({ symbol, dimension, mul, div, plus, decimals, also });

const pressures = (dimension: 'pressure-gauge' | 'pressure-absolute'): readonly Unit[] => [
  unit(dimension, 'bar', 100000, 1, 3),
  unit(dimension, 'mbar', 100, 1, 1),
  unit(dimension, 'Pa', 1, 1, 0),
  unit(dimension, 'hPa', 100, 1, 1),
  unit(dimension, 'kPa', 1000, 1, 1),
  unit(dimension, 'MPa', 1000000, 1, 3),
  unit(
    dimension,
    'psi',
    LBF,
    PSI_DIV,
    2,
    ['lbf/in²', 'lbf/in2', 'psig', 'psia'].filter(s => s !== (dimension === 'pressure-gauge' ? 'psia' : 'psig')),
  ),
];

/** Every unit understood. Where two dimensions share a symbol, the one that stands first is meant when nothing else says. */
export const UNITS: readonly Unit[] = [
  unit('length', 'mm', 1, 1000, 2, ['MM', 'millimetre', 'millimetres', 'millimeter', 'millimeters']),
  unit('length', 'cm', 1, 100, 2),
  unit('length', 'm', 1, 1, 4, ['metre', 'metres', 'meter', 'meters']),
  unit('length', 'km', 1000, 1, 3),
  unit('length', 'µm', 1, 1000000, 1, ['μm', 'um']),
  unit('length', 'in', 254, 10000, 3, ['inch', 'inches', '"', '″', '”', "''"]),
  unit('length', 'ft', 3048, 10000, 3, ['foot', 'feet', "'", '′', '’']),
  unit('area', 'mm²', 1, 1000000, 2, ['mm2', 'mm^2']),
  unit('area', 'cm²', 1, 10000, 2, ['cm2', 'cm^2']),
  unit('area', 'm²', 1, 1, 4, ['m2', 'm^2']),
  unit('area', 'in²', 64516, 100000000, 3, ['in2', 'in^2', 'sq in']),
  unit('volume', 'l', 1, 1000, 3, ['L', 'litre', 'litres', 'liter', 'liters']),
  unit('volume', 'ml', 1, 1000000, 1, ['mL']),
  unit('volume', 'cm³', 1, 1000000, 2, ['cc', 'ccm', 'cm3', 'cm^3']),
  unit('volume', 'm³', 1, 1, 6, ['m3', 'm^3']),
  unit('volume', 'US gal', 3.785411784, 1000, 3, ['gal', 'US gallon']),
  unit('mass', 'kg', 1, 1, 2, ['kilogram', 'kilograms', 'kilo', 'kilos']),
  unit('mass', 'g', 1, 1000, 1, ['gram', 'grams']),
  unit('mass', 'lb', 0.45359237, 1, 2, ['lbs', 'lbm', 'pound', 'pounds']),
  unit('mass', 'oz', 0.45359237, 16, 2, ['ounce', 'ounces']),
  unit('force', 'N', 1, 1, 1, ['newton', 'newtons']),
  unit('force', 'kN', 1000, 1, 3),
  unit('force', 'kgf', 9.80665, 1, 2, ['kp']),
  unit('force', 'lbf', LBF, 1, 2),
  unit('torque', 'N·m', 1, 1, 1, ['Nm', 'newton metre', 'newton metres']),
  unit('torque', 'N·cm', 1, 100, 1, ['Ncm']),
  unit('torque', 'kgf·m', 9.80665, 1, 2, ['kgfm', 'kgm', 'kg·m']),
  unit('torque', 'in·lb', LBF * 254, 10000, 1, ['lb·in', 'lbf·in', 'in·lbf', 'inlb', 'lbin', 'inlbs', 'in·lbs']),
  unit('torque', 'ft·lb', LBF * 3048, 10000, 1, ['lb·ft', 'lbf·ft', 'ft·lbf', 'ftlb', 'lbft', 'ftlbs', 'ft·lbs']),
  ...pressures('pressure-gauge'),
  ...pressures('pressure-absolute'),
  unit('pressure-absolute', 'inHg', 3386.389, 1, 2),
  unit('temperature', '°C', 1, 1, 1, ['C', 'degC', 'deg C', 'celsius', '℃'], 273.15),
  unit('temperature', '°F', 5, 9, 1, ['F', 'degF', 'deg F', 'fahrenheit', '℉'], (459.67 * 5) / 9),
  unit('temperature', 'K', 1, 1, 2, ['kelvin']),
  unit('temperature-difference', 'K', 1, 1, 2, ['kelvin']),
  unit('temperature-difference', '°C', 1, 1, 1, ['C', 'degC', 'deg C', '℃']),
  unit('temperature-difference', '°F', 5, 9, 1, ['F', 'degF', 'deg F', '℉']),
  unit('angle', '°', Math.PI, 180, 2, ['deg', 'degree', 'degrees', 'º']),
  unit('angle', 'rad', 1, 1, 4),
  unit('angle', 'arcmin', Math.PI, 10800, 1),
  unit('time', 's', 1, 1, 3, ['sec', 'second', 'seconds']),
  unit('time', 'ms', 1, 1000, 1),
  unit('time', 'min', 60, 1, 1, ['minute', 'minutes']),
  unit('time', 'h', 3600, 1, 2, ['hr', 'hrs', 'hour', 'hours']),
  unit('time', 'd', 86400, 1, 1, ['day', 'days']),
  unit('speed', 'm/s', 1, 1, 2),
  unit('speed', 'km/h', 10, 36, 1, ['kph', 'kmh']),
  unit('speed', 'mph', 1609.344, 3600, 1, ['mi/h']),
  unit('acceleration', 'm/s²', 1, 1, 2, ['m/s2', 'm/s^2']),
  // Beside an acceleration a plain g is no gram: taken, and shown, where the dimension is asked for.
  unit('acceleration', 'g0', 9.80665, 1, 3, ['g', 'gn']),
  unit('density', 'kg/m³', 1, 1, 3, ['kg/m3', 'kg/m^3']),
  unit('density', 'g/cm³', 1000, 1, 4, ['g/cm3', 'g/cc', 'kg/l', 'kg/L', 'g/ml']),
  unit('flow', 'm³/s', 1, 1, 6, ['m3/s']),
  unit('flow', 'l/min', 1, 60000, 3, ['L/min']),
  unit('flow', 'ml/min', 1, 60000000, 1, ['mL/min', 'cc/min', 'cm³/min']),
  unit('power', 'kW', 1000, 1, 2),
  unit('power', 'W', 1, 1, 1),
  unit('power', 'hp', LBF * 550 * 3048, 10000, 1, ['bhp']),
  unit('power', 'PS', 735.49875, 1, 1, ['metric hp']),
  unit('energy', 'J', 1, 1, 1),
  unit('energy', 'kJ', 1000, 1, 2),
  unit('energy', 'MJ', 1000000, 1, 3),
  unit('frequency', 'Hz', 1, 1, 2),
  unit('rotational-speed', 'rpm', 2 * Math.PI, 60, 0, ['1/min', 'r/min', 'rev/min']),
  unit('rotational-speed', 'rad/s', 1, 1, 2),
  unit('stiffness', 'N/mm', 1000, 1, 2),
  unit('stiffness', 'N/m', 1, 1, 0),
  unit('voltage', 'V', 1, 1, 2, ['volt', 'volts']),
  unit('current', 'A', 1, 1, 2, ['amp', 'amps']),
  unit('resistance', 'Ω', 1, 1, 2, ['ohm', 'ohms', 'Ω']),
  unit('resistance', 'kΩ', 1000, 1, 2, ['kohm', 'kΩ']),
  unit('sound-level', 'dB', 1, 1, 1, ['dBA', 'dB(A)']),
  unit('ratio', '%', 1, 100, 1, ['percent', 'per cent']),
  unit('ratio', ':1', 1, 1, 2),
  unit('count', 'teeth', 1, 1, 0, ['tooth', 'T']),
  unit('count', 'pieces', 1, 1, 0, ['piece', 'pcs', 'off']),
  unit('count', 'laps', 1, 1, 0, ['lap']),
  unit('money', 'EUR', 1, 1, 2, ['€', 'euro']),
];

/** A bare number is right only for these. */
export const BARE: readonly Dimension[] = ['ratio', 'count'];

/** One spelling for every way to write a product: `N m`, `N.m`, `N*m`, `N-m` are all `N·m`. */
const spelling = (symbol: string): string =>
  symbol.trim().replace(/(?<=[A-Za-z])\s*[.*⋅∙•×-]\s*(?=[A-Za-z])|(?<=[A-Za-z])\s+(?=[A-Za-z])/g, '·');

const bySpelling = new Map<string, Unit[]>();
for (const each of UNITS)
  for (const written of [each.symbol, ...each.also]) {
    const key = spelling(written);
    bySpelling.set(key, [...(bySpelling.get(key) ?? []), each]);
  }

/**
 * The unit meant by a written symbol; with a dimension, only a unit of that dimension. Upper and lower case as in the
 * table first; otherwise a hurried hand is helped (`Psi`, `KG`), but never from m to M: milli is not mega.
 */
export function findUnit(symbol: string, dimension?: Dimension): Unit | undefined {
  const key = spelling(symbol);
  const fits = (u: Unit): boolean => dimension === undefined || u.dimension === dimension;
  const exact = bySpelling.get(key)?.find(fits);
  if (exact !== undefined || key.length < 2) return exact;
  const near = [...bySpelling].filter(
    ([written]) => written.toLowerCase() === key.toLowerCase() && (written[0] === key[0] || !/^m/i.test(key)),
  );
  return near.flatMap(([, found]) => found).find(fits);
}

/** How a unit is written for a person: standard gravity as the plain g of the paddock. */
export const shownAs = ({ symbol }: Pick<Unit, 'symbol'>): string => (symbol === 'g0' ? 'g' : symbol);

/** A dimension's units as a person writes them, the usual one first. */
export const unitsOf = (dimension: Dimension): readonly string[] =>
  UNITS.filter(u => u.dimension === dimension).map(shownAs);

export const toSi = (value: number, u: Unit): number => (value * u.mul) / u.div + u.plus;
export const fromSi = (si: number, u: Unit): number => ((si - u.plus) * u.div) / u.mul;
