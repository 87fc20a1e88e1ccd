import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Answer, InputProblem } from '../subject.ts';
import { air } from './air.ts';
import { moistAirDensity } from './moist-air.ts';

type Over = Readonly<Record<string, unknown>>;
/** The example with some keys over it; `null` takes one out. */
const question = (over: Over): Over =>
  Object.fromEntries(Object.entries({ ...air.example, ...over }).filter(([, value]) => value !== null));
const ask = (over: Over = {}): Answer => {
  const answer = air.ask(question(over));
  if (answer.kind !== 'answer') throw new Error(JSON.stringify(answer.problems));
  return answer;
};
const wrong = (over: Over): readonly InputProblem[] => {
  const answer = air.ask(question(over));
  if (answer.kind !== 'problems') throw new Error('it was answered');
  return answer.problems;
};
const si = (answer: Answer, name: string): number => answer.figures[name]?.si ?? Number.NaN;
const station = { 'pressure is': 'station', elevation: null, pressure: '1013.25 hPa', 'baseline density': null };

describe('the air, asked', () => {
  it('has the density of its readings, in whichever unit they were taken', () => {
    const metric = ask({ ...station, temperature: '20 °C', humidity: '50 %' });
    expect(si(metric, 'density')).toBeCloseTo(1.199314, 6); // checks: air.cipm.c1
    const inches = ask({ ...station, temperature: '68 °F', pressure: '101.325 kPa', humidity: '0.5' });
    expect(si(inches, 'density')).toBeCloseTo(si(metric, 'density'), 9);
    expect(si(metric, 'density')).toBe(moistAirDensity({ kelvin: 293.15, pascal: 101325, humidity: 0.5 }));
  });
  it('says what the engine breathes where a sea level figure was given, and how the kinds differ', () => {
    const qnh = ask({ temperature: '20 °C', pressure: '1013.25 hPa', elevation: '300 m' });
    expect(si(qnh, 'pressure at the track') / 100).toBeCloseTo(977.7257, 3); // checks: qnh.pit1
    expect(qnh.say.join(' ')).toMatch(/977\.7 hPa: that is what the engine breathes/);
    expect(qnh.notes.join(' ')).toMatch(
      /As a weather map’s or app’s figure \(sea level\) it would be \d+\.\d hPa different/,
    );
    const feet = ask({ temperature: '20 °C', pressure: '1013.25 hPa', elevation: `${300 / 0.3048} ft` });
    expect(si(feet, 'density')).toBeCloseTo(si(qnh, 'density'), 9);
  });
  it('has the whole doubt as the root of the squares of its parts', () => {
    const answer = ask();
    const parts = ['thermometer', 'barometer', 'hygrometer', 'elevation'].map(p => si(answer, `uncertainty from ${p}`));
    expect(Math.hypot(...parts)).toBeCloseTo(si(answer, 'standard uncertainty of density'), 12);
    expect(si(answer, 'density known to')).toBeCloseTo(
      2 * si(answer, 'standard uncertainty of density') * si(answer, 'density'),
      12,
    );
  });
  it('takes 50 % where nobody read the humidity, says so, and has it all in the band', () => {
    const unread = ask({ ...station, temperature: '35 °C', humidity: null });
    expect(unread.notes.join(' ')).toMatch(/Humidity was not given: 50 % was taken, and 0 to 100 % is in the band/);
    const [dry, wet] = ['0 %', '100 %'].map(humidity =>
      si(ask({ ...station, temperature: '35 °C', humidity }), 'density'),
    );
    const [mid, band] = [si(unread, 'density'), si(unread, 'density known to')];
    expect(mid + band).toBeGreaterThan(dry ?? Number.NaN);
    expect(mid - band).toBeLessThan(wet ?? Number.NaN);
  });
  it('says that denser air than the baseline runs lean and can seize, that thinner runs rich, and when it cannot tell', () => {
    expect(ask({ 'baseline density': '1.10 kg/m³' }).say.join(' ')).toMatch(/denser.*LEANER: it can seize/);
    expect(ask({ 'baseline density': '1.20 kg/m³' }).say.join(' ')).toMatch(/thinner.*richer.*too far can seize/);
    const same = ask({ 'baseline density': `${si(ask(), 'density')} kg/m³` });
    expect(same.say.join(' ')).toMatch(/Cannot tell it from the baseline air/);
  });
  it('puts the question first where the pressure is far from the standard of its height', () => {
    const doubtful = ask({ ...station, elevation: '300 m' });
    expect(doubtful.say[0]).toMatch(/^Check the pressure first: it is 35\.5 hPa above.*not taken from an app/);
  });
  it('takes off what the barometer reads high', () => {
    const high = ask({ ...station, 'barometer reads high by': '3 hPa' });
    expect(si(high, 'pressure at the track')).toBeCloseTo(101025, 6);
  });
  it('says power by each standard, marks the one outside its limits, and carries the caution of a running engine', () => {
    const answer = ask({ ...station, temperature: '10 °C', 'measured power': '30 kW' });
    expect(si(answer, 'power by DIN 70020')).toBeCloseTo(30000 * si(answer, 'power factor DIN 70020'), 6);
    expect(answer.figures['power by ISO 1585']?.text).toMatch(/outside its limits/);
    expect(answer.notes.join(' ')).toMatch(/Outside validity: ISO 1585/);
    expect(answer.say.at(-1)).toMatch(/^Caution: a running engine/);
  });
  it('never says altitude without density, nor that anything is safe', () => {
    const text = JSON.stringify([ask(), ask({ ...station, temperature: '-5 °C' })]);
    expect(text.match(/altitude/gi)?.length).toBe(text.match(/density altitude/gi)?.length);
    expect(text).not.toMatch(/\bsafe\b/i);
  });
  it('marks air colder or hotter than was checked', () => {
    expect(ask({ ...station, temperature: '-5 °C' }).notes.join(' ')).toMatch(/Outside validity: the density/);
    expect(ask({ ...station, temperature: '10 °C' }).notes.join(' ')).not.toMatch(/Outside/);
  });
});

describe('a question about air that cannot be', () => {
  it('is refused with all problems at once', () => {
    const paths = wrong({ temperature: '85 °C', pressure: '0.1 bar', humidity: '60', elevation: '9000 m' });
    expect(paths.map(p => p.path)).toEqual(['temperature', 'pressure', 'humidity', 'elevation']);
  });
  it.each([
    ['°F written as °C', { temperature: '85 °C' }, 'temperature', /is it °F\? 85 °F would be 29\.4 °C/],
    ['a bare temperature', { temperature: 21 }, 'temperature', /write it as text with its unit/],
    ['a tyre gauge', { pressure: '0.8 bar', 'pressure is': 'QNH' }, 'pressure', /station/],
    ['a gauge at nothing', { pressure: '0 bar' }, 'pressure', /is it a gauge reading\?/],
    ['gauge psi', { pressure: '10 psig' }, 'pressure', /not a unit|unit of/],
    ['no word on which pressure', { 'pressure is': undefined }, 'pressure is', /example/],
    ['a percentage without its sign', { humidity: '60' }, 'humidity', /write "60 %"/],
    ['one, which reads two ways', { humidity: '1' }, 'humidity', /write "1 %"/],
    ['a fraction with the sign', { humidity: '0.6 %' }, 'humidity', /write "60 %"/],
    ['more than all', { humidity: '120 %' }, 'humidity', /hygrometer/],
    ['sea level without a height', { elevation: null }, 'elevation', /from a map/],
    ['sea level called station', { ...station, elevation: '600 m' }, 'pressure is', /is it a sea level figure/],
    ['station called sea level', { pressure: '940 hPa', elevation: '600 m' }, 'pressure is', /read at the track\?/],
    ['an offset beside a report', { 'barometer reads high by': '1 hPa' }, 'barometer reads high by', /take it out/],
    ['the density of fuel', { 'baseline density': '745 kg/m³' }, 'baseline density', /fuel/],
    ['limits as wide as the reading', { temperature: '20 ± 20 °C' }, 'temperature', /plus or minus/],
    ['a key that is not known', { colour: 'red' }, 'colour', /take it out/],
  ])('%s', (_, over, path, remedy) => {
    const found = wrong(over).find(problem => problem.path === path);
    expect(found?.remedy).toMatch(remedy);
    for (const text of Object.values(found ?? {})) expect(text).not.toBe('');
  });
  it('never throws, and whatever it answers is a number', () => {
    fc.assert(fc.property(fc.anything(), input => void air.ask(input)));
    const text = fc.oneof(
      fc.string(),
      fc
        .tuple(fc.double({ min: -2000, max: 2000 }), fc.constantFrom('°C', '°F', 'hPa', 'inHg', '%', 'm', 'kg/m³', ''))
        .map(([n, unit]) => `${n.toFixed(2)} ${unit}`),
    );
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...Object.keys(air.example)), text), over => {
        const answer = air.ask({ ...air.example, ...over });
        if (answer.kind === 'answer') expect(Number.isFinite(si(answer, 'density'))).toBe(true);
      }),
    );
  });
});
