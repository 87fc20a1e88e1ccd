/**
 * Logs and laps: flat map after IOGP Guidance Note 7-2, sentences of NMEA 0183 as receivers and textbooks printed them,
 * times after RFC 3339, crossings and spread worked outside the project. How each value was obtained stands in its row.
 */
import { describe } from 'vitest';
import {
  type Crossing,
  crossingsOf,
  LogImport,
  type Motion,
  planeAt,
  planeError,
  spreadOf,
} from '../src/laps/index.ts';
import rows from './rows/laps.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const RADIANS = Math.PI / 180;
const text = (given: Given, name: string): string => String(given[name]);

function plane(given: Given): Numbers {
  const rad = (name: string): number => number(given, name) * RADIANS;
  const from = planeAt({ lat: rad('lat0_deg'), lon: rad('lon0_deg') }, number(given, 'h0_m'));
  const { x, y } = from.forward(rad('lat_deg'), rad('lon_deg'), number(given, 'h_m'));
  return { east_m: x, north_m: y };
}

/** What a log makes of it: the first fix of one, with another behind it that says nothing new. */
function firstFix(log: string): Numbers {
  const into = new LogImport();
  into.push(new TextEncoder().encode(log));
  const read = into.finish();
  if (read.kind !== 'imported') throw new Error(`the row must be read, got ${read.problem.got}`);
  const { zero, time, lat, lon, speed } = read.trace;
  return {
    day: zero.kind === 'day' ? Date.parse(`${zero.day}T00:00:00Z`) / 86_400_000 : Number.NaN,
    seconds: time[0] ?? Number.NaN,
    lat_deg: (lat[0] ?? Number.NaN) / RADIANS,
    lon_deg: (lon[0] ?? Number.NaN) / RADIANS,
    speed_kmh: (speed?.[0] ?? Number.NaN) * 3.6,
  };
}

const withSum = (body: string): string => {
  const sum = new TextEncoder().encode(body).reduce((all, code) => all ^ code, 0);
  return `$${body}*${sum.toString(16).padStart(2, '0')}\r\n`;
};
/** Some fix long after all that are printed. */
const fix = (seconds: number): string => withSum(`GPRMC,20000${seconds},A,5000.0,N,00600.0,E,,,010140,,`);
const nmea = (given: Given): Numbers => {
  const sentence = `${text(given, 'sentence')}\r\n`;
  const place = sentence.includes('VTG') ? fix(0) + sentence : sentence;
  return firstFix(place + fix(1) + fix(2));
};

const gpx = (given: Given): Numbers => {
  const point = (time: string): string => `<trkpt lat="50" lon="6"><time>${time}</time></trkpt>`;
  return firstFix(
    `<gpx><trk><trkseg>${point(text(given, 'text'))}${point('2040-01-01T00:00:00Z')}</trkseg></trk></gpx>`,
  );
};

function crossing(given: Given): Numbers {
  const of = (name: string) => Float64Array.from(list(given, name));
  const zero = Float64Array.of(0, 0);
  const motion: Motion = {
    ...{ plane: planeAt({ lat: 0, lon: 0 }), time: Float64Array.of(0, number(given, 'h_s')), step: 1, hole: 3 },
    ...{ x: of('D_m'), y: zero, vx: of('V_ms'), vy: zero },
  };
  const [found] = crossingsOf(motion, { middle: { x: 0, y: 0 }, ahead: { x: 1, y: 0 }, half: 5 }, 0);
  return { t_s: found?.time ?? Number.NaN, speed_ms: found?.speed ?? Number.NaN };
}

function spread(given: Given): Numbers {
  const at = (time: number): Crossing => ({ time, speed: number(given, 'v_ms'), fix: 0, left: 0, over: 0.04 });
  const [slow, memory, quick] = ['slow_m', 'memory_s', 'quick_m'].map(name => number(given, name));
  if (slow === undefined || memory === undefined || quick === undefined) throw new Error('the row must say a receiver');
  return { spread_s: spreadOf(at(0), at(number(given, 'T_s')), { slow, memory, quick }) };
}

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^laps\.plane\.error/, given => ({ error_m: planeError(number(given, 'distance_m')) })],
  [/^laps\.plane/, plane],
  [/^laps\.nmea/, nmea],
  [/^laps\.time/, gpx],
  [/^laps\.crossing/, crossing],
  [/^laps\.spread/, spread],
];

describe('laps: flat map, sentences, times, crossings, spread', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
