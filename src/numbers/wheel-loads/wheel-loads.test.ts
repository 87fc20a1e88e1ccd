import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diagonalTransfer, seriesStiffness } from '../front-end/warp.ts';
import { axleLoads, fourWheels, G, height, type Loads, liftAt, rollover, threeWheels } from './statics.ts';
import { stance, wheelLoads } from './wheel-loads.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const body = fc.record({
  mass: between(80, 260),
  wheelbase: between(0.95, 1.2),
  ahead: between(0.35, 0.55),
  left: between(-0.03, 0.03),
  heightFront: between(0.12, 0.3),
  heightRear: between(0.15, 0.35),
});
const springs = fc.record({
  frame: fc.oneof(between(3_000, 30_000), fc.constant(Number.POSITIVE_INFINITY)),
  frontTyre: between(40_000, 200_000),
  rearTyre: between(40_000, 200_000),
  frontTrack: between(0.9, 1.3),
  rearTrack: between(0.9, 1.3),
});
const motion = fc.record({ lateral: between(0, 30), braking: between(-8, 12) });
const warp = between(-0.02, 0.02);
const sum = (l: Loads): number => l.frontLeft + l.frontRight + l.rearLeft + l.rearRight;
/** Moment of the wheels about the middle line, outward +. */
const roll = (l: Loads, t: { frontTrack: number; rearTrack: number }): number =>
  ((l.frontRight - l.frontLeft) * t.frontTrack + (l.rearRight - l.rearLeft) * t.rearTrack) / 2;

describe('the loads of four wheels', () => {
  it('carry the kart and balance both moments, whatever the stiffness', () => {
    fc.assert(
      fc.property(body, springs, motion, warp, (b, s, m, w) => {
        const loads = fourWheels(b, s, m, w);
        expect(sum(loads)).toBeCloseTo(b.mass * G, 6);
        expect(roll(loads, s)).toBeCloseTo(b.mass * (m.lateral * height(b) - G * b.left), 6);
        expect((loads.frontLeft + loads.frontRight) * b.wheelbase).toBeCloseTo(
          b.mass * (G * b.ahead + m.braking * height(b)),
          6,
        );
      }),
    );
  });
  it('scale with the mass when the stiffness does', () => {
    fc.assert(
      fc.property(body, springs, motion, between(0.3, 3), (b, s, m, k) => {
        const heavy = { ...b, mass: k * b.mass };
        expect(fourWheels(heavy, s, m).rearLeft).toBeCloseTo(k * fourWheels(b, s, m).rearLeft, 6);
      }),
    );
  });
  it('shift by the diagonal transfer when the front is warped', () => {
    fc.assert(
      fc.property(body, springs, motion, warp, (b, s, m, w) => {
        const [flat, warped] = [fourWheels(b, s, m), fourWheels(b, s, m, w)];
        const moved = diagonalTransfer(seriesStiffness(s), w, s);
        expect(warped.frontLeft - flat.frontLeft).toBeCloseTo(moved.front, 6);
        expect(warped.rearLeft - flat.rearLeft).toBeCloseTo(-moved.rear, 6);
      }),
    );
  });
  it('of a very stiff frame are those of a rigid one', () => {
    fc.assert(
      fc.property(body, springs, motion, (b, s, m) => {
        const stiff = fourWheels(b, { ...s, frame: 1e12 }, m);
        const rigid = fourWheels(b, { ...s, frame: Number.POSITIVE_INFINITY }, m);
        expect(stiff.rearLeft).toBeCloseTo(rigid.rearLeft, 2);
      }),
    );
  });
});

describe('a wheel that lifts', () => {
  it('carries nothing at the acceleration that lifts it', () => {
    fc.assert(
      fc.property(body, springs, warp, (b, s, w) => {
        const at = liftAt('rearLeft', b, s, { braking: 0, warp: w });
        fc.pre(Number.isFinite(at) && at > 0);
        expect(fourWheels(b, s, { lateral: at, braking: 0 }, w).rearLeft).toBeCloseTo(0, 6);
      }),
    );
  });
  it('leaves three that balance as well', () => {
    fc.assert(
      fc.property(body, springs, motion, fc.constantFrom('frontLeft' as const, 'rearLeft' as const), (b, s, m, up) => {
        const loads = threeWheels(up, b, s, m);
        expect(loads[up]).toBe(0);
        expect(sum(loads)).toBeCloseTo(b.mass * G, 6);
        expect(roll(loads, s)).toBeCloseTo(b.mass * (m.lateral * height(b) - G * b.left), 6);
      }),
    );
  });
  it('is the last but one: at the point of going over the other inner wheel carries nothing either', () => {
    fc.assert(
      fc.property(body, springs, between(-3, 6), (b, s, braking) => {
        const axles = axleLoads(b, braking);
        fc.pre(axles.front > 0 && axles.rear > 0);
        const lateral = rollover(b, s, braking);
        expect(threeWheels('rearLeft', b, s, { lateral, braking }).frontLeft).toBeCloseTo(0, 6);
        expect(threeWheels('frontLeft', b, s, { lateral, braking }).rearLeft).toBeCloseTo(0, 6);
      }),
    );
  });
  it('is taken off the road below the point of going over, and never leaves a load below nothing', () => {
    fc.assert(
      fc.property(body, springs, between(0.05, 0.99), warp, (b, s, share, w) => {
        const found = stance(b, s, { lateral: share * rollover(b, s), braking: 0 }, w);
        fc.pre(found.up !== 'both'); // a warp may lift a wheel of the outer side
        const least = Math.min(found.loads.frontLeft, found.loads.rearLeft);
        expect(least).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('goes over at half the track over the height when both tracks are alike', () => {
    const b = { mass: 180, wheelbase: 1.05, ahead: 0.45, left: 0, heightFront: 0.25, heightRear: 0.25 };
    expect(rollover(b, { frontTrack: 1.1, rearTrack: 1.1 }) / G).toBeCloseTo(1.1 / 2 / 0.25, 12);
  });
});

describe('a question about wheel loads', () => {
  const answer = (more: Record<string, unknown>) => {
    const given = wheelLoads.ask({ ...wheelLoads.example, ...more });
    if (given.kind === 'problems') throw new Error(JSON.stringify(given.problems));
    return given;
  };
  const problems = (more: Record<string, unknown>) => {
    const given = wheelLoads.ask({ ...wheelLoads.example, ...more });
    if (given.kind === 'answer') throw new Error(given.say.join(' '));
    return given.problems;
  };
  it('answers a right turn as the mirror of a left one', () => {
    const left = answer({ 'cg left': '5 mm' }).figures;
    const right = answer({ turn: 'right', 'cg left': '-5 mm' }).figures;
    expect(right['front right']).toEqual(left['front left']);
    expect(right['rear left']).toEqual(left['rear right']);
  });
  it('says which wheel is up, and that the kart goes over, with its caution', () => {
    expect(answer({ 'lateral acceleration': '2.3 g0' }).say[0]).toContain('left rear wheel is off the road');
    const over = answer({ 'lateral acceleration': '2.6 g0' });
    expect(over.say[0]).toContain('goes over');
    expect(over.figures['front left']).toBeUndefined(); // nothing that could be weighed
    expect(over.say.join(' ')).toContain('Caution');
  });
  it('takes a frame that was not measured as rigid, and says so', () => {
    const { 'frame torque per degree': _, ...rest } = wheelLoads.example;
    const given = wheelLoads.ask(rest);
    expect(given.kind === 'answer' && given.notes.join(' ')).toContain('rigid');
  });
  it('reads the same frame from a shim as from the bench', () => {
    const { 'frame torque per degree': _, ...rest } = wheelLoads.example;
    const shimmed = wheelLoads.ask({ ...rest, shim: '3 mm', 'shim gain': '1.76389727 kg' });
    expect(shimmed.kind === 'answer' && shimmed.figures['rear left']?.si).toBeCloseTo(
      answer({}).figures['rear left']?.si ?? 0,
      3,
    );
  });
  it('refuses what cannot be, all at once, with what would be right', () => {
    expect(problems({ mass: '-3 kg', 'front share': '120 %', warp: '1 m' }).map(p => p.path)).toEqual([
      'mass',
      'front share',
      'warp',
    ]);
    expect(problems({ braking: '2.9 g0' })[0]?.expected).toContain('rear wheels leave the road');
    expect(problems({ shim: '3 mm' }).map(p => p.path)).toEqual(['shim gain', 'frame torque per degree']);
    expect(problems({ 'cg height front': '200 mm', 'cg height rear': '200 mm' })[0]).toMatchObject({
      path: 'cg height',
      expected: expect.stringContaining('200 mm'),
    });
    expect(problems({ 'cg left': '700 mm' })[0]).toMatchObject({ path: 'cg left', got: '700 mm' });
  });
  it('never throws, whatever comes, and never promises', () => {
    const keys = [...Object.keys(wheelLoads.example), 'shim', 'shim gain', 'braking', 'cg left', 'cg height rear'];
    const text = fc
      .tuple(fc.double(), fc.constantFrom('mm', 'kg', 'N·m', '%', 'g0', 'N/mm', '°'))
      .map(([n, unit]) => `${n} ${unit}`);
    fc.assert(
      fc.property(fc.anything(), fc.dictionary(fc.constantFrom(...keys), text), (any, keyed) => {
        expect(['answer', 'problems']).toContain(wheelLoads.ask(any).kind);
        expect(JSON.stringify(wheelLoads.ask({ ...wheelLoads.example, ...keyed }))).not.toMatch(/\bsafe/i);
      }),
    );
  });
  it('marks an answer outside what was checked', () => {
    expect(answer({ mass: '500 kg' }).notes.join(' ')).toContain('Outside the range');
  });
});
