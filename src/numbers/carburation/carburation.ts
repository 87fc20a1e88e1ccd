/** Carburation: the main jet for the air of now, from one that was right. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'Denser air lifts more fuel, but not enough more for its oxygen: the mixture goes leaner with the square root of density. The jet that keeps it lies between theory and the paddock rule, or where this engine’s log says.',
  equation:
    'F/A ~ √(ρf/ρ);  A1/A0 = (ρd1/ρd0) √(ρ0/ρ1) N;  J1 = J0 A1/A0 by flow, J0 √(A1/A0) by bore;  paddock J1 = J0 ρ1/ρ0;  log J1 = J0 (ρ1/ρ0)^k, k ± t s/√Σ(x - x̄)²;  ' +
    'N = √(ρf0/ρf1) (R0/(R0+1))/(R1/(R1+1)) AFR0/AFR1;  AFR = (c + h/4 - o/2) Ma/(0.2095 M);  share = An²/(Am² + An²);  Q = Cd A √(2 dp/ρf)',
  symbols: {
    'F/A': 'fuel over air, by mass [1]',
    ρ: 'density of the air, 0 then and 1 now [kg/m³]',
    ρd: 'mass of dry air in a cubic metre of it [kg/m³]',
    ρf: 'density of the fuel, 0.00095 less a kelvin [kg/m³]',
    A: 'area of the main jet [m²]',
    J: 'number on the jet: bore in 0.01 mm, or flow [1]',
    N: 'what fuel, oil and ethanol ask for besides the air [1]',
    R: 'mixing ratio, parts of petrol to one of oil [1]',
    AFR: 'air a kilogram of fuel needs to burn wholly [kg/kg]',
    'c, h, o': 'atoms in a molecule of the fuel [1]',
    'Ma, M': 'molar mass of dry air and of the fuel [g/mol]',
    k: 'exponent of the log [1]',
    't, s':
      'Student’s t for 95 % [1]; residual standard deviation of ln J, at least that of the steps between jets [1]',
    x: 'ln of density of the sessions read as right, of dry air where each has it [1]',
    'Am, An': 'area of the main jet, and of the ring between needle and needle jet [m²]',
    share: 'how much of a change of the main jet reaches the engine there [1]',
    'Cd, dp': 'discharge coefficient [1], pressure that lifts the fuel [Pa]',
  },
  validity:
    'Full throttle, same engine, plug, pipe, needle and float level. Left out: air bleeds, pulsation, viscosity, ram of the air box. The richer end counts, rounded up to a jet of the box; leaner one size at most and not under the smallest jet logged as good. Five sessions read as right, 4 % of density apart, before the log counts. Maker and engine builder win.',
  sources: [
    'jet-theory',
    'jet-linear',
    'jet-caution',
    'jet-log',
    'air-leak-test',
    'throttle-zones',
    'series-orifice',
    'petrol-expansion',
    'combustion-balance',
    'premix-leaning',
    'fuel-density',
    'student-t',
  ],
};

export const carburation = subject({
  name: 'carburation',
  title: 'Main jet: for another air, fuel or oil, from one that was right',
  card,
  schema,
  example: {
    jet: '165',
    'numbered by': 'diameter',
    'air then': {
      temperature: '28 °C ± 1 °C',
      pressure: '992 hPa ± 1 hPa',
      'pressure is': 'station',
      humidity: '45 % ± 5 %',
    },
    'air now': {
      temperature: '9 °C ± 1 °C',
      pressure: '996 hPa ± 1 hPa',
      'pressure is': 'station',
      humidity: '80 % ± 5 %',
    },
    'jets in the box': '158 160 162 165 168 170 172 175 178 180',
    'smallest good jet': '162',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  if (worked === undefined)
    return problems({
      path: 'air now',
      expected: 'air that is known',
      got: 'no density from these readings',
      remedy: 'read thermometer and barometer again; until then keep the richer jet',
    });
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
