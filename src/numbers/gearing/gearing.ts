/** Gearing: from crankshaft to road, which sprockets, when to shift, what pushes and what holds back. */
import type { Card } from '../card.ts';
import { type Answer, type Problems, problems, subject } from '../subject.ts';
import { figures } from './figures.ts';
import { impossible } from './impossible.ts';
import { type Input, schema } from './input.ts';
import { type Push, type Resistance, tractionCurve } from './traction.ts';
import { notes, say } from './words.ts';
import { work } from './work.ts';

const card: Card = {
  what: 'Primary drive, gear and chain turn the engine’s speed into road speed and its torque into push; the best shift is where the next gear pushes as hard.',
  equation:
    'i = p g zr/zf;  v = n C/(2π i);  n2 = n1 i2/i1;  zr/zf = n C/(2π v p g);  T(n) i1 = T(n i2/i1) i2;  F = 2π T i η/C;  D = ½ ρ A v² + c m g0',
  symbols: {
    i: 'crank turns per axle turn; i1 of this gear, i2 of the next [1]',
    p: 'primary ratio, 1 in direct drive [1]',
    g: 'ratio of the gear, 1 in direct drive [1]',
    zf: 'teeth of the front sprocket, at the engine [1]',
    zr: 'teeth of the rear sprocket, on the axle [1]',
    v: 'road speed [m/s]',
    n: 'engine speed; n1 before, n2 after a shift [rad/s]',
    C: 'rolling circumference of a rear tyre [m]',
    T: 'torque at the crankshaft, straight lines between the points given [N·m]',
    F: 'push of the rear tyres at the ground [N]',
    η: 'efficiency from crankshaft to ground, 0.92 when not given (memory) [1]',
    D: 'drag on the level, air and rolling [N]',
    ρ: 'density of the air [kg/m³]',
    A: 'drag coefficient × frontal area [m²]',
    c: 'rolling force over weight [1]',
    m: 'mass of kart and driver [kg]',
    g0: 'standard gravity, 9.80665 [m/s²]',
  },
  validity:
    'Steady pull on the level, no wind; grip and rotating parts are not looked at. A driven tyre slips a few per cent: a circumference taken from a log has that in it. Nothing is said outside of the torque curve.',
  sources: ['gear-ratios', 'shift-crossing', 'drag-balance', 'driveline-loss', 'gravity-1901', 'sprocket-teeth'],
};

const TORQUE = [
  [7000, 16],
  [9000, 21],
  [10000, 23.5],
  [11000, 24.5],
  [12000, 22.9],
  [13000, 17.8],
  [13500, 13.5],
] as const; // invented for a generic 125 cc two-stroke

export const gearing = subject({
  name: 'gearing',
  title: 'Gearing: speed in each gear, which sprockets, where to shift, push against drag',
  card,
  schema,
  behind: [
    'overall ratio *',
    'speed in gear *',
    'after shift *',
    'drop at *',
    'one front tooth less',
    'one rear tooth more',
  ],
  example: {
    drive: 'gearbox',
    'primary ratio': '75/19',
    gears: '33/13 29/16 27/18 27/22 24/22 25/25',
    'front sprocket': '17',
    'rear sprocket': '24',
    'rolling circumference': '860 mm ± 5 mm',
    'engine speed': '12500 rpm',
    'wanted engine speed': '12800 rpm',
    'wanted speed': '115 km/h',
    'wanted gear': '6',
    'front sprockets owned': '16 17 18',
    'rear sprockets owned': '22..27',
    limiter: '13500 rpm',
    'torque curve': TORQUE.map(([at, torque]) => ({ at: `${at} rpm`, torque: `${torque} N·m` })),
    mass: '180 kg',
    'drag area': '0.55 m²',
    'rolling resistance': '2.5 %',
    'air density': '1.2 kg/m³',
  },
  solve,
});

function solve(input: Input): Answer | Problems {
  const against = impossible(input);
  if (against.length > 0) return problems(...against);
  const worked = work(input);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}

/** What a picture of an answered question is drawn from: the push by gear, and drag where it was asked. */
export function pushOf(
  question: unknown,
): { readonly gears: readonly (readonly Push[])[]; readonly against?: Resistance } | undefined {
  const shaped = schema.safeParse(question);
  if (!shaped.success || impossible(shaped.data).length > 0) return undefined;
  const { pull, against } = work(shaped.data);
  if (!pull) return undefined;
  return { gears: tractionCurve(pull.curve, pull.line, pull.limiter), ...(against && { against }) };
}
