/** Wheel loads: four wheels on a rigid or flexible frame, three with the inner rear up, and where it would go over. */

import { formatQuantity } from '../../quantity/index.ts';
import { type Asked, siOf } from '../asked.ts';
import type { Card } from '../card.ts';
import type { Springs } from '../front-end/warp.ts';
import { type Answer, type Figure, type Problems, problems, subject } from '../subject.ts';
import { bodyOf, bodyProblems, bodyUnusual, type Input, motionProblems, schema, springsOf } from './input.ts';
import { axleLoads, type Body, fourWheels, G, height, type Loads, liftAt, rollover, threeWheels } from './statics.ts';

const card: Card = {
  what: 'Load of each wheel in a turn under braking, from moments about the axles; a flexible frame lets front and rear roll apart.',
  equation:
    'front = m (g b + a h) / L;  KF (φF - z/tF) + Kt (φF - φR) = MF;  KR φR + Kt (φR - φF) = MR;  K = k t²/2;  wheel = W/2 ± K φ / t;  over at a/g = (y + t/2) / h',
  symbols: {
    m: 'mass with driver [kg]',
    b: 'centre of mass ahead of the rear axle, front share times wheelbase [m]',
    h: 'height of the centre of mass [m]',
    y: 'centre of mass away from the middle, towards the inside of the turn [m]',
    L: 'wheelbase [m]',
    t: 'track between the middles of the tyres, front and rear apart; at the centre of mass for going over [m]',
    k: 'stiffness of one tyre [N/m]',
    Kt: 'stiffness of the frame in twist [N·m/rad]',
    φ: 'roll of the front and the rear half [rad]',
    z: 'warp of the front contacts from steering [m]',
    M: 'moment of the front and the rear part of the mass [N·m]',
    W: 'load of an axle [N]',
  },
  validity:
    'Steady, level road, tyres as springs, small roll, no kerb. The forces a live axle makes by scrubbing are not in it. Tyre and frame stiffness decide how the load is shared and have to be measured on this kart.',
  sources: ['spring-statics', 'rollover-static', 'gravity-1901'],
};

const WHEELS = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
} as const;
type Wheel = keyof typeof WHEELS;
const NAMES = Object.keys(WHEELS) as readonly Wheel[];
const MIRROR: Readonly<Record<Wheel, Wheel>> = {
  frontLeft: 'frontRight',
  frontRight: 'frontLeft',
  rearLeft: 'rearRight',
  rearRight: 'rearLeft',
};

export const wheelLoads = subject({
  name: 'wheel-loads',
  title: 'Wheel loads: each wheel in a turn and under braking, when the inner rear lifts, when it goes over',
  card,
  schema,
  example: {
    mass: '181 kg',
    wheelbase: '1045 mm',
    'front share': '41.7 %',
    'cg height': '240 mm',
    'front contact track': '1080 mm',
    'rear contact track': '1170 mm',
    'front tyre stiffness': '90 N/mm',
    'rear tyre stiffness': '110 N/mm',
    'frame torque per degree': '150 N·m',
    'lateral acceleration': '1 g',
    turn: 'left',
    warp: '10.5 mm',
  },
  solve,
});

/** The state a kart is in: four wheels down, three, or none that statics could say. */
export type Stance = { readonly loads: Loads; readonly up?: 'frontLeft' | 'rearLeft' | 'both' };

/** Loads in a left turn with whichever inner wheel is up taken off the road. `both`: it goes over, loads as on four wheels. */
export function stance(body: Body, springs: Springs, motion: Parameters<typeof fourWheels>[2], warp = 0): Stance {
  const loads = fourWheels(body, springs, motion, warp);
  if (loads.frontLeft >= 0 && loads.rearLeft >= 0) return { loads };
  for (const up of loads.rearLeft <= loads.frontLeft
    ? (['rearLeft', 'frontLeft'] as const)
    : (['frontLeft', 'rearLeft'] as const)) {
    const three = threeWheels(up, body, springs, motion);
    if (NAMES.every(wheel => three[wheel] >= 0)) return { loads: three, up };
  }
  return { loads, up: 'both' };
}

function solve(input: Input): Answer | Problems {
  const against = [...bodyProblems(input), ...motionProblems(input)];
  if (against.length > 0) return problems(...against);
  const right = input.turn === 'right';
  const body = bodyOf(input);
  // A right turn is the left turn of the kart seen in a mirror.
  const seen = right ? { ...body, left: -body.left } : body;
  const springs = springsOf(input);
  const motion = { lateral: input['lateral acceleration'].si, braking: siOf(input, 'braking', 0) };
  const warp = siOf(input, 'warp', 0);
  const axles = axleLoads(seen, motion.braking);
  if (axles.front <= 0 || axles.rear <= 0) return problems(upended(input, axles.rear <= 0, seen));
  const found = stance(seen, springs, motion, warp);
  const over = rollover(seen, springs, motion.braking);
  const lift = liftAt('rearLeft', seen, springs, { braking: motion.braking, warp });
  const named = (wheel: Wheel): Wheel => (right ? MIRROR[wheel] : wheel);
  return {
    kind: 'answer',
    figures: {
      ...(found.up === 'both'
        ? {}
        : Object.fromEntries(NAMES.map(wheel => [WHEELS[named(wheel)], force(found.loads[wheel])]))),
      'front axle': force(axles.front),
      'rear axle': force(axles.rear),
      'inner rear lifts at': acceleration(lift),
      'goes over at': acceleration(over),
    },
    say: say(found, right, lift, over, motion.lateral),
    notes: notes(input, springs),
  };
}

const force = (si: number): Figure => ({ si, unit: 'N', text: formatQuantity(si, 'N') });
const acceleration = (si: number): Figure => ({
  si,
  unit: 'g0',
  text: Number.isFinite(si) ? formatQuantity(si, 'g0', 2) : 'not by turning',
});

function say({ up }: Stance, right: boolean, lift: number, over: number, lateral: number): readonly string[] {
  const inner = right ? 'right' : 'left';
  const state =
    up === 'both'
      ? 'No wheel on the inside carries load: the kart goes over. Use less lateral acceleration, a wider track or a lower seat.'
      : up === 'rearLeft'
        ? `The ${inner} rear wheel is off the road; the other three carry the kart.`
        : up === 'frontLeft'
          ? `The ${inner} front wheel is off the road; the other three carry the kart. That is not the usual order: check the inputs.`
          : 'All four wheels are on the road.';
  const wheel = Number.isFinite(lift)
    ? lift < over
      ? `The ${inner} rear wheel lifts from ${formatQuantity(lift, 'g0', 2)}.`
      : `The ${inner} rear wheel does not lift before the kart goes over.`
    : `The ${inner} rear wheel does not lift by turning.`;
  return [
    state,
    wheel,
    `On paper the kart goes over at ${formatQuantity(over, 'g0', 2)}; ${lateral < over ? 'this turn uses' : 'this turn asks for'} ${formatQuantity(lateral, 'g0', 2)}.`,
    'Caution: tyres that give, a kerb, a rut or a sudden steering move tip a kart well below that figure. It is no permission to try.',
  ];
}

function upended(input: Asked, rear: boolean, body: Body) {
  const most = rear ? (G * (body.wheelbase - body.ahead)) / height(body) : -(G * body.ahead) / height(body);
  const braking = input.braking;
  return {
    path: 'braking',
    expected: `${rear ? 'less' : 'more'} than ${formatQuantity(most, 'g0', 2)}: there the ${rear ? 'rear' : 'front'} wheels leave the road`,
    got: typeof braking === 'object' ? braking.text : 'nothing',
    remedy: 'use a braking that the tyres can give, or correct the height of the centre of mass',
  };
}

function notes(input: Input, springs: Springs): readonly string[] {
  return [
    ...bodyUnusual(input),
    ...(Number.isFinite(springs.frame)
      ? []
      : [
          'Frame taken as rigid, because no stiffness was given: a real one shares the load otherwise. Measure it with a shim on the scales.',
        ]),
    ...(input.warp ? [] : ['No warp from steering was given: the inner rear lifts sooner with it. Ask front-end.']),
    'Tyre stiffness is seldom known: the share between front and rear is no better than it.',
  ];
}
