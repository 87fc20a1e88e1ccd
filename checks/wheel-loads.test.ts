/**
 * Loads of the wheels in numbers worked outside the project: a plane fit on four springs, a linear system of four unknowns,
 * three wheels by moments, and the line through both outer contacts.
 */
import { describe } from 'vitest';
import { fourWheels, type KartBody, liftAt, rollover, threeWheels, type WheelLoads } from '../src/numbers/index.ts';
import rows from './rows/wheel-loads.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const G = 9.80665; // m/s²
const DEGREE = Math.PI / 180;

const body = (given: Given): KartBody => ({
  mass: given.m === undefined ? 1 : number(given, 'm'), // going over does not depend on it
  wheelbase: number(given, 'L'),
  ahead: number(given, 'b'),
  left: 0,
  heightFront: number(given, 'h'),
  heightRear: number(given, 'h'),
});
const tracks = (given: Given) => ({ frontTrack: number(given, 'tF'), rearTrack: number(given, 'tR') });
const springs = (given: Given) => ({
  ...tracks(given),
  frontTyre: number(given, 'kF'),
  rearTyre: number(given, 'kR'),
  frame: given.Kt_Nm_per_deg === undefined ? Number.POSITIVE_INFINITY : number(given, 'Kt_Nm_per_deg') / DEGREE,
});
const motion = (given: Given) => ({ lateral: number(given, 'ay_g') * G, braking: 0 });
const inOrder = (loads: WheelLoads) => [loads.frontLeft, loads.frontRight, loads.rearLeft, loads.rearRight];

function answer(given: Given, { id }: Row): Numbers {
  if (id === 'corner.rollover') return { ay_g: rollover(body(given), tracks(given)) / G };
  if (id.startsWith('corner.three')) {
    const loads = threeWheels('rearLeft', body(given), tracks(given), motion(given));
    return { N: [loads.frontLeft, loads.frontRight, loads.rearRight] };
  }
  const warp = given.warp_mm === undefined ? 0 : number(given, 'warp_mm') / 1000;
  return {
    N: inOrder(fourWheels(body(given), springs(given), motion(given), warp)),
    innerRearLift_g: liftAt('rearLeft', body(given), springs(given), { braking: 0, warp }) / G,
  };
}

describe('wheel-loads: cornering on four wheels and on three', () => {
  runRows(rows as readonly Row[], answer);
});
