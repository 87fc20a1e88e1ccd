import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import fixture from '../../../test/fixtures/laps/tracks.json' with { type: 'json' };
import { gearSpeeds } from './gears.ts';
import { GENERIC_KART } from './generic-kart.ts';
import type { LapKart } from './kart.ts';
import { predictorOf, type Run } from './lap.ts';
import { type Element, lengthOf, trackAlong, trackOf } from './track.ts';

const TRACKS = fixture.tracks as unknown as Readonly<
  Record<'K1' | 'K2' | 'K3' | 'K4' | 'K7' | 'K8', readonly Element[]>
>;

function time(elements: readonly Element[], kart: LapKart = GENERIC_KART, run: Run = { step: 1 }): number {
  const lap = predictorOf(trackOf(elements), run).lap(kart);
  if (lap.kind !== 'lap') throw new Error('the kart must get round');
  return lap.time;
}
const grippy = (by: number): LapKart => {
  const { grip } = GENERIC_KART;
  return { ...GENERIC_KART, grip: { ...grip, side: grip.side * by, along: grip.along * by } };
};
const strong = (by: number): LapKart => ({ ...GENERIC_KART, engine: { ...GENERIC_KART.engine, scale: by } });
const heavy = (by: number): LapKart => ({ ...GENERIC_KART, mass: GENERIC_KART.mass * by });
const named = fc.constantFrom(...Object.values(TRACKS));
const few = { numRuns: 25 };

describe('a predicted lap', () => {
  it('comes nearer by the square of the step at least', () => {
    for (const [name, elements] of Object.entries(TRACKS)) {
      const exact = time(elements, GENERIC_KART, { step: 0.02 });
      const off = (step: number): number => Math.abs(time(elements, GENERIC_KART, { step }) / exact - 1);
      expect(Math.log(off(2) / off(0.25)) / Math.log(8), name).toBeGreaterThan(1.8);
    }
  });
  it('does not depend on where the line is, nor on which way the track turns', () => {
    fc.assert(
      fc.property(named, fc.nat(30), (elements, by) => {
        const turned = [...elements.slice(by % elements.length), ...elements.slice(0, by % elements.length)];
        const mirrored = elements.map((one): Element => (one[0] === 'C' ? ['C', one[1], -one[2], one[3]] : one));
        expect(time(turned) / time(elements)).toBeCloseTo(1, 9);
        expect(time(mirrored)).toBe(time(elements));
      }),
      few,
    );
  });
  it('is never slower with more grip, and with more power only where an earlier shift costs its time', () => {
    fc.assert(
      fc.property(named, fc.double({ min: 0.7, max: 1.3, noNaN: true }), (elements, by) => {
        expect(time(elements, grippy(by * 1.02))).toBeLessThan(time(elements, grippy(by)));
        const atOnce = (of: number): LapKart => ({ ...strong(of), engine: { ...strong(of).engine, shiftTime: 0 } });
        expect(time(elements, atOnce(by * 1.02))).toBeLessThan(time(elements, atOnce(by)));
        expect(time(elements, heavy(by * 1.02))).toBeGreaterThan(time(elements, heavy(by)));
      }),
      few,
    );
  });
  it('is longer by the root where track and wind are scaled so that nothing else changes', () => {
    // Lengths by q, speeds by its root: drag per kilogram and engine speed per speed must shrink alike.
    fc.assert(
      fc.property(named, fc.double({ min: 0.5, max: 2, noNaN: true }), (elements, q) => {
        const root = Math.sqrt(q);
        const larger = elements.map(
          (one): Element => (one[0] === 'C' ? ['C', one[1] * q, one[2], one[3] * q] : ['S', one[1] * q]),
        );
        const { engine, scrub, wheel } = GENERIC_KART;
        const kart: LapKart = {
          ...GENERIC_KART,
          dragArea: GENERIC_KART.dragArea / q,
          scrub: { ...scrub, tight: scrub.tight * q },
          // A wheel larger by the root turns as fast; its torque at the ground stays when it grows as well.
          wheel: { radius: wheel.radius * root, inertia: wheel.inertia * q },
          engine: { ...engine, scale: root, inertia: engine.inertia * q, shiftTime: engine.shiftTime * root },
          speedCap: GENERIC_KART.speedCap * root,
        };
        expect(time(larger, kart, { step: q }) / (time(elements) * root)).toBeCloseTo(1, 9);
      }),
      few,
    );
  });
  it('is the same from the elements and from their curvature along the way', () => {
    const track = trackOf(TRACKS.K3);
    const [at, curvature] = [[] as number[], [] as number[]];
    let from = 0;
    for (const { length, from: first, to } of track.pieces) {
      for (let n = 0; n < 200; n++) {
        at.push(from + (length * n) / 200);
        curvature.push(first + ((to - first) * n) / 200);
      }
      from += length;
    }
    const along = trackAlong({ at, curvature }, { length: lengthOf(track) });
    expect(lengthOf(along)).toBeCloseTo(lengthOf(track), 9);
    const lap = predictorOf(along, { step: 1 }).lap(GENERIC_KART);
    expect(lap.kind === 'lap' && lap.time / time(TRACKS.K3)).toBeCloseTo(1, 4);
  });
  it('says speed and time along the way, and where each corner is slowest', () => {
    const predictor = predictorOf(trackOf(TRACKS.K1), { step: 1 });
    const lap = predictor.lap(GENERIC_KART);
    const { at, speed, time: since } = predictor.trail();
    expect(at.at(-1)).toBeCloseTo(predictor.length, 9);
    expect(speed.at(-1)).toBe(speed[0]);
    expect(lap).toMatchObject({ kind: 'lap', time: expect.closeTo(since.at(-1) ?? 0, 9) });
    expect(predictor.corners()).toHaveLength(7);
  });
  it('goes flat out round a circle that asks for nothing less, however the lap is begun', () => {
    const lap = predictorOf(trackOf([['C', 300, 360, 0]]), { step: 1 }).lap(GENERIC_KART);
    expect(lap).toMatchObject({ kind: 'lap', upshifts: 0 });
    const top = gearSpeeds(GENERIC_KART).top ?? Number.NaN;
    expect(lap.kind === 'lap' && lap.vMin).toBeGreaterThan(top - 3); // the bend's scrub takes some of it
    expect(lap.kind === 'lap' && lap.vMax - lap.vMin).toBeLessThan(1e-6);
  });
  it('stays at the limit of the engine where the last gear is too short, and does not jump about it', () => {
    const short: LapKart = { ...strong(3), gearing: { ...GENERIC_KART.gearing, rear: 40 } };
    const { limit, top } = gearSpeeds(short);
    const predictor = predictorOf(
      trackOf([
        ['S', 600],
        ['C', 60, 180, 6],
        ['S', 600],
        ['C', 60, 180, 6],
      ]),
      { step: 1 },
    );
    expect(predictor.lap(short)).toMatchObject({ vMax: expect.closeTo(limit[5] ?? 0, 9) });
    expect(top).toBeCloseTo(limit[5] ?? 0, 9);
  });
  it('ends where the engine does not beat what holds the kart', () => {
    const weak: LapKart = { ...strong(0.01), rolling: 0.3 };
    expect(predictorOf(trackOf(TRACKS.K7), { step: 1 }).lap(weak)).toMatchObject({ kind: 'stuck' });
    expect(gearSpeeds(weak).top).toBeUndefined();
  });
});
