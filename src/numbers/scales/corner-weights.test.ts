import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Corners,
  centre,
  cgHeight,
  cgHeightEqualWheels,
  cgHeightUncertainty,
  response,
  shares,
  totalOf,
} from './index.ts';

const kg = fc.double({ min: 5, max: 150, noNaN: true });
const corners = fc.record({ frontLeft: kg, frontRight: kg, rearLeft: kg, rearRight: kg });
const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stance = fc.record({
  wheelbase: metres(0.8, 1.3),
  frontTrack: metres(0.8, 1.3),
  rearTrack: metres(0.8, 1.4),
});
const place = fc.record({ forward: metres(-0.2, 1.4), left: metres(-0.6, 0.6) });
const add = (a: Corners, b: Corners): Corners => ({
  frontLeft: a.frontLeft + b.frontLeft,
  frontRight: a.frontRight + b.frontRight,
  rearLeft: a.rearLeft + b.rearLeft,
  rearRight: a.rearRight + b.rearRight,
});
const mirror = (w: Corners): Corners => ({
  frontLeft: w.frontRight,
  frontRight: w.frontLeft,
  rearLeft: w.rearRight,
  rearRight: w.rearLeft,
});

describe('shares and the middle of the mass', () => {
  test('do not change, shares and place, when every reading is as much larger', () => {
    fc.assert(
      fc.property(corners, stance, metres(0.1, 9), (w, s, k) => {
        const larger = {
          frontLeft: k * w.frontLeft,
          frontRight: k * w.frontRight,
          rearLeft: k * w.rearLeft,
          rearRight: k * w.rearRight,
        };
        expect(shares(larger).cross).toBeCloseTo(shares(w).cross, 12);
        expect(centre(larger, s).left).toBeCloseTo(centre(w, s).left, 12);
      }),
    );
  });

  test('mirror with the kart: left becomes right, cross the other diagonal, the middle changes its side', () => {
    fc.assert(
      fc.property(corners, stance, (w, s) => {
        expect(shares(mirror(w)).left).toBeCloseTo(1 - shares(w).left, 12);
        expect(shares(mirror(w)).cross).toBeCloseTo(1 - shares(w).cross, 12);
        expect(centre(mirror(w), s).left).toBeCloseTo(-centre(w, s).left, 12);
        expect(centre(mirror(w), s).forward).toBeCloseTo(centre(w, s).forward, 12);
      }),
    );
  });

  test('a twist of the frame moves cross and nothing else, with unequal tracks too', () => {
    fc.assert(
      fc.property(corners, stance, metres(-4, 4), (w, s, q) => {
        const r = (q * s.frontTrack) / s.rearTrack;
        const twisted = add(w, { frontLeft: q, frontRight: -q, rearLeft: -r, rearRight: r });
        expect(shares(twisted).front).toBeCloseTo(shares(w).front, 12);
        expect(centre(twisted, s).left).toBeCloseTo(centre(w, s).left, 12);
        expect(shares(twisted).cross - shares(w).cross).toBeCloseTo(-(q + r) / totalOf(w), 12);
      }),
    );
  });

  test('a mass shows on the scales as its own sum, and at its own place', () => {
    fc.assert(
      fc.property(metres(0.1, 20), place, stance, (m, at, s) => {
        const added = response(m, at, s);
        expect(totalOf(added)).toBeCloseTo(m, 9);
        expect(centre(added, s).forward).toBeCloseTo(at.forward, 9);
        expect(centre(added, s).left).toBeCloseTo(at.left, 9);
      }),
    );
  });

  test('no mass has no place', () => {
    const none = { frontLeft: 0, frontRight: 0, rearLeft: 0, rearRight: 0 };
    expect(centre(none, { wheelbase: 1, frontTrack: 1, rearTrack: 1 }).left).toBeNaN();
  });
});

describe('the height of the middle of the mass', () => {
  /** Both front scales with the rear raised, by turning a stiff kart about its front axle: the other way round. */
  function raise(h: number, b: number, s: { L: number; rF: number; rR: number; H: number; W: number }): number {
    const between = Math.hypot(s.L, s.rR - s.rF);
    const tilt = Math.asin((s.rR + s.H - s.rF) / between) - Math.asin((s.rR - s.rF) / between);
    // The middle of the mass from the front axle; a raised rear turns it forward and down about that axle.
    const [back, up] = [s.L - b, h - s.rF];
    const [backNow] = [back * Math.cos(tilt) - up * Math.sin(tilt)];
    const span = between * Math.cos(Math.asin((s.rR + s.H - s.rF) / between));
    return s.W * (1 - backNow / span);
  }
  const kart = fc.record({
    L: metres(0.95, 1.1),
    rF: metres(0.115, 0.14),
    rR: metres(0.115, 0.15),
    H: metres(0.1, 0.45),
    W: metres(120, 220),
  });

  test('comes back from a kart that is turned, for wheels of any size', () => {
    fc.assert(
      fc.property(kart, metres(0.15, 0.35), metres(0.35, 0.6), (s, h, b) => {
        const asked = {
          mass: s.W,
          wheelbase: s.L,
          frontLevel: (s.W * b) / s.L,
          frontRaised: raise(h, b, s),
          frontRadius: s.rF,
          rearRadius: s.rR,
          rise: s.H,
        };
        expect(cgHeight(asked).height).toBeCloseTo(h, 9);
        const equal = { ...asked, frontRadius: s.rR, frontRaised: raise(h, b, { ...s, rF: s.rR }) };
        expect(cgHeightEqualWheels(equal)).toBeCloseTo(h, 9);
      }),
    );
  });

  const asked = {
    mass: 181,
    wheelbase: 1.045,
    frontLevel: 75.5,
    frontRaised: 81,
    frontRadius: 0.128,
    rearRadius: 0.139,
    rise: 0.3,
  };

  test('its uncertainty is the slope times the limits: 0.1 kg at the front scales is about 1.9 mm', () => {
    const u = cgHeightUncertainty(asked, { frontRaised: 0.1 });
    expect(u * Math.sqrt(3)).toBeCloseTo(0.0019, 4);
    const step = cgHeight({ ...asked, frontRaised: 81.001 }).height - cgHeight(asked).height;
    expect(u).toBeCloseTo((step / 0.001) * (0.1 / Math.sqrt(3)), 7);
  });

  test('is no number where the wheels cannot stand so', () => {
    expect(cgHeight({ ...asked, rise: 1.2 }).height).toBeNaN();
  });
});
