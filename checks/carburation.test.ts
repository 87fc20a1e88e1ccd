/**
 * Carburation: fuel flow by air density (A. Sarangan, What exactly does mixture control do?, aviation.sarangan.org,
 * 2020-10-02), carried on to jets, humid air, a needle in series, stoichiometry and petrol by temperature (0.00095 a kelvin,
 * techzle.com) in Python, outside the project. One figure of that page is printed wrong and stays as a known difference.
 */
import { describe } from 'vitest';
import {
  areaRatio,
  blendRatio,
  boreRatio,
  dryAirDensity,
  ETHANOL,
  ethanolByMass,
  expandedVolume,
  fuelFlowRatio,
  ISO_OCTANE,
  jetArea,
  jetBand,
  type Molecule,
  mainShare,
  mixtureRatio,
  moistAirDensity,
  PETROL_MOLECULE,
  paddockRatio,
  petrolDensity,
  ringArea,
  seriesArea,
  stoichiometricRatio,
} from '../src/numbers/index.ts';
import rows from './rows/carburation.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

function theory(given: Given): Numbers {
  const ratio = number(given, 'rho_over_rho0');
  const area = areaRatio({ density: 1 }, { density: ratio });
  return {
    mixture_far_ratio: mixtureRatio(ratio),
    jet_area_or_flow_ratio: area,
    jet_diameter_ratio: boreRatio(area),
    practice_number_ratio: paddockRatio(ratio),
  };
}

const airOf = (given: Given, when: string) => {
  const state = {
    kelvin: number(given, `${when}_t_C`) + 273.15,
    pascal: number(given, `${when}_p_Pa`),
    humidity: number(given, `${when}_rh`),
  };
  return { density: moistAirDensity(state), dry: dryAirDensity(state) };
};

/** The row counts moisture as density only, so the dry part is not handed on. */
function worked(given: Given): Numbers {
  const [{ density: rho0 }, { density: rho1 }] = [airOf(given, 'ref'), airOf(given, 'now')];
  const jet = number(given, 'jet_number_0p01mm');
  const by = (numbering: 'diameter' | 'flow') => {
    const band = jetBand({ jet, numbering, was: { density: rho0 }, now: { density: rho1 } });
    if (band.kind !== 'band') throw new Error(band.why);
    return band;
  };
  return {
    rho0,
    rho1,
    ratio: by('flow').ratio,
    number_theory_if_diameter: by('diameter').theory[0],
    number_theory_if_flow: by('flow').theory[0],
    number_linear: by('flow').paddock,
  };
}

function humid(given: Given): Numbers {
  const [was, now] = [airOf(given, 'ref'), airOf(given, 'now')];
  return {
    area_ratio: areaRatio(was, now),
    area_ratio_ignoring_humidity: areaRatio({ density: was.density }, { density: now.density }),
  };
}

function series(given: Given): Numbers {
  const main = jetArea(number(given, 'main_jet_mm') / 1000);
  const ring = ringArea(number(given, 'needle_jet_mm') / 1000, number(given, 'needle_mm') / 1000);
  return {
    main_mm2: main * 1e6,
    annulus_mm2: ring * 1e6,
    effective_mm2: seriesArea(main, ring) * 1e6,
    dlnAeff_dlnAmain: mainShare(main, ring),
  };
}

const FUELS: Readonly<Record<string, Molecule>> = {
  'iso-octane C8H18': ISO_OCTANE,
  'petrol CH1.85': PETROL_MOLECULE,
  'ethanol C2H6O': ETHANOL,
};
function burnt(given: Given): Numbers {
  const fuel = FUELS[String(given.fuel)];
  if (fuel === undefined) throw new Error(`no molecule for ${String(given.fuel)}: add it to FUELS`);
  return { afr: stoichiometricRatio(fuel) };
}
function blend(given: Given): Numbers {
  const share = ethanolByMass(
    number(given, 'ethanol_volume_fraction'),
    number(given, 'rho_ethanol'),
    number(given, 'rho_petrol'),
  );
  return { ethanol_mass_fraction: share, afr: blendRatio(share) };
}

function warm(given: Given): Numbers {
  const at15 = number(given, 'rho15');
  const rho = petrolDensity(at15, number(given, 't_C') + 273.15);
  return { rho, mass_flow_ratio: fuelFlowRatio(at15, rho) };
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  'carb.r1': given => ({ fuel: 1 / mixtureRatio(number(given, 'sigma')) }),
  'carb.r1.richer': given => ({ richer: mixtureRatio(number(given, 'sigma')) - 1 }),
  'carb.c9': worked,
  'carb.h1': humid,
  'carb.h2': humid,
  'carb.s1': series,
  'carb.afr1': burnt,
  'carb.afr2': burnt,
  'carb.afr3': burnt,
  'carb.afrE10': blend,
  'carb.rf2': warm,
  'carb.rf3': warm,
  'carb.rf.r1': given => ({
    V_L: expandedVolume(number(given, 'V_L'), number(given, 't1_C'), number(given, 't2_C')),
  }),
};

describe('carburation: jets by air, needle in series, fuel', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS[id] ?? (id.startsWith('carb.c') ? theory : undefined);
    if (answer === undefined) throw new Error(`no answer for ${id}: add it to ANSWERS`);
    return answer(given);
  });
});
