/**
 * What a column's heading says: which role it has, and in which unit. No standard says how a log names its columns, so
 * these are the words of the languages karts are raced in; what is not known here is chosen by the person.
 */
import { COLUMNS } from '../../model.ts';

export const ROLES = ['time', 'date', 'lat', 'lon', ...COLUMNS] as const;
export type Role = (typeof ROLES)[number];

const NAMES: { readonly [role in Role]: readonly string[] } = {
  time: 'time t timestamp seconds elapsed datetime unix epoch zeit uhrzeit zeitstempel temps heure tempo ora tiempo hora tijd'.split(
    ' ',
  ),
  date: 'date datum data fecha'.split(' '),
  lat: 'lat latitude breite breitengrad latitudine latitud breedtegraad'.split(' '),
  lon: 'lon lng long longitude laenge lange laengengrad langengrad longitudine longitud lengtegraad'.split(' '),
  speed: 'speed velocity v vel sog geschwindigkeit vitesse velocita velocidad snelheid'.split(' '),
  heading: 'heading course bearing track cog kurs richtung cap direzione rumbo koers'.split(' '),
  rotation:
    'rpm revs enginespeed enginerpm drehzahl motordrehzahl regime regimemoteur giri giroenmotor toerental'.split(' '),
  height: 'height altitude alt elevation ele hohe hoehe quota altura altitud hoogte'.split(' '),
  accuracy: 'accuracy hacc horizontalaccuracy genauigkeit precision precisione'.split(' '),
};
const FILLING = new Set('gps gnss position pos utc over ground true in the local'.split(' '));

/** What one of the unit is in s, °, m/s, rad/s or m. Knot and international foot, mile: exact by definition (memory). */
const KMH = 1 / 3.6;
const MPH = 1609.344 / 3600;
const KNOT = 1852 / 3600;
const TURN = (2 * Math.PI) / 60;
const TIMES = {
  s: 1,
  sec: 1,
  secs: 1,
  second: 1,
  seconds: 1,
  sek: 1,
  sekunden: 1,
  ms: 1e-3,
  msec: 1e-3,
  us: 1e-6,
  µs: 1e-6,
  min: 60,
};
const ANGLES = { deg: 1, degree: 1, degrees: 1, '°': 1, grad: 1, rad: 180 / Math.PI };
const LENGTHS = { m: 1, metre: 1, metres: 1, meter: 1, meters: 1, ft: 0.3048, feet: 0.3048, mm: 1e-3, cm: 1e-2 };
const UNITS: { readonly [role in Role]: Readonly<Record<string, number>> } = {
  time: TIMES,
  date: {},
  lat: ANGLES,
  lon: ANGLES,
  speed: {
    'm/s': 1,
    mps: 1,
    ms: 1,
    'km/h': KMH,
    kmh: KMH,
    kph: KMH,
    mph: MPH,
    'mi/h': MPH,
    kn: KNOT,
    kt: KNOT,
    kts: KNOT,
    knot: KNOT,
    knots: KNOT,
  },
  heading: ANGLES,
  rotation: { rpm: TURN, '1/min': TURN, 'u/min': TURN, 'min-1': TURN, 'r/min': TURN, 'rad/s': 1 },
  height: LENGTHS,
  accuracy: LENGTHS,
};
const SYMBOLS = [...new Set(Object.values(UNITS).flatMap(Object.keys))].toSorted((a, b) => b.length - a.length);

export type Meaning = { readonly role: Role; readonly unit?: string };

/** What one of this unit is, in the unit the reader works in; undefined when the role has no such unit. */
export const factorOf = (role: Role, unit: string): number | undefined => UNITS[role][plain(unit)];
export const unitsFor = (role: Role): readonly string[] => Object.keys(UNITS[role]);

/** `Geschwindigkeit [km/h]`, `speed_kmh`, `GPS speed (m/s)`, `Speed in mph`; undefined when no role has such a name. */
export function meaningOf(heading: string): Meaning | undefined {
  const whole = plain(heading);
  const bracket = /^(.*?)[[(]([^\])]*)[\])]\s*$/.exec(whole);
  const [name, unit] = bracket ? [bracket[1] ?? '', (bracket[2] ?? '').trim()] : parted(whole);
  const words = name.split(/[^a-z0-9]+/).filter(word => word !== '' && !FILLING.has(word));
  const joined = words.join('') || (whole.includes('utc') ? 'time' : '');
  const role = ROLES.find(each => NAMES[each].includes(joined));
  if (role === undefined) return undefined;
  return unit !== undefined && factorOf(role, unit) !== undefined ? { role, unit } : { role };
}

/** Whether a cell is a unit and nothing else. */
export const isUnit = (cell: string): boolean => SYMBOLS.includes(plain(cell).replace(/^[[(](.*)[\])]$/, '$1'));

/** A unit behind a name, after `_` or a space. */
function parted(whole: string): readonly [string, string?] {
  for (const symbol of SYMBOLS) {
    const before = whole.at(-symbol.length - 1);
    if (whole.endsWith(symbol) && (before === '_' || before === ' ')) return [whole.slice(0, -symbol.length), symbol];
  }
  return [whole];
}

/** Small letters without accents: Länge is lange. */
export const plain = (text: string): string =>
  text
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .trim();
