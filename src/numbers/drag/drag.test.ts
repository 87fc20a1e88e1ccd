import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airForce, balanceSpeed, rollingForce } from './balance-speed.ts';
import { bothWays } from './both-ways.ts';
import { coastSpeed, coastTime, dragOf, type Slowing, slowingOf } from './coast.ts';
import { drag } from './drag.ts';
import { fitCoast } from './fit.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const slowings = fc.record({ a0: between(0.1, 0.5), a2: between(0.001, 0.003) });
const karts = fc.record({ mass: between(120, 250), effectiveMass: between(120, 260), density: between(0.9, 1.3) });
const trace = (slowing: Slowing, points: number, step: number, v0 = 28, off: (n: number) => number = () => 0) =>
  Array.from({ length: points }, (_, n) => ({ time: n * step, speed: coastSpeed(n * step, v0, slowing) + off(n) }));

describe('a kart rolling out', () => {
  it('slows by a0 + a2 v² (slope against finite difference)', () => {
    fc.assert(
      fc.property(slowings, between(15, 30), between(0, 5), (slowing, v0, t) => {
        const step = 1e-4;
        const slope = (coastSpeed(t + step, v0, slowing) - coastSpeed(t - step, v0, slowing)) / (2 * step);
        const v = coastSpeed(t, v0, slowing);
        expect(-slope / (slowing.a0 + slowing.a2 * v ** 2)).toBeCloseTo(1, 6);
      }),
    );
  });
  it('takes the time that brings it from one speed to the other, in parts as in whole', () => {
    fc.assert(
      fc.property(slowings, between(20, 35), between(1, 15), (slowing, from, to) => {
        const t = coastTime(from, to, slowing);
        expect(coastSpeed(t, from, slowing) / to).toBeCloseTo(1, 9);
        const half = (from + to) / 2;
        expect((coastTime(from, half, slowing) + coastTime(half, to, slowing)) / t).toBeCloseTo(1, 9);
        expect(coastSpeed(1e6, from, slowing)).toBe(0);
      }),
    );
  });
  it('gives a drag area and a rolling coefficient that give the slowing back', () => {
    fc.assert(
      fc.property(slowings, karts, (slowing, kart) => {
        const back = slowingOf(dragOf(slowing, kart), kart);
        expect(Math.abs(back.a0 / slowing.a0 - 1)).toBeLessThan(1e-9);
        expect(Math.abs(back.a2 / slowing.a2 - 1)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('the fit of a trace', () => {
  it('finds what made a trace without errors, whatever its start and its clock', () => {
    fc.assert(
      fc.property(slowings, between(20, 33), between(-100, 1000), (slowing, v0, begin) => {
        const clean = trace(slowing, 25, 0.5, v0).map(({ time, speed }) => ({ time: time + begin, speed }));
        const fit = fitCoast(clean);
        expect((fit?.a0 ?? 0) / slowing.a0).toBeCloseTo(1, 6);
        expect((fit?.a2 ?? 0) / slowing.a2).toBeCloseTo(1, 6);
        expect((fit?.start ?? 0) / v0).toBeCloseTo(1, 6);
      }),
    );
  });
  it('holds the truth 19 times of 20, give or take, over 500 traces with errors', () => {
    const truth = { a0: 0.245, a2: 0.0018 };
    const kart = { mass: 180, effectiveMass: 185, density: 1.2 };
    const exact = dragOf(truth, kart);
    let state = 41;
    const uniform = (): number => {
      state = (state * 16807) % 2147483647; // Park and Miller, 1988
      return state / 2147483647;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let [area, rolling] = [0, 0];
    const traces = 500;
    for (let n = 0; n < traces; n++) {
      const [out, back] = [0, 1].map(() => fitCoast(trace(truth, 16, 1, 28, () => 0.08 * normal())));
      if (!out || !back) throw new Error('a trace was not told apart');
      const found = bothWays(out, back, kart, { mass: 0, density: 0 });
      if (Math.abs(found.area.value - exact.area) <= found.area.half) area++;
      if (Math.abs(found.rolling.value - exact.rolling) <= found.rolling.half) rolling++;
    }
    for (const inside of [area, rolling]) {
      expect(inside / traces).toBeGreaterThan(0.92); // 0.95 less three standard deviations of a share of 500
      expect(inside / traces).toBeLessThanOrEqual(1);
    }
  });
  it('takes a slope out exactly by the way back, and says how steep it was', () => {
    const kart = { mass: 180, effectiveMass: 180, density: 1.2 };
    const [fall, g] = [0.002, 9.80665];
    const out = fitCoast(trace({ a0: 0.25 - fall * g, a2: 0.0018 }, 20, 0.8));
    const back = fitCoast(trace({ a0: 0.25 + fall * g, a2: 0.0018 }, 20, 0.8));
    if (!out || !back) throw new Error('not told apart');
    const both = bothWays(out, back, kart, { mass: 0, density: 0 });
    expect(both.slowing.a0).toBeCloseTo(0.25, 6);
    expect(both.fall).toBeCloseTo(fall, 6);
    expect(both.apart).toBe(true);
  });
  it('finds no air in a trace that falls evenly, and nothing in too few points', () => {
    const even = Array.from({ length: 12 }, (_, n) => ({ time: n, speed: 28 - n }));
    const found = fitCoast(even);
    expect(found === undefined || found.a2 * 28 ** 2 < 0.01 * found.a0).toBe(true);
    expect(fitCoast(even.slice(0, 4))).toBeUndefined();
    expect(fitCoast([])).toBeUndefined();
  });
});

describe('the speed that uses up the power', () => {
  it('is where air and rolling take all of it, and grows with power', () => {
    fc.assert(
      fc.property(between(5e3, 5e4), between(0.3, 0.9), between(0.01, 0.04), (power, area, rolling) => {
        const kart = { power, area, rolling, mass: 180, density: 1.2 };
        const v = balanceSpeed(kart);
        expect(((airForce(kart, v) + rollingForce(kart)) * v) / power).toBeCloseTo(1, 9);
        expect(balanceSpeed({ ...kart, power: power * 1.1 })).toBeGreaterThan(v);
      }),
    );
  });
});

type Over = Readonly<Record<string, unknown>>;
const example = drag.example as Over;
const answer = (over: Over = {}) => {
  const given = drag.ask({ ...example, ...over });
  if (given.kind !== 'answer') throw new Error(JSON.stringify(given.problems));
  return given;
};
const wrong = (over: Over) => {
  const given = drag.ask({ ...example, ...over });
  if (given.kind !== 'problems') throw new Error(given.say.join(' '));
  return given.problems;
};
const rows = (speeds: readonly string[]) => speeds.map((speed, n) => ({ time: `${n} s`, speed }));
const kmh = (...speeds: readonly number[]) => rows(speeds.map(speed => `${speed} km/h`));
const FALLING = [100, 94, 88, 83, 78, 74, 70, 66, 62, 59];

describe('a question about drag', () => {
  it('finds the invented kart of the example within what it says', () => {
    const { figures, say } = answer();
    const of = (name: string): number => figures[name]?.si ?? Number.NaN;
    expect(Math.abs(of('drag area') - 0.55)).toBeLessThan(of('drag area within ±'));
    expect(Math.abs(of('rolling coefficient') - 0.026)).toBeLessThan(of('rolling coefficient within ±'));
    expect(say.join(' ')).toContain('Caution: roll out only on a closed, clear stretch');
  });
  it('marks one direction, a wind and what was taken for granted', () => {
    const { notes } = answer({
      'return run points': undefined,
      wind: '3 m/s',
      'turning mass': undefined,
      mass: '180 kg',
    });
    const all = notes.join(' ');
    for (const words of [
      'one direction only',
      'more than 2 m/s',
      '3 % of the mass (common practice)',
      'exact, because no limits',
    ])
      expect(all).toContain(words);
  });
  it('is less sure when the density is less sure', () => {
    const within = (density: string): number =>
      answer({ 'air density': density }).figures['drag area within ±']?.si ?? Number.NaN;
    expect(within('1.20 kg/m³ ± 0.06 kg/m³')).toBeGreaterThan(within('1.20 kg/m³ ± 0.01 kg/m³'));
  });
  it('refuses too few points, rising speeds and mixed units, each with what is right', () => {
    expect(wrong({ 'first run points': kmh(100, 90, 80) })[0]).toMatchObject({ path: 'first run points', got: '3' });
    expect(wrong({ 'first run points': kmh(...FALLING.toSpliced(4, 1, 85)) })[0]).toMatchObject({
      path: 'first run points/4/speed',
      remedy: expect.stringContaining('throttle is shut'),
    });
    const mixed = rows(FALLING.map((v, n) => (n < 5 ? `${v} km/h` : `${(v / 3.6).toFixed(2)} m/s`)));
    expect(wrong({ 'first run points': mixed })[0]?.remedy).toContain('one unit');
    expect(wrong({ 'first run points': kmh(...FALLING.toReversed()) }).length).toBeGreaterThan(1);
  });
  it('refuses km/h written as m/s, a brake, times out of order and a run that hardly slows', () => {
    expect(wrong({ 'first run points': rows(FALLING.map(v => `${v} m/s`)) })[0]?.path).toBe('first run points/0/speed');
    const braked = [100, 80, 70, 60, 50, 40, 30, 20];
    expect(wrong({ 'first run points': kmh(...braked) })[0]?.remedy).toContain('without brake');
    const order = kmh(...FALLING).toSpliced(3, 1, { time: '1 s', speed: '83 km/h' });
    expect(wrong({ 'first run points': order })[0]?.path).toBe('first run points/3/time');
    expect(wrong({ 'first run points': kmh(100, 99, 98, 97, 96, 95, 94, 93) })[0]?.remedy).toContain('roll further');
  });
  it('does not pass off a trace that bends the wrong way, as with a dragging brake, for a measurement', () => {
    const bent = [100, 97, 93.5, 89.5, 85, 80, 74.5, 68.5, 62, 55];
    const given = drag.ask({ ...example, 'first run points': kmh(...bent), 'return run points': kmh(...bent) });
    if (given.kind === 'answer') {
      expect(given.notes[0]).toMatch(/^Reject: the limits reach 0/);
      expect(given.notes[1]).toMatch(/^Outside .*drag area/);
      expect(given.say[1]).toContain('Not good enough to use');
    } else expect(given.problems[0]?.expected).toContain('tells air from rolling');
  });
  it('says that a trace too rough to tell does not tell', () => {
    const rough = [100, 95.2, 86.9, 84.4, 76.8, 75.2, 68.7, 67.1, 61, 60];
    const { notes } = answer({ 'first run points': kmh(...rough), 'return run points': undefined });
    expect(notes.join(' ')).toContain('the limits reach 0');
  });
  it('refuses a density in the wrong place, speeds the wrong way round, and asks for what decides', () => {
    expect(wrong({ 'air density': '12 kg/m³' })[0]?.remedy).toContain('ask "air"');
    expect(wrong({ 'speed from': '50 km/h', 'speed to': '100 km/h' })[0]?.path).toBe('speed from');
    expect(wrong({ efficiency: undefined })[0]?.path).toBe('efficiency');
    expect(wrong({ mass: '180', efficiency: '9 bar' }).map(p => p.path)).toEqual(['mass', 'efficiency']);
  });
  it('never throws, whatever comes, and never promises', () => {
    const text = fc.tuple(fc.double(), fc.constantFrom('kg', 'm/s', '%', 's', 'kW')).map(([n, u]) => `${n} ${u}`);
    fc.assert(
      fc.property(fc.anything(), fc.dictionary(fc.constantFrom(...Object.keys(example)), text), (any, keyed) => {
        expect(['answer', 'problems']).toContain(drag.ask(any).kind);
        const given = drag.ask({ ...example, ...keyed });
        expect(JSON.stringify(given)).not.toMatch(/\bsafe/i);
        if (given.kind === 'answer') expect(given.say.join(' ')).not.toMatch(/NaN|Infinity|not known/);
      }),
      { numRuns: 50 },
    );
  });
});
