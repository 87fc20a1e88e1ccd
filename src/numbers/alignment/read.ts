/** What the readings say: toe of each wheel or of both with its uncertainty, and where the axle stands. */
import { measureOf } from '../asked.ts';
import type { Uncertain } from '../subject.ts';
import { type Input, methodOf, ONE_EACH, RIM, SQUARE, STRING, TURNED } from './input.ts';
import { spreadOf } from './known.ts';
import { type AxlePlace, axlePlace, type FourLengths } from './square.ts';
import { halfTurn, toeAngle, toeFromString, toeOfOne } from './toe.ts';

/** Angles [rad], toe-in above 0. */
export type Toe = {
  readonly diameter: number; // at which it was read [m]
  readonly total: number; // both wheels together
  readonly u: number; // standard uncertainty of the total
  readonly left?: number; // where the method tells the wheels apart
  readonly right?: number;
  readonly runOut?: number; // share of the rims in one reading of the total [m]
};

export function toeOf(input: Input): Toe | undefined {
  const diameter = input['measuring diameter'];
  const method = methodOf(input);
  if (diameter === undefined || method === undefined) return undefined;
  const read = (...keys: readonly string[]): readonly Uncertain[] => keys.flatMap(key => measureOf(input, key) ?? []);
  const together = (readings: readonly Uncertain[], f: (sizes: readonly number[]) => number) => ({
    diameter: diameter.si,
    total: f(readings.map(reading => reading.si)),
    u: spreadOf(readings, f),
  });
  const both = (total: number, over: number): number => 2 * toeAngle(total, over);
  if (method === 'total') return together(read('toe-in total', 'measuring diameter'), ([t = 0, d = 0]) => both(t, d));
  if (method === 'each') {
    const one = (key: (typeof ONE_EACH)[number]): number => toeOfOne(input[key]?.si ?? Number.NaN, diameter.si);
    const of = (sizes: readonly number[]): number =>
      toeOfOne(sizes[0] ?? 0, sizes[2] ?? 0) + toeOfOne(sizes[1] ?? 0, sizes[2] ?? 0);
    return {
      ...together(read(...ONE_EACH, 'measuring diameter'), of),
      left: one('toe-in left'),
      right: one('toe-in right'),
    };
  }
  if (method === 'string') {
    const of = ([fl = 0, rl = 0, fr = 0, rr = 0, d = 0]: readonly number[]): number =>
      toeFromString(fl, rl, d) + toeFromString(fr, rr, d);
    const [fl = 0, rl = 0, fr = 0, rr = 0] = STRING.map(key => input[key]?.si ?? Number.NaN);
    return {
      ...together(read(...STRING, 'measuring diameter'), of),
      left: toeFromString(fl, rl, diameter.si),
      right: toeFromString(fr, rr, diameter.si),
    };
  }
  if (input[TURNED[0]] === undefined)
    return together(read(...RIM, 'measuring diameter'), ([f = 0, r = 0, d = 0]) => both(r - f, d));
  const [f = 0, r = 0, f2 = 0, r2 = 0] = [...RIM, ...TURNED].map(key => input[key]?.si ?? Number.NaN);
  return {
    ...together(read(...RIM, ...TURNED, 'measuring diameter'), ([a = 0, b = 0, c = 0, e = 0, d = 0]) =>
      both(halfTurn(b - a, e - c).mean, d),
    ),
    runOut: halfTurn(r - f, r2 - f2).runOut,
  };
}

export type Square = AxlePlace & {
  readonly misfit: number; // of the four lengths [m²], 0 for one figure
  readonly marks: number; // on the axle, apart [m]
  readonly sides: number; // left less right [m]
  readonly diagonals: number; // from the left less from the right [m]
  readonly uYaw: number;
  readonly uOffset: number;
  readonly doubtful: boolean; // the lengths do not belong to one figure, beyond twice their uncertainty
};

/** Undefined when not asked; `yaw` is no number when no axle has such lengths. */
export function squareOf(input: Input): Square | undefined {
  if (input['side left'] === undefined) return undefined;
  const readings = SQUARE.flatMap(key => input[key] ?? []);
  const place = (sizes: readonly number[]) =>
    axlePlace(lengthsOf(sizes), { kingpins: sizes[4] ?? 0, axle: sizes[5] ?? 0 });
  const sizes = readings.map(reading => reading.si);
  const at = place(sizes);
  const of = lengthsOf(sizes);
  return {
    ...at,
    marks: sizes[5] ?? Number.NaN,
    sides: of.sideLeft - of.sideRight,
    diagonals: of.diagonalFromLeft - of.diagonalFromRight,
    uYaw: spreadOf(readings, s => place(s).yaw),
    uOffset: spreadOf(readings, s => place(s).offset),
    doubtful: Math.abs(at.misfit) > 2 * spreadOf(readings, s => place(s).misfit) + 1e-12,
  };
}

const lengthsOf = ([
  sideLeft = 0,
  sideRight = 0,
  diagonalFromLeft = 0,
  diagonalFromRight = 0,
]: readonly number[]): FourLengths => ({
  sideLeft,
  sideRight,
  diagonalFromLeft,
  diagonalFromRight,
});
