/**
 * Drag: coast-down and the balance of power. No published measured kart figures could be had; the rows were worked
 * outside the project in Python (closed form, scipy solve_ivp of the equation of motion, scipy curve_fit of the same
 * trace). Asked through the functions that the subject uses; the tractive force through the one that gearing has.
 */
import { describe } from 'vitest';
import {
  airForce,
  balanceSpeed,
  coastSpeed,
  coastTime,
  dragOf,
  fitCoast,
  rollingForce,
  tractiveForce,
} from '../src/numbers/index.ts';
import rows from './rows/drag.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const slowing = (given: Given) => ({ a0: number(given, 'a0_ms2'), a2: number(given, 'a2_per_m') });
const speed = (given: Given, name: string): number => number(given, name) / 3.6;

function balance(given: Given): Numbers {
  const kart = {
    area: number(given, 'CdA_m2'),
    rolling: number(given, 'Crr'),
    mass: number(given, 'm_kg'),
    density: number(given, 'rho'),
    power: number(given, 'P_W') * number(given, 'eta'),
  };
  const v = balanceSpeed(kart);
  return { v_ms: v, kmh: v * 3.6, drag_N: airForce(kart, v), roll_N: rollingForce(kart) };
}

function inverse(given: Given): Numbers {
  const { area, rolling } = dragOf(slowing(given), {
    mass: number(given, 'm_kg'),
    effectiveMass: number(given, 'm_eff_kg'),
    density: number(given, 'rho'),
  });
  return { CdA: area, Crr: rolling };
}

function fit(given: Given): Numbers {
  const speeds = list(given, 'v_kmh');
  const found = fitCoast(list(given, 't_s').map((time, n) => ({ time, speed: (speeds[n] ?? Number.NaN) / 3.6 })));
  return found
    ? { v0_ms: found.start, a0_ms2: found.a0, a2_per_m: found.a2, u0_ms2: found.u0, u2_per_m: found.u2 }
    : {};
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  topSpeedBalance: balance,
  coastDownInverse: inverse,
  coastDownTime: given => ({ t_s: coastTime(speed(given, 'v1_kmh'), speed(given, 'v2_kmh'), slowing(given)) }),
  coastDownSpeed: given => ({ v_ms: coastSpeed(number(given, 't_s'), speed(given, 'v0_kmh'), slowing(given)) }),
  coastDownFit: fit,
  tractiveForce: given => ({
    F_N: tractiveForce({
      torque: number(given, 'torque_Nm'),
      ratio: number(given, 'overall'),
      efficiency: number(given, 'eta'),
      circumference: 2 * Math.PI * number(given, 'roll_radius_m'),
    }),
  }),
};

describe('drag: coast-down, top speed, push', () => {
  runRows(rows as unknown as readonly Row[], (given, { what }) => {
    const answer = ANSWERS[what];
    if (answer === undefined) throw new Error(`no answer for ${what}: add it to ANSWERS`);
    return answer(given);
  });
});
