import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fullRatio, trappedRatio } from './compression.ts';
import { angleOfDrop, type Crank, dropBelowTop, timingSlope, travel } from './crank.ts';
import { meanEffectivePressure, powerOf } from './pace.ts';
import { gasTemperature, tunedLength, waveSpeed } from './pipe.ts';
import { afterGasket, blowdown, portDuration, roofFrom } from './ports.ts';

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const cranks: fc.Arbitrary<Crank> = fc
  .record({ stroke: size(0.03, 0.08), long: size(1.5, 2.8), offset: size(-0.002, 0.002) })
  .map(({ stroke, long, offset }) => ({ stroke, rod: stroke * long, offset }));
const inline = cranks.map(({ stroke, rod }) => ({ stroke, rod }));

describe('the piston', () => {
  it('comes round between angle and drop to 1e-9, on either side of top', () => {
    fc.assert(
      fc.property(cranks, size(0.01, 3), (crank, angle) => {
        expect(Math.abs(angleOfDrop(crank, dropBelowTop(crank, angle), 'after') - angle)).toBeLessThan(1e-9);
        expect(Math.abs(angleOfDrop(crank, dropBelowTop(crank, -angle), 'before') - angle)).toBeLessThan(1e-9);
      }),
    );
  });
  it('stands where pin and rod put it, found by going round the triangle', () => {
    fc.assert(
      fc.property(cranks, size(-3, 3), (crank, angle) => {
        const { stroke, rod, offset = 0 } = crank;
        const r = stroke / 2;
        const phi = Math.asin(offset / (r + rod)) + angle;
        const height = Math.sqrt((r + rod) ** 2 - offset ** 2) - dropBelowTop(crank, angle);
        const [x, y] = [r * Math.sin(phi) - offset, r * Math.cos(phi) - height];
        expect(Math.hypot(x, y)).toBeCloseTo(rod, 12);
      }),
    );
  });
  it('is the same before and after top without an offset, and never above it', () => {
    fc.assert(
      fc.property(inline, size(0, Math.PI), (crank, angle) => {
        expect(dropBelowTop(crank, -angle)).toBeCloseTo(dropBelowTop(crank, angle), 14);
        expect(dropBelowTop(crank, angle)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('with an offset is the mirror of itself with the offset on the other side', () => {
    fc.assert(
      fc.property(cranks, size(-3, 3), (crank, angle) => {
        const mirror = { ...crank, offset: -(crank.offset ?? 0) };
        expect(dropBelowTop(mirror, -angle)).toBeCloseTo(dropBelowTop(crank, angle), 14);
      }),
    );
  });
  it('falls further the further the crank has turned, and scales with the engine', () => {
    fc.assert(
      fc.property(inline, size(0, 3), size(0.001, 0.1), size(0.5, 2), (crank, angle, more, k) => {
        expect(dropBelowTop(crank, angle + more)).toBeGreaterThan(dropBelowTop(crank, angle));
        const larger = { stroke: crank.stroke * k, rod: crank.rod * k };
        expect(dropBelowTop(larger, angle)).toBeCloseTo(k * dropBelowTop(crank, angle), 12);
      }),
    );
  });
  it('moves the timing as the finite difference says', () => {
    fc.assert(
      fc.property(cranks, size(0.1, 1.2), (crank, angle) => {
        const step = 1e-5;
        const rate = (dropBelowTop(crank, -angle - step) - dropBelowTop(crank, -angle + step)) / (2 * step);
        expect(timingSlope(crank, angle) * rate).toBeCloseTo(1, 6);
      }),
    );
  });
  it('never reaches what lies below bottom, nor what is no number', () => {
    const crank = { stroke: 0.0545, rod: 0.11 };
    expect(angleOfDrop(crank, 0.0546)).toBeNaN();
    expect(angleOfDrop(crank, -0.001)).toBeNaN();
    expect(angleOfDrop(crank, Number.NaN)).toBeNaN();
    expect(angleOfDrop(crank, 0.0545)).toBeCloseTo(Math.PI, 6);
    expect(angleOfDrop(crank, 0)).toBeCloseTo(0, 6);
  });
});

describe('a port', () => {
  it('is the same port from top, from bottom and from the top of the cylinder', () => {
    fc.assert(
      fc.property(cranks, size(0.1, 0.9), size(-0.001, 0.001), (crank, share, deck) => {
        const roof = share * travel(crank);
        expect(roofFrom(crank, roof, 'crown at top')).toBe(roof);
        expect(roofFrom(crank, travel(crank) - roof, 'crown at bottom')).toBeCloseTo(roof, 12);
        expect(roofFrom(crank, roof + deck, 'top of the cylinder', deck)).toBeCloseTo(roof, 12);
      }),
    );
  });
  it('stands open longer the nearer its roof is to top, and opens before a lower one', () => {
    fc.assert(
      fc.property(cranks, size(0.2, 0.6), size(0.01, 0.3), (crank, share, lower) => {
        const high = portDuration(crank, share * travel(crank));
        const low = portDuration(crank, (share + lower) * travel(crank));
        expect(high.duration).toBeGreaterThan(low.duration);
        expect(blowdown(high, low)).toBeGreaterThan(0);
        expect(afterGasket(crank, high.roof, 0.0002).duration).toBeGreaterThan(high.duration);
      }),
    );
  });
});

describe('volumes, pressures and pipe', () => {
  it('trap less than the whole stroke, and all of it where the roof is at bottom', () => {
    fc.assert(
      fc.property(
        size(0.03, 0.08),
        size(0.03, 0.08),
        size(2e-6, 3e-5),
        size(0.1, 1),
        (bore, stroke, chamber, share) => {
          const full = fullRatio({ bore, stroke }, chamber);
          expect(trappedRatio(bore, share * stroke, chamber)).toBeLessThanOrEqual(full * (1 + 1e-12));
          expect(trappedRatio(bore, stroke, chamber) / full).toBeCloseTo(1, 12);
        },
      ),
    );
  });
  it('come round between power and mean pressure, and between gas temperature and wave speed', () => {
    fc.assert(
      fc.property(size(1e3, 6e4), size(5e-5, 3e-4), size(200, 1600), (power, swept, speed) => {
        const pressure = meanEffectivePressure({ power, swept, speed });
        expect(powerOf(pressure, swept, speed) / power).toBeCloseTo(1, 9);
        expect(gasTemperature(waveSpeed(speed)) / speed).toBeCloseTo(1, 9);
      }),
    );
  });
  it('a pipe is half as long at twice the speed', () => {
    const tuned = { wave: 520, duration: 3.4, speed: 1200 };
    expect(tunedLength({ ...tuned, speed: 2400 })).toBeCloseTo(tunedLength(tuned) / 2, 12);
  });
});
