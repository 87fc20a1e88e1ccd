/** Premix: oil for petrol, litres for a session, and what is left of it on the scales. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'Oil for so much mix or petrol, with what is in the can; litres for the session from what this kart used before; and the mass that is left when the flag falls.',
  equation:
    'O = V/(R + 1) in V of mix, O = P/R into P of petrol;  R = Rm ρo/ρp;  ρ = (ρo + R ρp)/(R + 1);  petrol now over then = (R1/(R1 + 1))/(R0/(R0 + 1));  ' +
    'v = mean(Vi/Li) ± t s √(1 + 1/n);  fill = (laps + spare) v + reserve;  E = W - V ρ - q;  theory v = P x b τ/ρ',
  symbols: {
    'O, P, V': 'oil, petrol and mix [m³]',
    'R, Rm': 'parts of petrol to one of oil, by volume and by mass; 0 before, 1 now [1]',
    'ρo, ρp, ρ': 'density of oil, petrol and mix [kg/m³]',
    'Vi, Li': 'fuel used in a session [m³] and its laps [1]',
    v: 'fuel a lap, the high end for the fill [m³]',
    't, s, n': 'Student’s t for 95 % [1], standard deviation of the sessions [m³], how many [1]',
    'W, E, q': 'mass on the scales before and at the flag, and lost besides fuel [kg]',
    'x, b, τ': 'mean over peak power [1], fuel for the work [kg/J], lap time [s]',
  },
  validity:
    'Ratios of 8:1 to 100:1; oil and petrol at one temperature. Three sessions of this kart on this track or more; theory only looks whether a record can be true. The engine maker’s ratio and the class rules win.',
  sources: [
    'premix-shares',
    'premix-leaning',
    'litres-a-lap',
    'fuel-sample',
    'fuel-work',
    'fuel-balance',
    'mass-at-scales',
    'fuel-density',
    'student-t',
    'jcgm-106',
  ],
};

export const premix = subject({
  name: 'premix',
  title: 'Fuel and oil: what to pour, litres for the session, mass at the flag',
  card,
  schema,
  behind: ['ratio by *', 'density *', 'fuel a lap*', 'spread *', 'burnt *', 'mass burnt'],
  example: {
    ratio: '20:1',
    'ratio by': 'volume',
    volume: '10 l',
    'volume is': 'mix in the can',
    'in the can': '2 l',
    'in the can is': 'mixed',
    'ratio in the can': '25:1',
    laps: '14',
    'spare laps': '2',
    reserve: '1.5 l',
    'tank holds': '8.5 l',
    record: [
      { fuel: '4.6 l', laps: '15' },
      { fuel: '3.7 l', laps: '12' },
      { fuel: '5.6 l', laps: '18' },
      { fuel: '4.3 l', laps: '14' },
    ],
    'on the scales': '180.6 kg ± 0.2 kg',
    'weighed with': 'the fill in',
    'least mass': '175 kg',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
