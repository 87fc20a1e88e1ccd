/** Brakes: foot to ground, front against rear, which axle locks first, the stop, the heat, the wear. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'The foot presses two circuits through pedal and bar; each axle slows the kart until its tyres lock.',
  equation:
    's = (e/2 + o)/e;  p = 4 F/(π a²);  T = 2 μp p n (π k²/4) r;  X = T/R;  ideal = (b + z h)/L;  zF = (μ b + φ δ L)/(φ L - μ h);  zR = (μ (L - b) - φ δ L)/((1 - φ) L + μ h);  d = v t + (v² - w²)/(2 z g);  ΔT = f ½ (1 + κ) m (v² - w²)/(M c)',
  symbols: {
    s: 'share of the push-rod force on the front master [1]',
    e: 'distance between the clevises of the bar [m]',
    o: 'bearing from the middle of the bar toward the front clevis [m]',
    p: 'pressure over the air around [Pa]',
    F: 'force on one master: pedal force × pedal ratio × efficiency × share [N]',
    a: 'bore of the master, its diameter [m]',
    m: 'mass with driver [kg]',
    T: 'torque of one caliper [N·m]',
    μp: 'friction of pad on disc [1]',
    n: 'pistons on one side of the disc [1]',
    k: 'diameter of a caliper piston [m]',
    r: 'effective radius: mean of outer and inner radius of the pad [m]',
    R: 'rolling radius of the tyre, half of its diameter [m]',
    X: 'force at the ground [N]',
    b: 'centre of mass ahead of the rear axle, wheelbase × front share of load [m]',
    h: 'height of the centre of mass [m]',
    L: 'wheelbase [m]',
    z: 'deceleration over standard gravity [1]',
    φ: 'front share of the brakes’ force [1]',
    μ: 'grip of the tyres, the same for both axles [1]',
    δ: 'drag of the engine at the rear over weight [1]',
    v: 'speed before, w after [m/s]',
    t: 'reaction time [s]',
    κ: 'energy of rotating parts over the rest, 0.04 (memory) [1]',
    f: 'share of the energy in one disc [1]',
    M: 'mass of one disc [kg]',
    c: 'specific heat, 460 for steel and iron (memory; 450 in a worked case) [J/(kg·K)]',
  },
  validity:
    'Straight, level, stiff kart, no air drag, one grip; floating or opposed calipers that press alike on both sides; heat of one stop, none carried away. A rear axle locks as a whole. The makers and the class rules win.',
  sources: ['brake-balance', 'brake-ratio', 'brake-heat', 'brake-stop', 'brake-usual', 'pad-limit', 'gravity-1901'],
};

export const brakes = subject({
  name: 'brakes',
  title: 'Brakes: pedal force to wheel force, bias, which axle locks first, the stop, heat and wear',
  card,
  schema,
  behind: [
    'pressure *',
    'torque of one caliper *',
    'braking force *',
    'axle load *',
    'deceleration asked for',
    'rear lifts at',
    'distance with reaction',
    'energy of the stop',
    'front share of the bar',
    'ideal bar offset',
    'front pad wear per hour',
  ],
  example: {
    'pedal force': '350 N',
    'pedal ratio': '4.2',
    'bar spacing': '60 mm',
    'bar offset': '3 mm',
    front: {
      'master bore': '16 mm',
      'piston diameter': '24 mm',
      'pistons a side': '1',
      'effective radius': '55 mm',
      'tyre diameter': '256 mm',
      'disc mass': '0.4 kg',
      pad: { now: '4 mm', new: '6 mm', 'hours run': '6 h' },
    },
    rear: {
      'master bore': '16 mm',
      'piston diameter': '26 mm',
      'pistons a side': '2',
      'effective radius': '80 mm',
      'tyre diameter': '278 mm',
      'disc mass': '1 kg',
    },
    'pad friction': '0.40 ± 0.05',
    mass: '181 kg',
    wheelbase: '1045 mm',
    'front load share': '41.7 %',
    'centre height': '240 mm',
    'tyre grip': '1.2',
    speed: '100 km/h',
    'reaction time': '0.15 s',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
