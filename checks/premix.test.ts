/**
 * Premix and fuel: shares of a mix, litres for a session, the scales afterwards, all arithmetic in Python outside the
 * project; direction of more oil from a two-stroke tuner at dirtrider.net, thread 184622; fuel for the work as printed by a
 * dynamometer maker (quoted at mechanics.stackexchange.com) and converted in Wikipedia, Brake-specific fuel consumption.
 */
import { describe } from 'vitest';
import {
  airThrough,
  dryAirDensity,
  FUEL_GUIDE,
  fromPounds,
  fuelForPower,
  fuelOfCharge,
  inGrams,
  litresForSession,
  litresPerLap,
  oilFor,
  petrolShareRatio,
  startMass,
} from '../src/numbers/index.ts';
import { inUnit } from '../src/quantity/index.ts';
import rows from './rows/premix.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const litre = (si: number): number => inUnit(si, 'l');

function mixed(given: Given): Numbers {
  const poured = oilFor({
    ratio: number(given, 'ratio'),
    by: 'volume',
    volume: number(given, 'total_L') / 1000,
    of: 'mix in the can',
  });
  if (poured.kind !== 'pour') throw new Error(poured.kind);
  const { oil, petrol, mix } = poured;
  return {
    oil_L: litre(oil),
    petrol_L: litre(petrol),
    oil_pct_of_mix: (100 * oil) / mix,
    oil_pct_of_petrol: (100 * oil) / petrol,
  };
}

function leaning(given: Given): Numbers {
  const ratio = petrolShareRatio(number(given, 'ratio_from'), number(given, 'ratio_to'));
  return { petrol_share_ratio: ratio, change_pct: 100 * (ratio - 1) };
}

/** The row knows one figure a lap and no spread: three fills that are alike. */
function session(given: Given): Numbers {
  const run = { volume: number(given, 'L_per_lap') / 1000, laps: 1 };
  const found = litresForSession({
    laps: number(given, 'laps'),
    spare: number(given, 'spare_laps'),
    reserve: number(given, 'reserve_L') / 1000,
    perLap: litresPerLap([run, run, run]),
  });
  if (found.kind === 'not known') throw new Error(found.why);
  return { fill_L: litre(found.fill), burn_L_race: litre(found.burn.mean) };
}

function scales(given: Given): Numbers {
  const [fill, burn] = [number(given, 'fill_L') / 1000, number(given, 'burn_L') / 1000];
  const density = number(given, 'mix_density') * 1000;
  return {
    fuel_start_kg: fill * density,
    fuel_burnt_kg: burn * density,
    start_weight_needed_kg: startMass({
      least: number(given, 'min_kg'),
      burn,
      density,
      otherLoss: number(given, 'other_loss_kg'),
      margin: number(given, 'margin_kg'),
    }),
    fuel_left_kg: (fill - burn) * density,
  };
}

function hourly(given: Given): Numbers {
  const flow = fuelForPower({
    peak: number(given, 'peak_kW') * 1000,
    share: number(given, 'mean_power_fraction'),
    work: number(given, 'bsfc_g_kWh') / 3.6e9,
  });
  const hour = (flow * 3600) / number(given, 'rho');
  return { kg_h: flow * 3600, L_h: hour, L_per_10min: hour / 6 };
}

const charge = (given: Given) => ({
  swept: number(given, 'disp_cc') / 1e6,
  turns: number(given, 'rpm') / 60,
  delivery: number(given, 'delivery_ratio'),
  airToFuel: number(given, 'afr'),
  dryDensity: dryAirDensity({
    kelvin: number(given, 't_C') + 273.15,
    pascal: number(given, 'p_Pa'),
    humidity: number(given, 'rh'),
  }),
});

function balance(given: Given): Numbers {
  const fuel = fuelOfCharge(charge(given));
  return { fuel_kg_h: fuel * 3600, bsfc_g_kWh: inGrams(fuel / (number(given, 'power_kW') * 1000)) };
}

function need(given: Given): Numbers {
  const fuel = fuelOfCharge(charge(given)) * 3600;
  return { air_kg_h: airThrough(charge(given)) * 3600, fuel_kg_h: fuel, fuel_L_h: fuel / 0.745 };
}

const GUIDE_OF: Readonly<Record<string, keyof typeof FUEL_GUIDE>> = {
  'fuel.bsfc.peak_torque_0.5': 'high compression, peak torque',
  'fuel.bsfc.peak_power_0.55': 'high compression, peak power',
  'fuel.bsfc.peak_torque_0.55': 'low compression, peak torque',
  'fuel.bsfc.peak_power_0.6': 'low compression, peak power',
  'fuel.bsfc.2-stroke_carburettor_1000_rpm_0.8': '1000 rpm',
};

function fill(given: Given): Numbers {
  const [volume, laps] = [number(given, 'L_used') / 1000, number(given, 'laps')];
  const found = litresPerLap([1, 1, 1].map(() => ({ volume, laps })));
  if (found.kind !== 'known') throw new Error(found.kind);
  const lap = litre(found.mean);
  return { L_per_lap: lap, L_h: (lap * 3600) / number(given, 'lap_s') };
}

function answerFor(id: string): (given: Given) => Numbers {
  const guide = GUIDE_OF[id];
  if (guide !== undefined) return () => ({ lb_per_hph: FUEL_GUIDE[guide] });
  const found: Readonly<Record<string, (given: Given) => Numbers>> = {
    'mix.c': mixed,
    'mix.j': leaning,
    'mix.l': session,
    'mix.w': scales,
    'fuel.conv': given => ({ g_per_kWh: inGrams(fromPounds(number(given, 'lb_per_hph'))) }),
    'fuel.c': hourly,
    'fuel.mb': balance,
    'fuel.cal': fill,
    'carb.q': need,
  };
  const answer = found[id.replace(/\d+$/, '')];
  if (answer === undefined) throw new Error(`no answer for ${id}: add it`);
  return answer;
}

describe('premix: mixing, leaning, litres, the scales, fuel by theory', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => answerFor(id)(given));
});
