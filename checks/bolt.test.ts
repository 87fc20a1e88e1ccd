/**
 * Bolts: ISO 898-1 loads (as reprinted), ASME B1.1 areas (as reprinted), VDI 2230 tables (as reprinted), FAA AC 43.13-1B
 * tables 7-1 and 7-2, US Army locknut tables, NASA-STD-5020 scatter (as quoted), torque charts and numbers computed
 * outside the project. How each value was obtained stands in its row.
 */
import { describe } from 'vitest';
import {
  AIRCRAFT_TORQUE,
  isStrength,
  LEAST_RUNNING_TORQUE,
  leastByTighteningFactor,
  meanBearing,
  metricStressArea,
  nutFactor,
  pitchDiameter,
  preloadAtYield,
  preloadRange,
  proofLoad,
  releaseTorque,
  type Strength,
  scatterOf,
  strengthOf,
  tighteningTorque,
  tighteningTorqueLinear,
  torqueByNutFactor,
  ultimateLoad,
  unifiedStressArea,
  unwindingMoment,
} from '../src/numbers/index.ts';
import rows from './rows/bolt.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const IN = 0.0254; // m
const LBF = 4.4482216152605; // N
const PSI = LBF / IN ** 2; // Pa

const size = (given: Given) => ({ diameter: number(given, 'd_mm') / 1000, pitch: number(given, 'P_mm') / 1000 });

const areas = (given: Given): Numbers =>
  given.D_in === undefined
    ? { As_mm2: metricStressArea(size(given)) * 1e6 }
    : {
        At_in2: unifiedStressArea({ diameter: number(given, 'D_in') * IN, pitch: IN / number(given, 'tpi') }) / IN ** 2,
      };

/** With the strength of our own table, and the area as it is printed beside the load. */
const loads = (given: Given): Numbers => {
  const strength = strong(String(given.propertyClass), number(given, 'd_mm') / 1000);
  const area = number(given, 'As_mm2') / 1e6;
  return { Fp_N: proofLoad(strength, area), Fm_N: ultimateLoad(strength, area) };
};

function strong(mark: string, diameter: number): Strength {
  const strength = strengthOf(mark, { series: 'metric', diameter });
  if (!isStrength(strength)) throw new Error(`${mark}: ${strength.remedy}`);
  return strength;
}

const atYield = (given: Given): Numbers => {
  const { diameter, pitch } = size(given);
  const friction = given.mu === undefined ? number(given, 'mu_thread') : number(given, 'mu');
  const preload = preloadAtYield({
    area: metricStressArea({ diameter, pitch }),
    pitchDiameter: pitchDiameter({ diameter, pitch }),
    pitch,
    yield: number(given, 'Rp02_MPa') * 1e6,
    share: typeof given.nu === 'number' ? given.nu : 0.9,
    threadFriction: friction,
  });
  if (given.alphaA !== undefined)
    return { FMmax_kN: preload / 1000, FMmin_kN: leastByTighteningFactor(preload, number(given, 'alphaA')) / 1000 };
  const turning = {
    preload,
    pitch,
    pitchDiameter: pitchDiameter({ diameter, pitch }),
    bearingDiameter: meanBearing({ face: number(given, 'dw_mm') / 1000, hole: number(given, 'dh_mm') / 1000 }),
    threadFriction: friction,
    headFriction: friction,
  };
  return {
    FM_kN: preload / 1000,
    MA_Nm: tighteningTorqueLinear(turning),
    MA_exactTan_Nm: tighteningTorque(turning),
  };
};

const short = (given: Given): Numbers => {
  const factor = number(given, 'K');
  if (given.F_N !== undefined)
    return {
      T_Nm: torqueByNutFactor({ factor, diameter: number(given, 'd_mm') / 1000, preload: number(given, 'F_N') }),
    };
  const preload =
    given.F_lbf === undefined
      ? number(given, 'frac') * number(given, 'Sp_psi') * number(given, 'At_in2') * LBF
      : number(given, 'F_lbf') * LBF;
  const torque = torqueByNutFactor({ factor, diameter: number(given, 'd_in') * IN, preload });
  return { F_lbf: preload / LBF, T_lbft: torque / (LBF * 12 * IN) };
};

const aircraft = (given: Given): Numbers => {
  if (given.T_inlb !== undefined)
    return {
      K: list(given, 'T_inlb').map(torque =>
        nutFactor({
          torque: torque * LBF * IN,
          diameter: number(given, 'd_in') * IN,
          preload: number(given, 'stress_psi') * PSI * number(given, 'At_in2') * IN ** 2,
        }),
      ),
    };
  const line = AIRCRAFT_TORQUE[String(given.thread)];
  return {
    min_inlb: line?.min ?? Number.NaN,
    max_inlb: line?.max ?? Number.NaN,
    maxAllowable_inlb: line?.most ?? Number.NaN,
    shearMin_inlb: line?.shear?.min ?? Number.NaN,
    shearMax_inlb: line?.shear?.max ?? Number.NaN,
    shearMaxAllowable_inlb: line?.shear?.most ?? Number.NaN,
  };
};

const running = (given: Given): Numbers => ({ min_inlb: LEAST_RUNNING_TORQUE[String(given.thread)] ?? Number.NaN });

/** The scatter is ours; the row's own is only what it must be. */
const scatter = (given: Given, { id }: Row): Numbers => {
  const { min, max } = preloadRange(
    number(given, 'Fnom_N'),
    scatterOf('torque wrench', id.endsWith('lub')) ?? Number.NaN,
  );
  return { Fmin_N: min, Fmax_N: max };
};

const release = (given: Given): Numbers => {
  const turning = {
    preload: number(given, 'F_N'),
    pitch: number(given, 'P_mm') / 1000,
    pitchDiameter: number(given, 'd2_mm') / 1000,
    bearingDiameter: number(given, 'Dk_mm') / 1000,
    threadFriction: number(given, 'mu'),
    headFriction: number(given, 'mu'),
  };
  return {
    Tpitch_Nm: unwindingMoment(turning),
    Ton_Nm: tighteningTorqueLinear(turning),
    Toff_Nm: releaseTorque(turning),
  };
};

const ANSWERS: readonly (readonly [RegExp, (given: Given, row: Row) => Numbers])[] = [
  [/^bolt\.a[st]\./, areas],
  [/^bolt\.(proof|ult)/, loads],
  [/^bolt\.vdi/, atYield],
  [/^bolt\.short/, short],
  [/^bolt\.ac4313/, aircraft],
  [/^bolt\.prevail/, running],
  [/^bolt\.scatter/, scatter],
  [/^bolt\.release/, release],
];

describe('bolt: areas, loads, torques', () => {
  runRows(rows as readonly Row[], (given, row) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(row.id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${row.id}: add its family to ANSWERS`);
    return answer(given, row);
  });
});
