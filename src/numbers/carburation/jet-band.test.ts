import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  areaRatio,
  expandedVolume,
  fuelNeed,
  type JetBand,
  type JetQuestion,
  jetAirOf,
  jetArea,
  jetBand,
  mainRatio,
  mainShare,
  mixtureRatio,
  orificeFlow,
  ringArea,
  seriesArea,
  zonesAt,
} from './index.ts';

const BOX = [155, 158, 160, 162, 165, 168, 170, 172, 175, 178];
const ask = (more: Partial<JetQuestion> = {}): JetBand => {
  const band = jetBand({
    jet: 165,
    numbering: 'flow',
    was: { density: 1.2 },
    now: { density: 1.1 },
    box: BOX,
    smallestGood: 100,
    ...more,
  });
  if (band.kind !== 'band') throw new Error(band.why);
  return band;
};
const air = fc.double({ min: 0.9, max: 1.35, noNaN: true });
const size = fc.double({ min: 1e-7, max: 1e-5, noNaN: true });

describe('the band of jets', () => {
  test('lies between theory and the paddock rule, and there and back is where it began', () => {
    fc.assert(
      fc.property(air, air, fc.constantFrom('diameter', 'flow'), (a, b, numbering) => {
        const there = ask({ numbering, was: { density: a }, now: { density: b } });
        const back = ask({ jet: there.theory[0], numbering, was: { density: b }, now: { density: a } });
        expect(back.theory[0]).toBeCloseTo(165, 9);
        expect(there.low).toBe(Math.min(there.theory[0], there.paddock));
        expect(there.high).toBe(Math.max(there.theory[0], there.paddock));
      }),
    );
  });

  test('scales with the jet, rises with the air, and the fitted jet is never leaner than its richest', () => {
    fc.assert(
      fc.property(air, air, air, (a, b, c) => {
        const [low, high] = [Math.min(b, c), Math.max(b, c)];
        const [one, two] = [low, high].map(density => ask({ was: { density: a }, now: { density } })) as [
          JetBand,
          JetBand,
        ];
        expect(two.high).toBeGreaterThanOrEqual(one.high);
        const double = ask({ jet: 330, was: { density: a }, now: { density: low } });
        expect(double.high).toBeCloseTo(2 * one.high, 9);
        if (one.advice.kind === 'fit') expect(one.advice.jet).toBeGreaterThanOrEqual(one.high - 1e-6);
      }),
    );
  });

  test('a tenth more density asks a flow number for 4.9 % by theory and 10 % by the paddock rule', () => {
    const band = ask({ was: { density: 1 }, now: { density: 1.1 } });
    expect(band.theory[0] / 165).toBeCloseTo(1.0488, 4);
    expect(band.paddock / 165).toBeCloseTo(1.1, 9);
    expect(band.mixture).toBeCloseTo(mixtureRatio(1.1), 9);
  });

  test('a number nobody knows the meaning of has both theories in its band', () => {
    const band = ask({ numbering: 'not known' });
    expect(band.theory[0]).toBeCloseTo(ask().theory[0], 9);
    expect(band.theory[1]).toBeCloseTo(ask({ numbering: 'diameter' }).theory[0], 9);
    expect(band.high).toBe(band.theory[1]);
  });

  test('steam in the air takes oxygen: the jet of theory shrinks by more than density tells', () => {
    expect(areaRatio({ density: 1.2, dry: 1.2 }, { density: 1.19, dry: 1.17 })).toBeLessThan(
      areaRatio({ density: 1.2 }, { density: 1.19 }),
    );
  });
});

describe('the air of a jet', () => {
  test('is what the readings give, less known by its oxygen where humidity was not read', () => {
    const hot = { kelvin: 307.15, pascal: 96500 };
    const [read, unread] = [jetAirOf({ ...hot, humidity: 0.5 }), jetAirOf(hot)];
    if (read.kind !== 'air' || unread.kind !== 'air') throw new Error('no air');
    expect(unread.density).toBe(read.density);
    expect(read.dry).toBeLessThan(read.density);
    expect(unread.u).toBeGreaterThan(2 * read.u);
    // half of the vapour that saturates 34 °C, 53 hPa of 965 hPa (steam tables, memory), as a rectangle
    expect(unread.u).toBeCloseTo(Math.hypot(0.0275 / Math.sqrt(3), 0.007), 2);
  });

  test('that cannot be gives no jet', () => {
    expect(jetAirOf({ kelvin: 90, pascal: 96500 })).toMatchObject({ kind: 'not known' });
  });
});

describe('which jet to fit', () => {
  test('denser air: richer at once, up to the next size in the box', () => {
    const { advice } = ask({ now: { density: 1.23 } });
    expect(advice).toEqual({ kind: 'fit', jet: 170, direction: 'richer' });
  });

  test('a box that ends below what is wanted has no jet to fit', () => {
    expect(ask({ now: { density: 1.4 } }).advice).toEqual({ kind: 'none rich enough', largest: 178 });
  });

  test('thinner air: one size at a time, whatever the band allows', () => {
    const { advice } = ask({ now: { density: 1.0 } });
    expect(advice).toEqual({ kind: 'fit', jet: 162, direction: 'leaner', heldBy: 'one size at a time' });
  });

  test('never below the smallest jet logged as good, unless somebody decides so', () => {
    expect(ask({ now: { density: 1.0 }, smallestGood: 165 }).advice).toMatchObject({
      jet: 165,
      direction: 'keep',
      heldBy: 'smallest good jet',
    });
    expect(
      jetBand({ jet: 165, numbering: 'flow', was: { density: 1.2 }, now: { density: 1 }, box: BOX }),
    ).toMatchObject({
      advice: { jet: 165, direction: 'keep' },
    });
    expect(ask({ now: { density: 1.0 }, smallestGood: 165, below: true }).advice).toMatchObject({ jet: 162 });
  });

  test('air that is not known well enough keeps the richer jet', () => {
    const now = { density: 1.2 * (161.5 / 165) ** 2 };
    expect(ask({ now }).advice).toMatchObject({ jet: 162 });
    expect(ask({ now, doubt: 0.01 }).advice).toMatchObject({ jet: 165, direction: 'keep', heldBy: 'doubt of the air' });
  });

  test('a rise no instrument shows keeps the jet, but never a rise of more than a hundredth', () => {
    expect(ask({ now: { density: 1.203 }, doubt: 0.003 }).advice).toMatchObject({ direction: 'keep' });
    expect(ask({ now: { density: 1.203 } }).advice).toMatchObject({ direction: 'richer' });
    expect(ask({ now: { density: 1.218 }, doubt: 0.2 }).advice).toMatchObject({ direction: 'richer' });
  });

  test('without a box the least number is said, never under the smallest good one', () => {
    const asked = { jet: 165, numbering: 'flow', was: { density: 1.2 }, now: { density: 1 } } as const;
    expect(jetBand({ ...asked, smallestGood: 160 })).toMatchObject({
      advice: { kind: 'at least', number: 160, direction: 'leaner', heldBy: 'smallest good jet' },
    });
    expect(jetBand({ ...asked, now: { density: 1.3 } })).toMatchObject({
      advice: { kind: 'at least', direction: 'richer' },
    });
  });

  test('leaner is never more than one size, and never richer than the jet there is, for any air', () => {
    fc.assert(
      fc.property(air, air, fc.double({ min: 0, max: 0.02, noNaN: true }), (a, b, doubt) => {
        const { advice, high } = ask({ was: { density: a }, now: { density: b }, doubt });
        if (advice.kind !== 'fit') return;
        expect(advice.jet).toBeGreaterThanOrEqual(162);
        if (high <= 165) expect(advice.jet).toBeLessThanOrEqual(165);
        expect(advice.direction).toBe(advice.jet > 165 ? 'richer' : advice.jet < 165 ? 'leaner' : 'keep');
      }),
    );
  });

  test('what is not known gives no jet', () => {
    for (const now of [{ density: Number.NaN }, { density: 0 }, { density: 1.1, dry: Number.NaN }])
      expect(jetBand({ jet: 165, numbering: 'flow', was: { density: 1.2 }, now })).toMatchObject({ kind: 'not known' });
    expect(
      jetBand({ jet: 165, numbering: 'flow', was: { density: 1.2 }, now: { density: 1 }, doubt: Number.NaN }),
    ).toMatchObject({
      kind: 'not known',
    });
  });
});

describe('what the log adds', () => {
  const learned = {
    kind: 'learned',
    exponent: 0.5,
    low: 0.4,
    high: 0.6,
    points: 8,
    by: 'all air',
    seen: [1.05, 1.25],
  } as const;

  test('counts by its richer end, whichever way the air goes', () => {
    expect(ask({ learned }).high).toBeCloseTo(165 * (1.1 / 1.2) ** 0.4, 9);
    expect(ask({ learned, now: { density: 1.25 } }).high).toBeCloseTo(165 * (1.25 / 1.2) ** 0.6, 9);
  });

  test('in air it has never seen the richest of band and log counts', () => {
    const band = ask({ learned, now: { density: 1.32 } });
    expect(band.beyondLog).toBe(true);
    expect(band.high).toBeCloseTo(band.paddock, 9);
  });

  test('a log of dry air says nothing of air that is known only whole', () => {
    expect(ask({ learned: { ...learned, by: 'dry air' } }).learned).toBeUndefined();
  });
});

describe('fuel and needle', () => {
  test('hotter fuel, more oil and ethanol each ask for more jet; nothing known of both times asks for none', () => {
    expect(fuelNeed({ kelvin: 288.15 }, { kelvin: 308.15 })).toBeCloseTo(1.0096, 4);
    expect(fuelNeed({ oil: 25 }, { oil: 16 })).toBeGreaterThan(1.02);
    expect(fuelNeed({ ethanol: 0 }, { ethanol: 0.1 })).toBeGreaterThan(1.03);
    expect(fuelNeed({ oil: 25 }, { ethanol: 0.1 })).toBe(1);
    expect(ask({ need: 1.02 }).high).toBeGreaterThan(ask().high);
  });

  test('a need that is undone is none', () => {
    fc.assert(
      fc.property(fc.double({ min: 260, max: 320, noNaN: true }), fc.integer({ min: 8, max: 100 }), (kelvin, oil) => {
        const [one, other] = [
          { kelvin, oil, ethanol: 0.05 },
          { kelvin: 290, oil: 20, ethanol: 0.1 },
        ];
        expect(fuelNeed(one, other) * fuelNeed(other, one)).toBeCloseTo(1, 9);
      }),
    );
  });

  test('the share of the main jet is the slope of both openings in logarithms', () => {
    fc.assert(
      fc.property(size, size, (main, ring) => {
        const h = 1e-6;
        const slope =
          (Math.log(seriesArea(main * (1 + h), ring)) - Math.log(seriesArea(main * (1 - h), ring))) / (2 * h);
        expect(mainShare(main, ring)).toBeCloseTo(slope, 5);
        expect(seriesArea(main, ring)).toBeLessThan(Math.min(main, ring));
      }),
    );
  });

  test('a wanted change through both is met by its main jet, or no jet can', () => {
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.8, max: 1.2, noNaN: true }), (main, ring, wanted) => {
        const ratio = mainRatio(wanted, main, ring);
        const before = seriesArea(main, ring);
        if (ratio === undefined) expect(wanted * before).toBeGreaterThanOrEqual(ring * (1 - 1e-9));
        else expect(seriesArea(main * ratio, ring) / before).toBeCloseTo(wanted, 6);
      }),
    );
  });

  test('an opening passes with its area and the root of the pull; petrol grows and shrinks back', () => {
    const at = { area: jetArea(1.65e-3), pressure: 4000, density: 745, discharge: 0.75 };
    // 315 cm³/min worked in Python, outside the project
    expect(orificeFlow(at) * 6e7).toBeCloseTo(315, 0);
    expect(orificeFlow({ ...at, pressure: 16000 })).toBeCloseTo(2 * orificeFlow(at), 12);
    expect(ringArea(2.68e-3, 1.9e-3)).toBeCloseTo(jetArea(2.68e-3) - jetArea(1.9e-3), 15);
    expect(expandedVolume(5e-3, 293.15, 293.15)).toBe(5e-3);
  });

  test('every throttle has something that meters', () => {
    for (let throttle = 0; throttle <= 1; throttle += 0.01) expect(zonesAt(throttle).length).toBeGreaterThan(0);
    expect(zonesAt(1).map(({ part }) => part)).toEqual(['main jet']);
  });
});
