import { describe, expect, it } from 'vitest';
import tracks from '../../../../test/fixtures/laps/tracks.json' with { type: 'json' };
import { knownLogs } from '../../../../test/lap-logs.ts';
import { smooth } from '../../compare/index.ts';
import { motionOf, receiverFor } from '../../find/index.ts';
import { LogImport } from '../../import/index.ts';
import { gearSpeeds } from '../gears.ts';
import { GENERIC_KART } from '../generic-kart.ts';
import { type LapKart, ratioOf } from '../kart.ts';
import { predictorOf } from '../lap.ts';
import { type Element, trackOf } from '../track.ts';
import { fitCoast } from './coast.ts';
import { fitGrip } from './grip.ts';
import { type FitLog, type Fitted, fitLogOf } from './log.ts';
import { fitPower } from './power.ts';
import { fitRadius } from './radius.ts';

const found = (fitted: Fitted): { readonly value: number; readonly spread: number } => {
  if (fitted.kind === 'unknown') throw new Error(fitted.why);
  return fitted;
};
const whyNot = (fitted: Fitted): string => (fitted.kind === 'unknown' ? fitted.why : '');

/** Small errors that come again with the seed. */
function noise(seed: number): () => number {
  let state = seed;
  const even = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}

/** A lap driven just as predicted, ten fixes a second. */
function made(kart: LapKart, error = 0): FitLog {
  const elements = tracks.tracks.K3 as unknown as readonly Element[];
  const track = trackOf(elements);
  const predictor = predictorOf(track, { step: 0.25 });
  const lap = predictor.lap(kart);
  const { at, speed: fast, time: since } = predictor.trail();
  const chance = noise(7);
  const ups = gearSpeeds(kart).upshift;
  const laps = 3;
  const count = Math.floor(laps * (lap.kind === 'lap' ? lap.time : 0) * 10) - 1;
  const [time, speed, ahead] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const [curvature, rotation] = [new Float64Array(count), new Float64Array(count)];
  let node = 0;
  for (let n = 0; n < count; n++) {
    const whole = since.at(-1) ?? 0;
    const now = (n / 10) % whole;
    if (now < (since[node] ?? 0)) node = 0;
    while ((since[node + 1] ?? 0) <= now) node++;
    const [v0, v1] = [fast[node] ?? 0, fast[node + 1] ?? 0];
    const share = (now - (since[node] ?? 0)) / ((since[node + 1] ?? 0) - (since[node] ?? 0));
    time[n] = n / 10;
    const v = v0 + (v1 - v0) * share;
    speed[n] = v + error * 0.05 * chance();
    ahead[n] = (v1 - v0) / ((since[node + 1] ?? 0) - (since[node] ?? 0)) + error * 0.3 * chance();
    let [from, place] = [0, (at[node] ?? 0) + 1e-6];
    for (const piece of track.pieces) {
      if (place >= from && place < from + piece.length)
        curvature[n] =
          piece.from + ((piece.to - piece.from) * (place - from)) / piece.length + error * 0.0015 * chance();
      from += piece.length;
    }
    place = ups.findIndex(up => v < up);
    const ratio = ratioOf(kart.gearing, kart.gearing.gears[place] ?? 1);
    rotation[n] = (v * ratio) / kart.wheel.radius + error * 4 * chance();
  }
  return { time, speed, ahead, curvature, rotation };
}

/** Rolling out as case A4 has it: v = √(f/c) tan(…). */
function rolledOut(kart: LapKart, error = 0): FitLog {
  const [f, c] = [kart.rolling * kart.mass * kart.gravity, (kart.air * kart.dragArea) / 2];
  const mass = kart.mass + kart.wheel.inertia / kart.wheel.radius ** 2;
  const chance = noise(3);
  const fixes = [0, 20].flatMap(later => Array.from({ length: 100 }, (_, n) => ({ later, t: n / 10 })));
  const column = (of: (fix: { later: number; t: number }) => number): Float64Array => Float64Array.from(fixes, of);
  const exact = ({ t }: { t: number }): number =>
    Math.sqrt(f / c) * Math.tan(Math.atan(33 * Math.sqrt(c / f)) - (t * Math.sqrt(c * f)) / mass);
  return {
    time: column(({ later, t }) => later + t),
    speed: column(fix => exact(fix) + error * chance()),
    ahead: column(fix => -(f + c * exact(fix) ** 2) / mass),
    curvature: column(() => 0),
    rotation: column(({ t }) => 250 - t), // ticking over
  };
}

describe('fits on made logs, whose kart is known', () => {
  const started: LapKart = { ...GENERIC_KART, wheel: { ...GENERIC_KART.wheel, radius: 0.14 } };
  it('find the rolling radius in whatever gear', () => {
    expect(found(fitRadius(made(GENERIC_KART), started)).value).toBeCloseTo(0.1365, 5);
    const { value, spread } = found(fitRadius(made(GENERIC_KART, 1), started));
    expect(Math.abs(value - 0.1365)).toBeLessThan(3 * spread + 1e-6);
    expect(spread).toBeLessThan(0.0005);
  });
  it('find grip from steady bends, wherever they start looking', () => {
    const wrong: LapKart = { ...GENERIC_KART, grip: { ...GENERIC_KART.grip, side: 1.6, along: 1.28 } };
    for (const error of [0, 1]) {
      const { value, spread } = found(fitGrip(made(GENERIC_KART, error), wrong));
      expect(Math.abs(value - 2)).toBeLessThan(2 * spread);
      expect(spread).toBeLessThan(0.04);
    }
  });
  it('find power from accelerating in gear', () => {
    const weaker: LapKart = { ...GENERIC_KART, engine: { ...GENERIC_KART.engine, scale: 0.94 } };
    for (const error of [0, 1]) {
      const { value, spread } = found(fitPower(made(weaker, error), GENERIC_KART));
      expect(Math.abs(value - 0.94)).toBeLessThan(Math.max(0.01, 3 * spread));
    }
  });
  it('find drag and rolling from rolling out, and say how far they may be off', () => {
    const start: LapKart = { ...GENERIC_KART, dragArea: 0.7, rolling: 0.04 };
    const exact = fitCoast(rolledOut(GENERIC_KART), start);
    expect(found(exact.dragArea).value).toBeCloseTo(0.5, 3);
    expect(found(exact.rolling).value).toBeCloseTo(0.025, 4);
    const rough = fitCoast(rolledOut(GENERIC_KART, 0.06), start);
    for (const [fitted, truth] of [
      [rough.dragArea, 0.5],
      [rough.rolling, 0.025],
    ] as const) {
      const { value, spread } = found(fitted);
      expect(Math.abs(value - truth)).toBeLessThan(3 * spread);
      expect(spread).toBeLessThan(0.15 * truth);
    }
  });
});

describe('fits on logs of invented drives, 0.93 to 1 of what the kart could', () => {
  const { logs } = knownLogs();
  const logOf = (file: string): FitLog => {
    const known = logs.find(one => one.file === file);
    if (known === undefined) throw new Error(`${file} must be there`);
    const into = new LogImport();
    into.push(known.bytes);
    const read = into.finish();
    if (read.kind !== 'imported') throw new Error(read.problem.got);
    const motion = motionOf(read.trace);
    const smoothed = smooth(motion, { receiver: receiverFor(motion.step), doppler: read.trace.speed !== undefined });
    return fitLogOf(smoothed, read.trace.rotation);
  };
  for (const file of ['K1_10hz.csv', 'K1_25hz.csv', 'K3_10hz.csv']) {
    it(`${file}: radius, grip and power as they were used; no drag, for nobody rolled out`, () => {
      const log = logOf(file);
      expect(Math.abs(found(fitRadius(log, GENERIC_KART)).value / 0.1365 - 1)).toBeLessThan(0.003);
      // Driven at 0.975 of the speed: 0.95 of the grip, and of the acceleration.
      expect(Math.abs(found(fitGrip(log, GENERIC_KART)).value / (2 * 0.975 ** 2) - 1)).toBeLessThan(0.03);
      const power = found(fitPower(log, GENERIC_KART)).value;
      expect(power).toBeGreaterThan(0.9);
      expect(power).toBeLessThan(1);
      expect(whyNot(fitCoast(log, GENERIC_KART).dragArea)).toContain('rolls out');
    });
  }
  it('are unknown, with the reason, from one fix a second', () => {
    const log = logOf('K1_01hz.csv');
    expect(whyNot(fitGrip(log, GENERIC_KART))).toContain('0 bends');
    expect(whyNot(fitPower(log, GENERIC_KART))).toContain('0 stretches');
  });
  it('are unknown without engine speed, or with gears that were not on', () => {
    const { rotation, ...bare } = logOf('K1_10hz.csv');
    expect(whyNot(fitRadius(bare, GENERIC_KART))).toContain('no engine speed');
    expect(whyNot(fitPower(bare, GENERIC_KART))).toContain('no engine speed');
    const other = { ...GENERIC_KART, gearing: { ...GENERIC_KART.gearing, gears: [7, 6.9] } };
    expect(whyNot(fitRadius({ ...bare, rotation }, other))).toContain('no radius');
  });
});

it('a day of rolling out is no more than a call can bear', () => {
  const count = 250_000;
  const column = (of: (fix: number) => number): Float64Array => Float64Array.from({ length: count }, (_, n) => of(n));
  const into = (fix: number): number => (fix % 250) / 25; // s since this time of rolling out began
  const log: FitLog = {
    time: column(n => n / 25),
    speed: column(n => 30 - into(n) / 10),
    ahead: column(n => (into(n) > 9.8 ? 5 : -0.1)),
    curvature: column(() => 0),
  };
  expect(whyNot(fitCoast(log, GENERIC_KART).dragArea)).toContain('drag is not told from rolling');
});
