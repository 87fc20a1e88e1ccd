/** Drag: the drag area and the rolling coefficient of this kart, from a trace of it rolling out. */
import { wrong } from '../asked.ts';
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { figures, notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'A kart that rolls out is slowed by the air, with the square of its speed, and by rolling, the same at every speed.',
  equation:
    '-dv/dt = a0 + a2 v²;  v(t) = √(a0/a2) tan(atan(v0 √(a2/a0)) - t √(a0 a2));  least squares on v;  CdA = 2 me a2/ρ;  Crr = a0 me/(m g);  t = (atan(v1 k) - atan(v2 k))/√(a0 a2), k = √(a2/a0);  P η = (½ ρ CdA v² + Crr m g) v',
  symbols: {
    v: 'speed; v0 when the trace begins; v1 and v2 two speeds [m/s]',
    t: 'time [s]',
    a0: 'slowing by rolling [m/s²]',
    a2: 'slowing by the air over the square of speed [1/m]',
    CdA: 'drag area: drag coefficient × frontal area [m²]',
    Crr: 'rolling coefficient: rolling force over weight [1]',
    m: 'mass with driver [kg]',
    me: 'the same and what wheels, axle and discs add by turning [kg]',
    ρ: 'density of the air [kg/m³]',
    g: 'standard gravity [m/s²]',
    P: 'power at the crankshaft [W]',
    η: 'share of it that reaches the ground [1]',
  },
  validity:
    'Level, straight, dry, warm tyres, clutch in; both directions averaged, wind along the stretch under 2 m/s. Scrub of axle and toe, bearings and gearbox count as rolling. Figures of other karts are not this kart’s.',
  sources: ['coast-down', 'drag-balance', 'student-t', 'jcgm-100', 'gravity-1901'],
};

/** Invented: a kart of 0.55 m² and 0.026 down and up a fall of 0.1 %, every 1.25 s, speeds as a logger rounds them. */
const FIRST = [101.2, 94.3, 88.1, 82.6, 77.3, 73, 68.7, 64.7, 61.2, 57.9, 54.9, 52.3, 49.6] as const;
const BACK = [100.7, 93.7, 87.8, 82, 76.8, 72.3, 68, 64.2, 60.7, 57.3, 54.3, 51.4, 48.7] as const;
const rows = (speeds: readonly number[]) =>
  speeds.map((speed, n) => ({ time: `${1.25 * n} s`, speed: `${speed} km/h` }));

export const drag = subject({
  name: 'drag',
  title: 'Drag: drag area and rolling from a coast-down, time between speeds, the speed that uses up the power',
  card,
  schema,
  behind: ['slowing *', 'air force *', 'rolling force', 'scatter *', 'fall *'],
  example: {
    'first run points': rows(FIRST),
    'return run points': rows(BACK),
    mass: '180 kg ± 0.5 kg',
    'turning mass': '5 kg',
    'air density': '1.20 kg/m³ ± 0.01 kg/m³',
    wind: '1 m/s',
    'speed from': '100 km/h',
    'speed to': '50 km/h',
    power: '34 kW',
    efficiency: '90 %',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  if ('untold' in worked)
    return problems(
      wrong(
        worked.untold,
        'a trace that tells air from rolling',
        'one that does not bend as a rolling kart slows',
        'let it roll from near top speed to a third of it, log finely, and cut what is not rolling',
      ),
    );
  return { kind: 'answer', figures: figures(input, worked), say: say(input, worked), notes: notes(input, worked) };
}
