/** Engine: ignition, ports, compression, squish, piston speed, mean pressure, pipe, compression over the hours. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'Crank and rod say where the piston stands at each angle: ignition, ports and compression follow. Solder tells the squish, one gauge over the hours the ring.',
  equation:
    'y = r + l - r cos a - √(l² - r² sin² a);  cos a = (r² + h² - l²)/(2 r h), h = r + l - y;  D = 360° - 2 a;  full = (Vs + Vc)/Vc, trapped = (A x + Vc)/Vc;  c = 2 s n;  g = r ω² (1 + r/l);  p = P/(Vs n);  L = w D/(12 N);  w = √(γ R T);  fall = 1 - q/q0',
  symbols: {
    y: 'drop of the piston below top [m]',
    r: 'crank radius, half of the stroke s [m]',
    l: 'connecting rod, centre to centre [m]',
    a: 'crank angle from top; with a gudgeon offset before and after top apart [rad]',
    D: 'duration of a port [°]',
    x: 'exhaust roof below the crown at top [m]',
    A: 'area of the bore [m²]',
    Vs: 'swept volume, Vc chamber at top [m³]',
    n: 'turns a second, N turns a minute [1/s]',
    ω: '2π n [rad/s]',
    c: 'mean piston speed [m/s]',
    g: 'acceleration of the piston at top [m/s²]',
    p: 'brake mean effective pressure, two-stroke [Pa]',
    P: 'power at the crank [W]',
    L: 'tuned length, piston face to the middle of the closing cone [m]',
    w: 'speed of sound in the gas, temperature T, γ 1.35, R 287 J/(kg·K) [m/s]',
    q: 'compression now, q0 the best on the same gauge [Pa]',
  },
  validity:
    'Stiff crank, flat crown with a sharp edge; ratios are geometry only; two-stroke; pipe length as a start for trials. Least squish, the tenth of compression: common practice, the maker wins.',
  sources: [
    'crank-geometry',
    'mean-pressure',
    'tuned-pipe',
    'squish-least',
    'compression-tenth',
    'student-t',
    'gravity-1901',
  ],
};

export const engine = subject({
  name: 'engine',
  title: 'Engine: ignition, ports, compression, squish, piston speed, pipe, compression over the hours',
  card,
  schema,
  behind: [
    '0.1 mm *',
    'exhaust roof *',
    'exhaust opens *',
    'exhaust closes *',
    'transfer roof *',
    'transfer opens *',
    'transfer closes *',
    'swept volume',
    'least squish',
  ],
  example: {
    stroke: '54.5 mm',
    rod: '110 mm',
    bore: '54 mm',
    ignition: { drop: '1.6 mm' },
    ports: { exhaust: '25.5 mm', transfer: '41 mm', 'measured from': 'crown at top' },
    'base gasket change': '0.2 mm',
    squish: { left: '0.85 mm', right: '0.95 mm' },
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}
