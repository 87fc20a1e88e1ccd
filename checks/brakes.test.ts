/**
 * Brakes: force and moment balances worked outside the project, a worked pedal, and a worked disc heated by one stop
 * (solve.club). How each value was obtained stands in its row.
 */
import { describe } from 'vitest';
import {
  barShare,
  brakingDistance,
  brakingLoads,
  caliperTorque,
  frontLocks,
  idealFrontShare,
  masterPressure,
  pedalRatio,
  pistonArea,
  rearLocks,
  stopEnergy,
  stoppingDistance,
  temperatureRise,
} from '../src/numbers/index.ts';
import rows from './rows/brakes.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

function chain(given: Given): Numbers {
  const rod = number(given, 'F') * number(given, 'i');
  const front = rod * number(given, 'barFront');
  const bore = number(given, 'dMC');
  const [pF, pR] = [masterPressure(front, bore), masterPressure(rod - front, bore)];
  const friction = number(given, 'mu');
  const torque = (pressure: number, end: 'F' | 'R'): number =>
    caliperTorque({
      pressure,
      area: pistonArea(number(given, `d${end}`), number(given, `n${end}`)),
      friction,
      radius: number(given, `re${end}`),
    });
  const [onFront, onRear] = [torque(pF, 'F'), torque(pR, 'R')];
  const forces = [(2 * onFront) / number(given, 'RF'), onRear / number(given, 'RR')] as const; // two front calipers
  return {
    pF_bar: pF / 1e5,
    pR_bar: pR / 1e5,
    TfrontPerWheel_Nm: onFront,
    Trear_Nm: onRear,
    FxFront_N: forces[0],
    FxRear_N: forces[1],
    frontShare: forces[0] / (forces[0] + forces[1]),
  };
}

const kart = (given: Given) => ({
  wheelbase: number(given, 'L'),
  ahead: number(given, 'b'),
  height: number(given, 'h'),
});

function axle(given: Given): Numbers {
  const { front, rear } = brakingLoads(kart(given), number(given, 'm'), number(given, 'z'));
  return { Wf_N: front, Wr_N: rear, idealFrontShare: idealFrontShare(kart(given), number(given, 'z')) };
}

function lock(given: Given): Numbers {
  const sharing = { frontShare: number(given, 'phi'), grip: number(given, 'mu') };
  const [front, rear] = [frontLocks(kart(given), sharing), rearLocks(kart(given), sharing)];
  return { zFrontLock: front, zRearLock: rear, rearLocksFirst: rear < front ? 1 : 0 };
}

const heat = (given: Given): Numbers => {
  const energy = stopEnergy({ from: number(given, 'v'), to: 0 }, number(given, 'm'), 0);
  return { dT: temperatureRise(energy, number(given, 'md'), number(given, 'c')) };
};

function stop(given: Given): Numbers {
  const run = { from: number(given, 'v_kmh') / 3.6, to: 0 };
  const slow = number(given, 'z') * 9.80665;
  return { dBrake: brakingDistance(run, slow), dTotal: stoppingDistance(run, slow, number(given, 't')) };
}

const ratio = (given: Given): Numbers => ({
  ratio: pedalRatio(number(given, 'a'), number(given, 'b')),
  area_in2: pistonArea(number(given, 'd_in')),
});

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^brake\.chain/, chain],
  [/^brake\.ratio/, ratio],
  [/^brake\.bar/, given => ({ front: barShare(number(given, 'spacing'), number(given, 'offset')) })],
  [/^brake\.axle/, axle],
  [/^brake\.lock/, lock],
  [/^brake\.heat/, heat],
  [/^brake\.stop/, stop],
];

describe('brakes: pedal, axles, stop', () => {
  runRows(rows as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
