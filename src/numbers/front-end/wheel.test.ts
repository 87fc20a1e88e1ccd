import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dot, minus, size, turned, type Vector } from '../vector.ts';
import { ackermannShare, idealInner } from './ackermann.ts';
import { innerEnd, rodTurn, straightRod, turnPerLength } from './linkage.ts';
import { diagonalTransfer, frameFromSeries, seriesStiffness, stiffnessFromShim } from './warp.ts';
import { edgeDrop, type FrontWheel, jacking, kingpin, steered } from './wheel.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const DEGREE = Math.PI / 180;
const wheel: fc.Arbitrary<FrontWheel> = fc.record({
  caster: between(-0.1, 0.4),
  inclination: between(-0.1, 0.35),
  stub: between(0.06, 0.2),
  forward: between(-0.02, 0.02),
  radius: between(0.11, 0.16),
  camber: between(-0.06, 0.06),
});
const turn = between(-0.7, 0.7);

describe('a vector turned about an axis', () => {
  it('keeps its length and its part along the axis, and comes back when turned back', () => {
    const vector = fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1)) as fc.Arbitrary<Vector>;
    fc.assert(
      fc.property(vector, wheel, between(-7, 7), (a, w, angle) => {
        const axis = kingpin('left', w);
        const b = turned(a, axis, angle);
        expect(size(b)).toBeCloseTo(size(a), 12);
        expect(dot(b, axis)).toBeCloseTo(dot(a, axis), 12);
        expect(size(minus(turned(b, axis, -angle), a))).toBeCloseTo(0, 12);
      }),
    );
  });
});

describe('a steered wheel', () => {
  it('is the mirror of the other side steered the other way', () => {
    fc.assert(
      fc.property(wheel, turn, (w, angle) => {
        const [left, right] = [steered('left', w, angle), steered('right', w, -angle)];
        expect(right.rise).toBeCloseTo(left.rise, 12);
        expect(right.camber).toBeCloseTo(left.camber, 12);
        expect(right.roadSteer).toBeCloseTo(-left.roadSteer, 12);
        expect(right.contact[1]).toBeCloseTo(-left.contact[1], 12);
      }),
    );
  });
  it('rises in proportion when the whole is larger, and leans and points the same', () => {
    fc.assert(
      fc.property(wheel, turn, between(0.2, 5), (w, angle, k) => {
        const large = { ...w, stub: k * w.stub, forward: k * w.forward, radius: k * w.radius };
        const [one, other] = [steered('left', w, angle), steered('left', large, angle)];
        expect(other.rise).toBeCloseTo(k * one.rise, 11);
        expect(other.camber).toBeCloseTo(one.camber, 12);
        expect(other.roadSteer).toBeCloseTo(one.roadSteer, 12);
      }),
    );
  });
  it('begins to rise at the rate that the first-order formula says', () => {
    fc.assert(
      fc.property(wheel, fc.constantFrom('left' as const, 'right' as const), (w, side) => {
        const upright = { ...w, camber: 0 };
        const h = 1e-5;
        const slope = (steered(side, upright, h).rise - steered(side, upright, -h).rise) / (2 * h);
        expect(slope).toBeCloseTo(jacking(side, upright), 8);
      }),
    );
  });
  it('turns as far as its kingpin when that stands upright, and neither leans nor rises', () => {
    fc.assert(
      fc.property(wheel, turn, (w, angle) => {
        const at = steered('left', { ...w, caster: 0, inclination: 0 }, angle);
        expect(at.roadSteer).toBeCloseTo(angle, 12);
        expect(at.rise).toBeCloseTo(0, 12);
        expect(at.camber).toBeCloseTo(w.camber, 12);
      }),
    );
  });
  it('drops its edge the same for camber in and out', () => {
    expect(edgeDrop(3.4 * DEGREE, 0.135)).toBeCloseTo(0.004, 4); // 4 mm at 3.4°, worked outside the project
    expect(edgeDrop(-3.4 * DEGREE, 0.135)).toBe(edgeDrop(3.4 * DEGREE, 0.135));
  });
});

describe('inner against outer wheel', () => {
  it('has its ideal about one point on the line of the rear axle', () => {
    fc.assert(
      fc.property(between(0.01, 0.6), between(0.5, 1), between(0.9, 1.2), (outer, spacing, wheelbase) => {
        const centre = wheelbase / Math.tan(outer) - spacing; // from the inner kingpin to the turning centre
        expect(Math.tan(idealInner(outer, spacing, wheelbase))).toBeCloseTo(wheelbase / centre, 9);
        expect(ackermannShare(outer, outer, spacing, wheelbase)).toBe(0);
        expect(ackermannShare(idealInner(outer, spacing, wheelbase), outer, spacing, wheelbase)).toBeCloseTo(1, 9);
      }),
    );
  });
  it('is not known straight ahead', () => {
    expect(idealInner(0, 0.8, 1.045)).toBe(0);
    expect(ackermannShare(0, 0, 0.8, 1.045)).toBeNaN();
  });
});

describe('a tie rod', () => {
  const inner: Vector = [-0.09, 0.03, -0.02];
  const bare = (w: FrontWheel) => ({
    pivot: [0, 0.4, 0] as Vector,
    axis: kingpin('left', w),
    arm: [-0.095, -0.02, -0.02] as Vector,
  });
  it('gives back the turn of the kingpin that its length was taken at', () => {
    fc.assert(
      fc.property(wheel, between(-0.6, 0.6), (w, angle) => {
        const rod = bare(w);
        const length = straightRod({ ...rod, arm: turned(rod.arm, rod.axis, angle) }, inner);
        expect(rodTurn({ ...rod, length }, inner, angle)).toBeCloseTo(angle, 7);
      }),
    );
  });
  it('turns the kingpin for its length at the rate that the arm says', () => {
    fc.assert(
      fc.property(wheel, w => {
        const rod = bare(w);
        const length = straightRod(rod, inner);
        const at = (by: number) => rodTurn({ ...rod, length: length + by }, inner) ?? Number.NaN;
        const slope = (at(1e-6) - at(-1e-6)) / 2e-6;
        expect(slope / turnPerLength({ ...rod, length }, inner, 0)).toBeCloseTo(1, 5);
      }),
    );
  });
  it('behind the kingpin gives toe-in when longer, ahead of it toe-out', () => {
    const upright = {
      ...bare({ caster: 0, inclination: 0, stub: 0.1, forward: 0, radius: 0.13, camber: 0 }),
      length: 0.35,
    };
    const ahead = { ...upright, arm: [0.095, -0.02, -0.02] as Vector };
    expect(turnPerLength(upright, inner, 0)).toBeLessThan(0); // left wheel to the right: toe-in
    expect(turnPerLength(ahead, [0.09, 0.03, -0.02], 0)).toBeGreaterThan(0);
  });
  it('that is too short or too long says so', () => {
    const rod = bare({ caster: 0.2, inclination: 0.2, stub: 0.1, forward: 0, radius: 0.13, camber: 0 });
    expect(rodTurn({ ...rod, length: 0.1 }, inner)).toBeUndefined();
    expect(rodTurn({ ...rod, length: 0.9 }, inner)).toBeUndefined();
  });
  it('has an inner end that goes round with the column', () => {
    const column = { centre: inner, axis: [0, 0, 1], left: [-0.06, 0, 0], right: [-0.06, 0, 0] } as const;
    const [x, y] = innerEnd(column, 'left', Math.PI / 2);
    expect(x).toBeCloseTo(-0.09, 12);
    expect(y).toBeCloseTo(-0.03, 12);
  });
});

describe('frame and tyres in twist', () => {
  const springs = fc.record({
    frame: between(3_000, 30_000),
    frontTyre: between(40_000, 200_000),
    rearTyre: between(40_000, 200_000),
    frontTrack: between(0.9, 1.3),
    rearTrack: between(0.9, 1.3),
  });
  it('are softer together than the frame alone, and give the frame back', () => {
    fc.assert(
      fc.property(springs, s => {
        const series = seriesStiffness(s);
        expect(series).toBeLessThan(s.frame);
        expect(frameFromSeries(series, s) / s.frame).toBeCloseTo(1, 9);
        expect(seriesStiffness({ ...s, frame: Number.POSITIVE_INFINITY })).toBeGreaterThan(series);
      }),
    );
  });
  it('gain under a shim what the stiffness read from that shim says', () => {
    fc.assert(
      fc.property(springs, between(1, 60), between(0.001, 0.01), (s, gain, shim) => {
        expect(diagonalTransfer(stiffnessFromShim(gain, shim, s.frontTrack), shim, s).front).toBeCloseTo(gain, 9);
      }),
    );
  });
});
