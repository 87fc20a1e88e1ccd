/**
 * The front end in numbers worked outside the project: turning matrices against quaternions and a search along the rim,
 * the cotangent rule as printed at examveda.com, rod lengths closed by a root finder, springs as a linear system.
 */
import { describe } from 'vitest';
import {
  ackermannShare,
  diagonalTransfer,
  type FrontWheel,
  idealInner,
  innerEnd,
  kingpinAxis,
  rodTurn,
  seriesStiffness,
  steered,
  stiffnessFromShim,
  straightRod,
} from '../src/numbers/index.ts';
import rows from './rows/front-end.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const DEGREE = Math.PI / 180;
const G = 9.80665; // m/s²

const or = (given: Given, name: string, otherwise: number): number =>
  given[name] === undefined ? otherwise : number(given, name);

/** Rows of camber alone name no stub and no radius: it does not depend on them. */
const wheel = (given: Given): FrontWheel => ({
  caster: number(given, 'caster_deg') * DEGREE,
  inclination: number(given, 'kpi_deg') * DEGREE,
  stub: or(given, 'stub_mm', 110) / 1000,
  forward: or(given, 'trailOffset_mm', 0) / 1000,
  radius: or(given, 'R_mm', 130) / 1000,
  camber: 0,
});

const steer = (given: Given): Numbers => {
  const at = steered(given.side === 'right' ? 'right' : 'left', wheel(given), number(given, 'rot_deg') * DEGREE);
  return {
    dz_mm: at.rise * 1000,
    roadSteer_deg: at.roadSteer / DEGREE,
    camber_deg: at.camber / DEGREE,
    contact_mm: at.contact.map(metres => metres * 1000),
  };
};

const warp = (given: Given): Numbers => {
  const turn = number(given, 'rot_deg') * DEGREE;
  const [left, right] = [steered('left', wheel(given), turn).rise, steered('right', wheel(given), turn).rise];
  return { warp_mm: (right - left) * 1000, mean_mm: ((right + left) / 2) * 1000 };
};

const ackermann = (given: Given): Numbers => ({
  inner_deg:
    idealInner(number(given, 'outer_deg') * DEGREE, number(given, 'kingpinTrack'), number(given, 'L')) / DEGREE,
});

/** In the plane: kingpins and column upright. */
const planeLinkage = (given: Given): Numbers => {
  const [kx = 0, ky = 0] = list(given, 'kingpin_m');
  const [ax = 0, ay = 0] = list(given, 'arm_m');
  const [cx = 0, cy = 0] = list(given, 'pitmanCentre_m');
  const half = number(given, 'pitmanHalfAngleFromRear_deg') * DEGREE;
  const [back, aside] = [
    number(given, 'pitmanRadius_m') * Math.cos(half),
    number(given, 'pitmanRadius_m') * Math.sin(half),
  ];
  const column = {
    centre: [cx, cy, 0],
    axis: [0, 0, 1],
    left: [-back, aside, 0],
    right: [-back, -aside, 0],
  } as const;
  const turn = (side: 'left' | 'right'): number => {
    const out = side === 'left' ? 1 : -1;
    const bare = { pivot: [kx, out * ky, 0], axis: [0, 0, 1], arm: [ax, out * ay, 0] } as const;
    // The row prints the length rounded; what it was worked with holds the wheels straight (see its note).
    const rod = { ...bare, length: straightRod(bare, innerEnd(column, side, 0)) };
    if (Math.abs(rod.length - number(given, 'tie_m')) > 5.1e-8) throw new Error(`the rod is ${rod.length} m long`);
    return rodTurn(rod, innerEnd(column, side, number(given, 'column_deg') * DEGREE)) ?? Number.NaN;
  };
  const [left, right] = [turn('left'), turn('right')];
  return {
    left_deg: left / DEGREE,
    right_deg: right / DEGREE,
    ackermannPct_fromOuter: 100 * ackermannShare(left, right, number(given, 'kingpinTrack'), number(given, 'L')),
  };
};

const spaceLinkage = (given: Given): Numbers => {
  const vector = (name: string) => list(given, name) as unknown as readonly [number, number, number];
  const bare = { pivot: vector('kingpin_m'), axis: kingpinAxis('left', wheel(given)), arm: vector('arm_m') };
  const [x, y, z] = vector('inner0_m');
  const rod = { ...bare, length: straightRod(bare, [x, y, z]) };
  return { rot_deg: (rodTurn(rod, [x, y + number(given, 'dy_m'), z]) ?? Number.NaN) / DEGREE };
};

const series = (given: Given): Numbers => {
  const springs = {
    frame: number(given, 'Kt_Nm_per_deg') / DEGREE,
    frontTyre: number(given, 'kF_N_per_m'),
    rearTyre: number(given, 'kR_N_per_m'),
    frontTrack: number(given, 'tF'),
    rearTrack: number(given, 'tR'),
  };
  const stiffness = seriesStiffness(springs);
  const moved = diagonalTransfer(stiffness, number(given, 'warp_mm') / 1000, springs);
  return { Kser_Nm_per_deg: stiffness * DEGREE, front_dF_N: moved.front, rear_dF_N: moved.rear };
};

const shim = (given: Given): Numbers => ({
  Kser_Nm_per_deg:
    stiffnessFromShim(number(given, 'dFL_kg') * G, number(given, 'shim_mm') / 1000, number(given, 'tF')) * DEGREE,
});

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^steer\.warp/, warp],
  [/^steer/, steer],
  [/^ack/, ackermann],
  [/^link3d/, spaceLinkage],
  [/^link/, planeLinkage],
  [/^warp\.series/, series],
  [/^warp\.shim/, shim],
];

describe('front-end: steered wheels, linkage, twist', () => {
  runRows(rows as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.find(([pattern]) => pattern.test(id))?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
