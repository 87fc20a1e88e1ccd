/**
 * What a split hub holds: the published output of a split-hub design (dsoftcon.be, ShaftHubLock), a worked press fit
 * (aionlinecalculator.com), a recalled text-book key, and integrals of pressure fields computed outside the project. How each value was obtained
 * stands in its row.
 */
import { describe } from 'vitest';
import {
  type Clamp,
  CONTACT,
  clampFor,
  hingeForce,
  keyForce,
  keyLength,
  leastPreload,
  meanPressure,
  pressFitHold,
  pressFitPressure,
  ringMoment,
  slipMargin,
} from '../src/numbers/index.ts';
import rows from './rows/hub-hold.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const INCH = 0.0254;
const LBF = 4.4482216152605;
const PSI = LBF / INCH ** 2;

const demand = (given: Given) => ({
  torque: number(given, 'KA') * number(given, 'T_Nm'),
  axial: number(given, 'KA') * number(given, 'Fa_N'),
});

/** Two-line contact, which is how the published output is reproduced. */
const clamp = (given: Given, force: number, friction = number(given, 'mu')): Clamp => ({
  force,
  friction,
  diameter: number(given, 'd_mm') / 1000,
  contact: 'two lines',
});

function worked(given: Given): Numbers {
  if (given.S !== undefined) {
    const force = clampFor(clamp(given, 1), demand(given), number(given, 'S'));
    const pressure = meanPressure(force, number(given, 'd_mm') / 1000, number(given, 'l_mm') / 1000);
    return { Fb_N: force / number(given, 'nBolts'), p_MPa: pressure / 1e6 };
  }
  const force = number(given, 'nBolts') * number(given, 'Fb_N');
  if (given.l_mm !== undefined)
    return { p_MPa: meanPressure(force, number(given, 'd_mm') / 1000, number(given, 'l_mm') / 1000) / 1e6 };
  const held = clamp(given, force);
  // Torque and axial force that slip when both grow together.
  const margin = slipMargin(held, demand(given));
  return { S: margin, Tslip_Nm: margin * demand(given).torque, Faslip_N: margin * demand(given).axial };
}

function press(given: Given): Numbers {
  const same = given.E_MPa;
  const elastic = (modulus: number, poisson: number) => ({ modulus: modulus * 1e6, poisson });
  const pressure = pressFitPressure({
    diameter: number(given, 'd_mm') / 1000,
    outside: number(given, 'D_mm') / 1000,
    bore: (given.di_mm === undefined ? 0 : number(given, 'di_mm')) / 1000,
    interference: number(given, 'delta_mm') / 1000,
    // Of one material Poisson's ratio falls out of a solid axle's sum.
    hub: same === undefined ? elastic(number(given, 'Eh'), number(given, 'nuh')) : elastic(number(given, 'E_MPa'), 0.3),
    axle:
      same === undefined ? elastic(number(given, 'Es'), number(given, 'nus')) : elastic(number(given, 'E_MPa'), 0.3),
  });
  if (same === undefined) return { p_MPa: pressure / 1e6 };
  const held = pressFitHold(pressure, {
    diameter: number(given, 'd_mm') / 1000,
    outside: number(given, 'D_mm') / 1000,
    length: number(given, 'L_mm') / 1000,
    friction: number(given, 'mu'),
  });
  return { p_MPa: pressure / 1e6, Fax_kN: held.axial / 1000, T_Nm: held.torque, hoop_MPa: held.hoop / 1e6 };
}

function key(given: Given): Numbers {
  const torque = (number(given, 'hp') * 550 * LBF * 0.3048 * 60) / (2 * Math.PI * number(given, 'rpm'));
  const force = keyForce(torque, number(given, 'd_in') * INCH);
  const length = keyLength(
    force,
    { width: number(given, 'w_in') * INCH, height: number(given, 'h_in') * INCH },
    { yield: number(given, 'Sy_psi') * PSI, factor: number(given, 'n') },
  );
  return {
    T_lbfin: torque / (LBF * INCH),
    F_lbf: force / LBF,
    Lshear_in: length.shear / INCH,
    Lcrush_in: length.crush / INCH,
  };
}

function ring(given: Given): Numbers {
  const { atLoad, between } = ringMoment(number(given, 'W_N_per_mm') * 1000, number(given, 'R_mm') / 1000);
  return { M_load: atLoad, M_90deg: between };
}

function kart(given: Given): Numbers {
  const preload = leastPreload({
    torque: number(given, 'torque_Nm'),
    running: 0,
    nutFactor: number(given, 'K'),
    diameter: number(given, 'dBolt_mm') / 1000,
    scatter: number(given, 'scatter'),
  });
  const force = preload * number(given, 'nBolts');
  return {
    Fmin_N: preload,
    S: list(given, 'mus').map(friction => slipMargin(clamp(given, force, friction), demand(given))),
  };
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  'hub.coef': () => ({ c: Object.values(CONTACT) }),
  'hub.split.worked.p': worked,
  'hub.split.worked.slip': worked,
  'hub.split.worked.req': worked,
  'hub.press.worked': press,
  'hub.press.AlOnTube': press,
  'hub.ring': ring,
  'hub.key.inch': key,
  'hub.hinge': given => ({
    jawForce_N: hingeForce(
      number(given, 'nBolts') * number(given, 'F_N'),
      number(given, 'lBolt_mm') / 1000,
      number(given, 'lShaft_mm') / 1000,
    ),
  }),
  'hub.kart': kart,
};

describe('hub-hold: clamp, key, rings', () => {
  runRows(rows as readonly Row[], (given, { id }) => {
    const answer = ANSWERS[id];
    if (answer === undefined) throw new Error(`no answer for ${id}: add it to ANSWERS`);
    return answer(given);
  });
});
