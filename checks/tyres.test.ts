/**
 * Tyres: gas law, moisture, altitude, roll-out, stagger, treads, and the line through a record. The rows marked `read`
 * are a chemical engineer's worked example on the team.net list (2002-07, message 00126); `computed` rows were worked
 * outside the project with Python, numpy and scipy. The forum figure that scales a gauge reading is kept as a known
 * difference. The straight line is held against NIST's Norris data set, recalled. Asked through the functions the subject uses.
 */
import { describe } from 'vitest';
import {
  circumference,
  gaugeElsewhere,
  humidityInside,
  rolledOut,
  speedChange,
  staggerRadius,
  treadOf,
  tyreGasTemperature,
  warmedGauge,
  warmedWet,
  waterToSaturate,
} from '../src/numbers/index.ts';
import { foretold, foretoldMean, lineFit } from '../src/numbers/line-fit.ts';
import rows from './rows/tyres.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const PSI = 4.4482216152605 / 0.00064516;
const kelvin = (celsius: number): number => celsius + 273.15;
const fahrenheit = (degrees: number): number => ((degrees + 459.67) * 5) / 9;

function hot(given: Given): Numbers {
  if (given.p_gauge_psi !== undefined) {
    const gauge = warmedGauge({
      gauge: number(given, 'p_gauge_psi') * PSI,
      ambient: number(given, 'p_atm_psi') * PSI,
      from: fahrenheit(number(given, 't1_F')),
      to: fahrenheit(number(given, 't2_F')),
    });
    return { p_gauge_psi: gauge / PSI };
  }
  const cold = number(given, 'p_gauge_bar');
  const [from, to] = [kelvin(number(given, 't1_C')), kelvin(number(given, 't2_C'))];
  const gauge = warmedGauge({ gauge: cold * 1e5, ambient: number(given, 'p_atm_bar') * 1e5, from, to }) / 1e5;
  // What comes of scaling the gauge reading is the same function with no air around: shown so that it is never mistaken.
  return {
    p_gauge_bar: gauge,
    rise_bar: gauge - cold,
    wrong_gauge_ratio_bar: warmedGauge({ gauge: cold, ambient: 0, from, to }),
  };
}

function moist(given: Given): Numbers {
  const at = {
    gauge: number(given, 'p_gauge_bar') * 1e5,
    ambient: number(given, 'p_atm_bar') * 1e5,
    from: kelvin(number(given, 't1_C')),
    to: kelvin(number(given, 't2_C')),
  };
  const [dry, wet] = [warmedGauge(at) / 1e5, warmedWet(at) / 1e5];
  return { dry_bar: dry, saturated_vapour_bar: dry, liquid_bar: wet, extra_bar: wet - dry };
}

const gasTemperature = (given: Given): Numbers => ({
  t_hot_C:
    tyreGasTemperature({
      cold: number(given, 'p_cold_bar') * 1e5,
      hot: number(given, 'p_hot_bar') * 1e5,
      ambient: number(given, 'p_atm_bar') * 1e5,
      from: kelvin(number(given, 't_cold_C')),
    }) - 273.15,
});

function grown(given: Given): Numbers {
  const before = circumference(number(given, 'd_mm') / 1000);
  const after = before * (1 + number(given, 'change_pct') / 100);
  return { circ_mm: before * 1000, circ2_mm: after * 1000, speed_change_pct: 100 * speedChange(before, after) };
}

function stagger(given: Given): Numbers {
  const [left, right] = ['C_inside_mm', 'C_outside_mm'].map(name => rolledOut(number(given, name) / 1000, 1));
  if (left === undefined || right === undefined) throw new Error('two tyres');
  return {
    stagger_mm: number(given, 'C_outside_mm') - number(given, 'C_inside_mm'),
    R_m: staggerRadius({ left, right, track: number(given, 'track_centre_m') }),
  };
}

function tread(given: Given): Numbers {
  const [inside = 0, middle = 0, outside = 0] = ['inside_C', 'middle_C', 'outside_C'].map(name =>
    kelvin(number(given, name)),
  );
  const { crown, lean, spread } = treadOf({ inside, middle, outside });
  return { crown_index_K: crown, camber_index_K: lean, spread_K: spread };
}

const points = (given: Given) => list(given, 'x').map((x, n) => [x, list(given, 'y')[n] ?? Number.NaN] as const);
function line(given: Given): Numbers {
  const { slope, intercept, residual, slopeDeviation, interceptDeviation } = lineFit(points(given)) ?? {};
  return {
    slope: slope ?? Number.NaN,
    intercept: intercept ?? Number.NaN,
    residual: residual ?? Number.NaN,
    slopeDeviation: slopeDeviation ?? Number.NaN,
    interceptDeviation: interceptDeviation ?? Number.NaN,
  };
}
function interval(given: Given): Numbers {
  const fit = lineFit(points(given));
  return fit ? { ...foretold(fit, number(given, 'at')) } : {};
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  hotPressure: hot,
  hotPressureMoist: moist,
  temperatureFromPressureRise: gasTemperature,
  waterToSaturate: given => ({
    grams: 1000 * waterToSaturate(number(given, 'tyre_volume_L') / 1000, kelvin(number(given, 't_C'))),
  }),
  condensation: given => ({
    rh_after_compression: humidityInside({
      gauge: number(given, 'p_gauge_bar'),
      ambient: number(given, 'p_atm_bar'),
      humidity: number(given, 'rh_atmospheric'),
    }),
  }),
  gaugeShiftWithAltitude: given => ({
    p_gauge2_bar: gaugeElsewhere(
      number(given, 'p_gauge_bar'),
      number(given, 'p_atm1_bar'),
      number(given, 'p_atm2_bar'),
    ),
  }),
  circumferenceChange: grown,
  staggerRadius: stagger,
  treadTemps: tread,
  'line through 36 points': line,
  'prediction interval of a line': interval,
  'prediction interval of a mean': given => ({ ...foretoldMean(list(given, 'y')) }),
};

describe('tyres: gas law, moisture, altitude, stagger, treads, the line through a record', () => {
  runRows(rows as unknown as readonly Row[], (given, { what }) => {
    const answer = ANSWERS[what];
    if (answer === undefined) throw new Error(`no answer for ${what}: add it to ANSWERS`);
    return answer(given);
  });
});
