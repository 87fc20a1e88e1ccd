/**
 * Air: moist-air density (CIPM-2007: A. Picard, R. S. Davis, M. Gläser, K. Fujii, Metrologia 45 (2008) 149-155), vapour
 * (ASHRAE Handbook Fundamentals 2017, chapter 1), the standard atmosphere (ISO 2533:1975), density altitude, reduction to
 * sea level, power factors (SAE J1349 June 1990, ISO 1585, DIN 70020, SAE J607) and uncertainty (JCGM 100:2008, 5.1.2).
 * Read rows stand as printed in public tests and texts named at each; computed ones come from Python with scipy, outside
 * the project. Figures that are printed wrong in public stay as known differences.
 */
import { describe } from 'vitest';
import {
  airOf,
  compressibility,
  densityAltitude,
  densityAltitudeRule120,
  densityAltitudeWeatherService,
  densityOfShare,
  densityUncertainty,
  dewPoint,
  dewPointClosed,
  dryAirDensity,
  dryPressure,
  enhancement,
  factorDin70020,
  factorIso1585,
  factorJ607,
  factorJ1349,
  geopotentialHeight,
  humidityFromDewPoint,
  humidityRatio,
  idealDensity,
  mapPressure,
  moistAirDensity,
  qnhFromStation,
  qnhFromStationManual,
  SEA_LEVEL,
  saturationPressure,
  saturationPressureCipm,
  saturationPressureClosed,
  standardAt,
  standardAtGeometric,
  stationPressure,
  vapourPressure,
  vapourShare,
} from '../src/numbers/index.ts';
import { inUnit } from '../src/quantity/index.ts';
import rows from './rows/air.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const kelvin = (given: Given, name = 't_C'): number => number(given, name) + 273.15;
const state = (given: Given) => ({
  kelvin: kelvin(given),
  pascal: number(given, 'p_Pa'),
  humidity: number(given, 'rh'),
  ...(given.xCO2 === undefined ? {} : { carbonDioxide: number(given, 'xCO2') }),
});

function density(given: Given): Numbers {
  const air = state(given);
  const xv = vapourShare(air);
  return {
    rho: moistAirDensity(air),
    xv,
    Z: compressibility(air, xv),
    psv_Pa: saturationPressureCipm(air.kelvin),
    f: enhancement(air),
    rho_ideal: idealDensity(air.kelvin, air.pascal, vapourPressure(air.humidity, air.kelvin)),
  };
}

const saturation = (given: Given): Numbers => ({
  psat_Pa: saturationPressure(kelvin(given)),
  psat_cipm_Pa: saturationPressureCipm(kelvin(given)),
  psat_magnus_Pa: saturationPressureClosed(kelvin(given)),
});

const dew = (given: Given): Numbers => ({
  td_C: dewPoint(vapourPressure(number(given, 'rh'), kelvin(given))) - 273.15,
  td_magnus_C: dewPointClosed(number(given, 'rh') * saturationPressureClosed(kelvin(given))) - 273.15,
});

/** Vapour pressure of so much water a kilogram of dry air, from the same relation turned round. */
const vapourOf = (given: Given): number =>
  (number(given, 'p_Pa') * number(given, 'W')) / (0.621945 + number(given, 'W'));

function standard(given: Given): Numbers {
  const geometric = given.Z_m !== undefined;
  const height = number(given, geometric ? 'Z_m' : 'H_m');
  const at = geometric ? standardAtGeometric(height) : standardAt(height);
  return {
    H_m: geopotentialHeight(height),
    T_K: at.kelvin,
    t_C: at.kelvin - 273.15,
    p_Pa: at.pascal,
    rho: at.density,
    sigma: at.density / standardAt(0).density,
    a_ms: at.soundSpeed,
  };
}

function altitude(given: Given): Numbers {
  const air = state(given);
  const rho = moistAirDensity(air);
  return {
    rho,
    da_m: densityAltitude(rho),
    da_ft: inUnit(densityAltitude(rho), 'ft'),
    da_nws_ft: inUnit(densityAltitudeWeatherService(air), 'ft'),
  };
}

const rule120 = (given: Given): Numbers => ({
  da_ft: inUnit(
    densityAltitudeRule120(number(given, 'pressureAltitude_ft') * 0.3048, kelvin(given), kelvin(given, 'isa_t_C')),
    'ft',
  ),
});

function mistaken(given: Given): Numbers {
  const [qnh, air] = [number(given, 'qnh_hPa') * 100, { kelvin: kelvin(given), humidity: number(given, 'rh') }];
  const pascal = stationPressure({ seaLevelPascal: qnh, elevation: number(given, 'h_m') });
  const [right, wrong] = [pascal, qnh].map(at => moistAirDensity({ ...air, pascal: at })) as [number, number];
  return { p_station_hPa: pascal / 100, rho_right: right, rho_wrong: wrong, error_pct: (wrong / right - 1) * 100 };
}

const qnh = (given: Given): Numbers => {
  const at = [number(given, 'p_station_hPa') * 100, number(given, 'h_m')] as const;
  return { qnh_hPa: qnhFromStation(...at) / 100, qnh_manual_hPa: qnhFromStationManual(...at) / 100 };
};

function relative(given: Given): Numbers {
  const found = airOf(state(given));
  if (found.kind !== 'air') throw new Error(found.why);
  return {
    rad_total_pct: found.relative * 100,
    rho_dryair: dryAirDensity(state(given)),
    rad_dry_pct: (found.dryDensity / SEA_LEVEL.density) * 100,
  };
}

const factors = (given: Given): Numbers => ({
  pd_hPa: dryPressure(state(given)) / 100,
  j1349: factorJ1349(state(given)),
  iso1585: factorIso1585(state(given)),
  din70020: factorDin70020(state(given)),
});

function uncertainty(given: Given): Numbers {
  const { density, relative, sensitivity, share } = densityUncertainty(state(given), {
    kelvin: number(given, 'u_t_K'),
    pascal: number(given, 'u_p_Pa'),
    humidity: number(given, 'u_rh'),
  });
  return {
    rho: density,
    pct_per_K: sensitivity.kelvin * 100,
    pct_per_hPa: sensitivity.pascal * 1e4,
    pct_per_10pctRH: sensitivity.humidity * 10,
    u_rel_pct: relative * 100,
    share_t: share.kelvin,
    share_p: share.pascal,
    share_rh: share.humidity,
  };
}

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^air\.rho\.r8$/, given => ({ rho: idealDensity(kelvin(given), number(given, 'p_Pa'), vapourOf(given)) })],
  [
    /^air\.rho\.r8\.real$/,
    given => {
      const pascal = number(given, 'p_Pa');
      return { rho: densityOfShare({ kelvin: kelvin(given), pascal }, vapourOf(given) / pascal) };
    },
  ],
  [/^air\.cipm|^air\.wrong\.standard-day/, density],
  [/^air\.psat/, saturation],
  [/^air\.dew/, dew],
  [/^air\.rh\./, given => ({ rh: humidityFromDewPoint(kelvin(given), kelvin(given, 'td_C')) })],
  [/^air\.w\./, given => ({ W: humidityRatio(number(given, 'pv_Pa'), number(given, 'p_Pa')) })],
  [/^isa|^air\.wrong\.isa/, standard],
  [/^da\.r/, rule120],
  [/^da/, altitude],
  [
    /^qnh\.r/,
    given => ({
      p_sl_Pa: mapPressure(number(given, 'p_station_Pa'), { elevation: number(given, 'h_m'), kelvin: kelvin(given) }),
    }),
  ],
  [/^qnh\.pit/, mistaken],
  [/^qnh/, qnh],
  [/^rad/, relative],
  [
    /^pow\.r1/,
    given => ({
      cf: factorJ607({
        kelvin: ((number(given, 't_F') - 32) * 5) / 9 + 273.15,
        pascal: number(given, 'baro_inHg') * 3386.389,
        humidity: number(given, 'rh'),
      }),
    }),
  ],
  [/^air\.wrong\.990mb/, given => ({ inHg: inUnit(number(given, 'p_Pa'), 'inHg') })],
  [/^pow|^air\.wrong\.j1349/, factors],
  [/^unc/, uncertainty],
];

describe('air: density, vapour, standard atmosphere, sea level, power, uncertainty', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([name]) => name.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add it to ANSWERS`);
    return answer(given);
  });
});
