/** The formulas of the air: round trips, direction, and a library of its own (psychrolib, ideal gas) beside them. */
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  airOf,
  densityAltitude,
  densityUncertainty,
  dewPoint,
  dryAirDensity,
  factorDin70020,
  factorIso1585,
  factorJ607,
  factorJ1349,
  geometricHeight,
  geopotentialHeight,
  humidityFromDewPoint,
  idealDensity,
  insideIso1585,
  mapPressure,
  moistAirDensity,
  pressureAltitude,
  pressureKind,
  qnhFromStation,
  saturationPressure,
  standardAt,
  standardAtGeometric,
  stationPressure,
  stationPressureFromMap,
  vapourPressure,
} from './index.ts';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const airs = fc.record({ kelvin: size(273.15, 318.15), pascal: size(85e3, 105e3), humidity: size(0, 1) });
const heights = size(-400, 4500);
const same = (got: number, wanted: number, relative = 1e-9): void =>
  expect(Math.abs(got / wanted - 1)).toBeLessThanOrEqual(relative);

type Oracle = {
  readonly SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(celsius: number): number;
  GetVapPresFromRelHum(celsius: number, humidity: number): number;
  GetHumRatioFromRelHum(celsius: number, humidity: number, pascal: number): number;
  GetMoistAirDensity(celsius: number, ratio: number, pascal: number): number;
  GetTDewPointFromRelHum(celsius: number, humidity: number): number;
};
const oracle = createRequire(import.meta.url)('psychrolib') as Oracle;
beforeAll(() => oracle.SetUnitSystem(oracle.SI));

const grid = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45].flatMap(celsius =>
  [85e3, 90e3, 95e3, 101325, 105e3].flatMap(pascal =>
    [0, 0.2, 0.4, 0.6, 0.8, 1].map(humidity => ({ celsius, pascal, humidity })),
  ),
);

describe('humid air beside psychrolib, on a grid of 300 airs', () => {
  it('has the same vapour pressure, to the last digits: both are the same printed equation', () => {
    for (const { celsius, humidity } of grid) {
      same(saturationPressure(celsius + 273.15), oracle.GetSatVapPres(celsius), 1e-12);
      if (humidity > 0)
        same(vapourPressure(humidity, celsius + 273.15), oracle.GetVapPresFromRelHum(celsius, humidity), 1e-12);
    }
  });
  // Psychrolib takes air and vapour as ideal gases, without enhancement; real air is at most 0.06 % denser
  // over this grid (its compressibility is 0.9994 to 0.9998).
  it('has the same density within 0.06 %: that one is of ideal gases', () => {
    for (const { celsius, pascal, humidity } of grid) {
      const ratio = oracle.GetHumRatioFromRelHum(celsius, humidity, pascal);
      const theirs = oracle.GetMoistAirDensity(celsius, ratio, pascal);
      same(moistAirDensity({ kelvin: celsius + 273.15, pascal, humidity }), theirs, 6e-4);
    }
  });
  it('has the same dew point within a thousandth of a kelvin, the step at which that one stops', () => {
    for (const { celsius, humidity } of grid)
      if (humidity > 0) {
        const ours = dewPoint(vapourPressure(humidity, celsius + 273.15)) - 273.15;
        expect(Math.abs(ours - oracle.GetTDewPointFromRelHum(celsius, humidity))).toBeLessThanOrEqual(1e-3);
      }
  });
});

describe('the density of air', () => {
  it('is within 0.07 % of two ideal gases from 0 to 45 °C', () => {
    fc.assert(
      fc.property(airs, air => {
        const ideal = idealDensity(air.kelvin, air.pascal, vapourPressure(air.humidity, air.kelvin));
        same(moistAirDensity(air), ideal, 7e-4);
      }),
    );
  });
  it('falls with heat and humidity, grows with pressure, and never is less than its dry part', () => {
    fc.assert(
      fc.property(airs, air => {
        const now = moistAirDensity(air);
        expect(moistAirDensity({ ...air, kelvin: air.kelvin + 1 })).toBeLessThan(now);
        expect(moistAirDensity({ ...air, humidity: air.humidity + 0.05 })).toBeLessThan(now);
        expect(moistAirDensity({ ...air, pascal: air.pascal + 100 })).toBeGreaterThan(now);
        expect(dryAirDensity(air)).toBeLessThanOrEqual(now);
      }),
    );
  });
});

describe('round trips', () => {
  it('dew point and humidity, above and below freezing', () => {
    fc.assert(
      fc.property(size(250, 320), size(0.02, 1), (kelvin, humidity) => {
        same(humidityFromDewPoint(kelvin, dewPoint(vapourPressure(humidity, kelvin))), humidity);
      }),
    );
  });
  it('QNH, map pressure, heights, density altitude and pressure altitude', () => {
    fc.assert(
      fc.property(heights, size(9e4, 1.06e5), airs, (height, pascal, air) => {
        same(qnhFromStation(stationPressure({ seaLevelPascal: pascal, elevation: height }), height), pascal);
        const outside = { elevation: height, kelvin: air.kelvin, vapour: vapourPressure(air.humidity, air.kelvin) };
        same(mapPressure(stationPressureFromMap({ seaLevelPascal: pascal, ...outside }), outside), pascal);
        expect(geometricHeight(geopotentialHeight(height))).toBeCloseTo(height, 6);
        expect(pressureAltitude(standardAt(height).pascal)).toBeCloseTo(height, 6);
        // 1.2250 is the printed standard density, 1.5e-8 under the one of its own constants: 0.15 mm.
        expect(densityAltitude(standardAt(height).density)).toBeCloseTo(height, 2);
      }),
    );
  });
});

describe('pressure and height', () => {
  it('by QNH and by a map agree where the day is the standard one and dry', () => {
    for (const elevation of [0, 200, 500, 1000]) {
      const { kelvin } = standardAt(elevation);
      const qnh = stationPressure({ seaLevelPascal: 101325, elevation });
      const map = stationPressureFromMap({ seaLevelPascal: 101325, elevation, kelvin });
      expect(Math.abs(qnh - map)).toBeLessThan(15); // the map takes the mean of a column, not its integral
    }
  });
  it('differ on a hot day, where the map gives more pressure at the track', () => {
    const at = { seaLevelPascal: 101325, elevation: 800 };
    expect(stationPressureFromMap({ ...at, kelvin: 308.15 })).toBeGreaterThan(stationPressure(at) + 500);
  });
  it('falls by 1 hPa in about 8.3 m near the sea (rule of thumb)', () => {
    expect(100 / (standardAt(0).pascal - standardAt(1).pascal)).toBeCloseTo(8.3, 1);
  });
  it('stays where it was with the height on a tape, to a fraction', () => {
    expect(standardAtGeometric(1000).pascal - standardAt(1000).pascal).toBeCloseTo(1.7, 1);
  });
  it('is doubted from 25 hPa off the standard, wrong from 45 hPa, and not known without a number', () => {
    const at = (elevation: number, by: number) =>
      pressureKind({ pascal: standardAt(elevation).pascal + by, elevation });
    expect(at(300, 0).kind).toBe('plausible');
    expect(at(300, -3000).kind).toBe('doubtful');
    expect(at(600, 4600).kind).toBe('wrong');
    expect(at(Number.NaN, 0)).toEqual({ kind: 'not known' });
    expect(pressureKind({ pascal: 101325, elevation: 600 }).kind).toBe('wrong'); // sea level figure called station
  });
});

describe('the uncertainty of density', () => {
  const u = fc.record({ kelvin: size(0, 3), pascal: size(0, 1000), humidity: size(0, 0.2) });
  it('doubles with its instruments, and its shares add up', () => {
    fc.assert(
      fc.property(airs, u, (air, each) => {
        const once = densityUncertainty(air, each);
        const twice = densityUncertainty(air, {
          kelvin: 2 * each.kelvin,
          pascal: 2 * each.pascal,
          humidity: 2 * each.humidity,
        });
        expect(twice.relative).toBeCloseTo(2 * once.relative, 12);
        const whole = once.share.kelvin + once.share.pascal + once.share.humidity;
        expect(whole).toBeCloseTo(once.relative === 0 ? 0 : 1, 9);
      }),
    );
  });
  it('has slopes that a wider difference on the density finds too', () => {
    fc.assert(
      fc.property(airs, air => {
        const { sensitivity, density } = densityUncertainty(air, { kelvin: 1, pascal: 1, humidity: 1 });
        const wide = (name: 'kelvin' | 'pascal', by: number): number =>
          (moistAirDensity({ ...air, [name]: air[name] + by }) - moistAirDensity({ ...air, [name]: air[name] - by })) /
          (2 * by * density);
        same(sensitivity.kelvin, wide('kelvin', 0.1), 1e-4);
        same(sensitivity.pascal, wide('pascal', 100), 1e-4);
      }),
    );
  });
});

describe('a power factor', () => {
  it('is 1 in the air of its own standard', () => {
    const dry = { kelvin: 298.15, pascal: 99000, humidity: 0 };
    same(factorJ1349(dry), 1);
    same(factorIso1585(dry), 1);
    same(factorDin70020({ kelvin: 293.15, pascal: 101300, humidity: 0.9 }), 1);
    same(factorJ607({ kelvin: 288.15 + 5 / 9, pascal: 29.92 * 3386.389, humidity: 0 }), 1);
  });
  it('grows with heat and height; vapour moves all but the DIN one', () => {
    fc.assert(
      fc.property(airs, air => {
        for (const factor of [factorJ1349, factorIso1585, factorDin70020, factorJ607]) {
          expect(factor({ ...air, kelvin: air.kelvin + 1 })).toBeGreaterThan(factor(air));
          expect(factor({ ...air, pascal: air.pascal - 500 })).toBeGreaterThan(factor(air));
        }
        const wetter = { ...air, humidity: air.humidity + 0.1 };
        expect(factorJ1349(wetter)).toBeGreaterThan(factorJ1349(air));
        expect(factorDin70020(wetter)).toBe(factorDin70020(air));
      }),
    );
  });
  it('of ISO 1585 says where it does not hold', () => {
    expect(insideIso1585({ kelvin: 298.15, pascal: 99000, humidity: 0.4 })).toBe(true);
    expect(insideIso1585({ kelvin: 283.15, pascal: 99000, humidity: 0.4 })).toBe(false);
    expect(insideIso1585({ kelvin: 298.15, pascal: 90000, humidity: 0.4 })).toBe(false);
  });
});

describe('the air of a moment', () => {
  it('is a whole, and a humidity nobody read widens its band', () => {
    const read = airOf({ kelvin: 303.15, pascal: 98000, humidity: 0.5 });
    const unread = airOf({ kelvin: 303.15, pascal: 98000 });
    if (read.kind !== 'air' || unread.kind !== 'air') throw new Error('it was not known');
    expect(unread.density).toBe(read.density);
    expect(unread.humidityAssumed).toBe(true);
    expect(read.humidityAssumed).toBe(false);
    expect(unread.band).toBeGreaterThan(1.5 * read.band);
    expect(read.relativeDry).toBeLessThan(read.relative);
  });
  it.each([
    ['gauge pressure', { kelvin: 293.15, pascal: 65e3 - 101325 }, /pressure/],
    ['°C as kelvin', { kelvin: 20, pascal: 101325 }, /temperature/],
    ['hPa as Pa', { kelvin: 293.15, pascal: 1013.25 }, /pressure/],
    ['60 for 60 %', { kelvin: 293.15, pascal: 101325, humidity: 60 }, /humidity/],
    ['no number', { kelvin: Number.NaN, pascal: 101325 }, /temperature/],
    ['limits that are none', { kelvin: 293.15, pascal: 101325, limits: { kelvin: Number.NaN } }, /limits/],
  ])('is not known from %s', (_, reading, why) => {
    const found = airOf(reading);
    expect(found.kind).toBe('not known');
    if (found.kind === 'not known') expect(found.why).toMatch(why);
  });
});
