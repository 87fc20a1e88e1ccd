import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coldGauge, gaugeElsewhere, tyreGasTemperature, warmedGauge, warmedWet } from './gas.ts';
import { setLife } from './set-life.ts';
import { rolledOut, staggerFor, staggerRadius } from './stagger.ts';
import { TREAD, treadOf } from './tread.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const day = fc.record({
  gauge: between(0.2e5, 2e5),
  ambient: between(0.8e5, 1.05e5),
  from: between(263, 313),
  to: between(313, 373),
});

describe('the air in a tyre', () => {
  it('comes back cold from hot, dry and with water in it', () => {
    fc.assert(
      fc.property(day, fc.boolean(), (at, wet) => {
        const hot = (wet ? warmedWet : warmedGauge)(at);
        const back = coldGauge({ hot, ambient: at.ambient, cold: at.from, gas: at.to }, wet);
        expect(Math.abs(back / at.gauge - 1)).toBeLessThan(1e-9);
      }),
    );
  });
  it('tells its temperature from two gauge readings, the way back of warming', () => {
    fc.assert(
      fc.property(day, at => {
        const gas = tyreGasTemperature({ cold: at.gauge, hot: warmedGauge(at), ambient: at.ambient, from: at.from });
        expect(Math.abs(gas / at.to - 1)).toBeLessThan(1e-9);
      }),
    );
  });
  it('rises with temperature by the absolute pressure over it (slope against finite difference), more with water', () => {
    fc.assert(
      fc.property(day, at => {
        const step = 1e-3;
        const slope =
          (warmedGauge({ ...at, to: at.to + step }) - warmedGauge({ ...at, to: at.to - step })) / (2 * step);
        expect(slope / ((at.gauge + at.ambient) / at.from)).toBeCloseTo(1, 6);
        expect(warmedWet(at)).toBeGreaterThan(warmedGauge(at));
      }),
    );
  });
  it('scales with all pressures alike, and shows on a gauge what the air around has lost', () => {
    fc.assert(
      fc.property(day, between(0.5, 2), (at, k) => {
        const twice = warmedGauge({ ...at, gauge: k * at.gauge, ambient: k * at.ambient });
        expect(twice / (k * warmedGauge(at))).toBeCloseTo(1, 9);
        const up = gaugeElsewhere(at.gauge, at.ambient, at.ambient - 5000);
        expect(up).toBeCloseTo(at.gauge + 5000, 6);
        expect(gaugeElsewhere(up, at.ambient - 5000, at.ambient)).toBeCloseTo(at.gauge, 6);
      }),
    );
  });
});

describe('two rear tyres on one axle', () => {
  const pair = fc.record({ left: between(0.8, 0.95), right: between(0.8, 0.95), track: between(0.9, 1.3) });
  it('roll round the same radius mirrored, and round none that ends where they are alike', () => {
    fc.assert(
      fc.property(pair, ({ left, right, track }) => {
        fc.pre(left !== right);
        expect(staggerRadius({ left, right, track })).toBe(staggerRadius({ left: right, right: left, track }));
        expect(staggerRadius({ left, right: left, track })).toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });
  it('have the stagger that goes to a radius and back', () => {
    fc.assert(
      fc.property(between(0.8, 0.95), between(5, 500), between(0.9, 1.3), (mean, radius, track) => {
        const stagger = staggerFor({ radius, track, mean });
        const back = staggerRadius({ left: mean - stagger / 2, right: mean + stagger / 2, track });
        expect(Math.abs(back / radius - 1)).toBeLessThan(1e-9);
      }),
    );
    expect(rolledOut(2.604, 3)).toBeCloseTo(0.868, 12);
  });
});

describe('three readings of a tread', () => {
  it('say the same with the tyre turned round, but for the side', () => {
    fc.assert(
      fc.property(between(290, 380), between(290, 380), between(290, 380), (inside, middle, outside) => {
        const [one, other] = [
          treadOf({ inside, middle, outside }),
          treadOf({ inside: outside, middle, outside: inside }),
        ];
        expect(other.crown).toBeCloseTo(one.crown, 9);
        expect(other.lean).toBeCloseTo(-one.lean, 9);
        expect(other.spread).toBe(one.spread);
        expect(one.pressure).toBe(one.crown > TREAD.crown ? 'high' : one.crown < -TREAD.crown ? 'low' : 'as it is');
      }),
    );
  });
  it('say nothing of pressure where one reading is no number, and count as wide', () => {
    expect(treadOf({ inside: 340, middle: Number.NaN, outside: 340 })).toMatchObject({
      pressure: 'not known',
      wide: true,
    });
  });
});

describe('a set of tyres', () => {
  it('is within its limits only where both are known and within', () => {
    expect(setLife({ cycles: 2, age: 86400 }).state).toBe('within');
    expect(setLife({ cycles: 2 }).state).toBe('not known');
    expect(setLife({}).state).toBe('not known');
    expect(setLife({ cycles: 6 }).state).toBe('at its limit');
    expect(setLife({ cycles: 2, age: 9e9 }).state).toBe('at its limit');
    expect(setLife({ cycles: 7, age: 86400, mostCycles: 10 }).state).toBe('within');
    expect(setLife({ cycles: Number.NaN, age: 86400 }).state).toBe('not known');
  });
});
