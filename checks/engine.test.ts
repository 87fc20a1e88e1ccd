/**
 * Engine: slider-crank, ports, compression, piston speed, mean pressure and pipe length, worked outside the project; mean
 * pressures by use and one worked pipe after G. Jennings, Two-Stroke Tuner's Handbook, 1973, as quoted at
 * toostroke.blogspot.com and aerialpursuits.com. How each value was obtained stands in its row.
 */
import { describe } from 'vitest';
import {
  afterGasket,
  angleOfDrop,
  blowdown,
  dropBelowTop,
  dropWithoutRod,
  fullRatio,
  gasTemperature,
  meanEffectivePressure,
  meanPistonSpeed,
  PRESSURES_1973,
  pipeOf1973,
  portDuration,
  powerOf,
  student95,
  sweptVolume,
  topAcceleration,
  trappedRatio,
  tunedLength,
  waveSpeed,
} from '../src/numbers/index.ts';
import rows from './rows/engine.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const DEGREE = Math.PI / 180;
const RPM = (2 * Math.PI) / 60;
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 4.4482216152605; // N
const PSI = POUND / INCH ** 2;
const HORSEPOWER = 550 * FOOT * POUND; // W

const crank = (given: Given) => ({ stroke: number(given, 'stroke_mm') / 1000, rod: number(given, 'rod_mm') / 1000 });
const mm = (given: Given, name: string): number => number(given, `${name}_mm`) / 1000;
const speed = (given: Given): number => number(given, 'rpm') * RPM;

function drop(given: Given): Numbers {
  const angle = number(given, 'deg') * DEGREE;
  return {
    drop_mm: dropBelowTop(crank(given), angle) * 1000,
    drop_simple_harmonic_mm: dropWithoutRod(crank(given).stroke, angle) * 1000,
  };
}

/** What 0.1 mm turns is said in the rows as the step from half a tenth below to half a tenth above. */
function ignition(given: Given): Numbers {
  const angle = (more: number): number => angleOfDrop(crank(given), number(given, 'mm_btdc') / 1000 + more) / DEGREE;
  return { deg_btdc: angle(0), sens_deg_per_0p1mm: angle(5e-5) - angle(-5e-5) };
}

function port(given: Given): Numbers {
  const { opens, duration } = portDuration(crank(given), mm(given, 'port_roof_below_tdc'));
  return { open_deg_atdc: opens / DEGREE, duration_deg: duration / DEGREE };
}

function alone(given: Given): Numbers {
  const [exhaust, transfer] = [mm(given, 'exhaust'), mm(given, 'transfer')].map(roof =>
    portDuration(crank(given), roof),
  );
  if (!exhaust || !transfer) throw new Error('two ports are needed');
  return {
    exhaust_open: exhaust.opens / DEGREE,
    transfer_open: transfer.opens / DEGREE,
    blowdown_deg: blowdown(exhaust, transfer) / DEGREE,
  };
}

function shim(given: Given): Numbers {
  const roof = mm(given, 'exhaust');
  return {
    duration_before: portDuration(crank(given), roof).duration / DEGREE,
    duration_after: afterGasket(crank(given), roof, mm(given, 'gasket_change')).duration / DEGREE,
  };
}

function compression(given: Given): Numbers {
  const cylinder = { bore: mm(given, 'bore'), stroke: mm(given, 'stroke') };
  const chamber = number(given, 'Vc_cc') * 1e-6;
  return {
    Vs_cc: sweptVolume(cylinder) * 1e6,
    cr_full: fullRatio(cylinder, chamber),
    cr_trapped: trappedRatio(cylinder.bore, mm(given, 'exhaust_roof'), chamber),
  };
}

function piston(given: Given): Numbers {
  const mean = meanPistonSpeed(crank(given).stroke, speed(given));
  const most = topAcceleration(crank(given), speed(given));
  return { mean_ms: mean, mean_ft_min: (mean * 60) / FOOT, acc_tdc_ms2: most, acc_tdc_g: most / 9.80665 };
}

function pressure(given: Given): Numbers {
  const power = number(given, 'kW') * 1000;
  const found = meanEffectivePressure({ power, swept: number(given, 'cc') * 1e-6, speed: speed(given) });
  return { bmep_bar: found / 1e5, bmep_psi: found / PSI, torque_Nm: power / speed(given) };
}

function printed(given: Given): Numbers {
  const found = Object.entries(PRESSURES_1973).find(([use]) => use === given.use)?.[1] ?? Number.NaN;
  return { bmep_psi: found / PSI };
}

function plan(given: Given): Numbers {
  const swept = sweptVolume({ bore: mm(given, 'bore'), stroke: mm(given, 'stroke') });
  const power = powerOf(number(given, 'bmep_psi') * PSI, swept, speed(given));
  return { hp: power / HORSEPOWER, kW: power / 1000 };
}

/** The example names its sections L1 to L7. */
function sections(given: Given): Numbers {
  const wave = number(given, 'wave_ft_s') * FOOT;
  const length = tunedLength({ wave, duration: number(given, 'exhaust_deg') * DEGREE, speed: speed(given) });
  const found = pipeOf1973({
    length,
    header: number(given, 'D1_in') * INCH,
    diffuser: number(given, 'A1_half_deg') * DEGREE,
    baffle: number(given, 'A2_half_deg') * DEGREE,
  });
  return {
    LT: length / INCH,
    D2: found.bellyDiameter / INCH,
    D3: found.outletDiameter / INCH,
    L1: found.toBaffle / INCH,
    L2: found.wholeBaffle / INCH,
    L3: found.headerLength / INCH,
    L4: found.diffuserLength / INCH,
    L5: found.bellyLength / INCH,
    L6: found.baffleLength / INCH,
    L7: found.outletLength / INCH,
  };
}

function tuned(given: Given): Numbers {
  const wave = given.gas_C === undefined ? number(given, 'a_ms') : waveSpeed(number(given, 'gas_C') + 273.15);
  const length = tunedLength({ wave, duration: number(given, 'exhaust_deg') * DEGREE, speed: speed(given) });
  return { a_ms: wave, L_mm: length * 1000, L_in: length / INCH };
}

const implied = (given: Given): Numbers => ({ T_C: gasTemperature(number(given, 'wave_ft_s') * FOOT) - 273.15 });

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^eng\.pos/, drop],
  [/^eng\.ign/, ignition],
  [/^eng\.port/, port],
  [/^eng\.blow/, alone],
  [/^eng\.shim/, shim],
  [/^eng\.cr/, compression],
  [/^eng\.ps/, piston],
  [/^eng\.bmepJ/, printed],
  [/^eng\.bmep/, pressure],
  [/^eng\.plan/, plan],
  [/^pipe\.r/, sections],
  [/^pipe\.c5/, implied],
  [/^pipe\.c/, tuned],
  [/^student/, given => ({ t: list(given, 'freedom').map(student95) })],
];

describe('engine: crank, ports, compression, pipe', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
