import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { warmedGauge } from './gas.ts';
import { type ColdAsked, coldFor, type PressureRun, riseFrom } from './record.ts';

const AMBIENT = 101300;
/** A run of a tyre whose air gets 40 K hotter than the track, and `off` besides. */
const run = (track: number, off = 0, over: Partial<PressureRun> = {}): PressureRun => ({
  tyre: 'rear',
  surface: 'dry',
  cold: 60000,
  coldTemperature: 290,
  hot: warmedGauge({ gauge: 60000, ambient: AMBIENT, from: 290, to: track + 40 + off }),
  ambient: AMBIENT,
  track,
  laps: 12,
  ...over,
});
const asked: ColdAsked = {
  tyre: 'rear',
  surface: 'dry',
  track: 299,
  laps: 12,
  wanted: 85000,
  ambient: AMBIENT,
  coldTemperature: 289,
};
const five = [291, 295, 298, 303, 307].map((track, n) => run(track, [0.5, -0.5, 0.3, -0.6, 0.3][n]));

describe('the record of pressures', () => {
  it('finds the rise that made it, and its line lies within its own interval', () => {
    fc.assert(
      fc.property(fc.double({ min: 292, max: 306, noNaN: true }), track => {
        const rise = riseFrom(
          [291, 295, 298, 303, 307].map(each => run(each)),
          { ...asked, track },
        );
        expect(rise.kind).toBe('known');
        if (rise.kind === 'known') expect(rise.gas.value).toBeCloseTo(track + 40, 6);
      }),
    );
  });
  it('is wider far from the days it has seen, and says that they were others', () => {
    const width = (track: number): number => {
      const rise = riseFrom(five, { ...asked, track });
      return rise.kind === 'known' ? rise.gas.high - rise.gas.low : Number.NaN;
    };
    expect(width(305)).toBeGreaterThan(width(299));
    expect(riseFrom(five, { ...asked, track: 305.5 })).toMatchObject({ beyond: false });
    expect(riseFrom(five, { ...asked, track: 290 })).toMatchObject({ beyond: true });
  });
  it('is wider from three runs than from five alike', () => {
    const of = (runs: readonly PressureRun[]): number => {
      const rise = riseFrom(runs, asked);
      return rise.kind === 'known' && rise.by === 'mean' ? rise.gas.high - rise.gas.low : Number.NaN;
    };
    const some = [0.5, -0.5, 0.2, -0.4, 0.4].map(off => run(299, off));
    expect(of(some.slice(0, 3))).toBeGreaterThan(of(some));
  });
  it('uses no run of another surface, another tyre, a track 15 K away or too few laps, whatever order they come in', () => {
    const others = [
      run(299, 30, { surface: 'wet' }),
      run(299, 30, { tyre: 'front left' }),
      run(320, 30),
      run(299, 30, { laps: 4 }),
    ];
    const alone = coldFor(asked, five);
    expect(coldFor(asked, [...others, ...five])).toEqual(alone);
    expect(alone.kind).toBe('from the record');
    expect(riseFrom(others, asked)).toMatchObject({ kind: 'too few', needed: 3 });
  });
  it('takes a run of an axle for each of its tyres', () => {
    const left = coldFor({ ...asked, tyre: 'rear left' }, five);
    expect(left).toEqual(coldFor(asked, five));
    expect(coldFor({ ...asked, tyre: 'front left' }, five)).toEqual({ kind: 'not known', runs: 0, needed: 3 });
  });
  it('is the gas law only where somebody said how hot the air gets, and not known else', () => {
    expect(coldFor(asked, five.slice(0, 2))).toEqual({ kind: 'not known', runs: 2, needed: 3 });
    const law = coldFor({ ...asked, gas: 339 }, five.slice(0, 2));
    expect(law).toMatchObject({ kind: 'by the gas law', runs: 2 });
  });
  it('wants less cold pressure on a hotter track, more for more hot', () => {
    const cold = (over: Partial<ColdAsked>): number => {
      const found = coldFor({ ...asked, ...over }, five);
      return found.kind === 'from the record' ? found.cold.value : Number.NaN;
    };
    expect(cold({ track: 304 })).toBeLessThan(cold({ track: 294 }));
    expect(cold({ wanted: 90000 })).toBeGreaterThan(cold({}));
    const found = coldFor(asked, five);
    if (found.kind !== 'from the record') throw new Error('from the record');
    expect(found.cold.low).toBeLessThan(found.cold.value);
    expect(found.cold.high).toBeGreaterThan(found.cold.value);
  });
  it('holds a further run 19 times of 20, give or take, over a thousand seasons', () => {
    let [inside, state] = [0, 7];
    const uniform = (): number => {
      state = (state * 16807) % 2147483647; // Park and Miller, 1988
      return state / 2147483647;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const seasons = 1000;
    for (let n = 0; n < seasons; n++) {
      const runs = [291, 294, 297, 300, 303, 306].map(track => run(track, normal()));
      const rise = riseFrom(runs, asked);
      const next = asked.track + 40 + normal();
      if (rise.kind === 'known' && next >= rise.gas.low && next <= rise.gas.high) inside++;
    }
    expect(inside / seasons).toBeGreaterThan(0.93); // 0.95 ± three standard deviations of a share of 1000
    expect(inside / seasons).toBeLessThan(0.97);
  });
});
