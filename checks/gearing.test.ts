/**
 * Gearing: ratios, speeds, drops and the nearest sprockets by arithmetic outside the project; miles from rpm as printed at
 * a page citing P. Van Valkenburgh; shift points and top speed solved with numpy and scipy on an invented torque curve.
 */
import { describe } from 'vitest';
import {
  overallRatios,
  pairsFor,
  rotationAfter,
  shiftPoints,
  speedInGear,
  topSpeed,
  tractiveForce,
  wantedRatio,
} from '../src/numbers/index.ts';
import rows from './rows/gearing.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const RPM = Math.PI / 30;

function speeds(given: Given): Numbers {
  const overall = overallRatios(
    { primary: number(given, 'primary'), gears: list(given, 'gears') },
    { front: number(given, 'zf'), rear: number(given, 'zr') },
  );
  const at = { rotation: number(given, 'rpm') * RPM, circumference: number(given, 'circ_m') };
  return { overall, kmh: overall.map(ratio => speedInGear({ ...at, ratio }) * 3.6) };
}

function drops(given: Given): Numbers {
  const gears = list(given, 'gears');
  const rpm = number(given, 'rpm_shift');
  const after = gears.slice(1).map((into, n) => rotationAfter(rpm, gears[n] ?? Number.NaN, into));
  return { rpm_after: after, drop_pct: after.map(left => 100 * (1 - left / rpm)) };
}

function nearest(given: Given): Numbers {
  const wanted = {
    rotation: number(given, 'target_rpm') * RPM,
    speed: number(given, 'target_kmh') / 3.6,
    inside: number(given, 'primary') * number(given, 'top'),
    circumference: number(given, 'circ_m'),
  };
  const [best] = pairsFor(wanted, { front: list(given, 'zf_choices'), rear: list(given, 'zr_choices') });
  return {
    need_ratio: wantedRatio(wanted),
    best_zf: best?.front ?? Number.NaN,
    best_zr: best?.rear ?? Number.NaN,
    best_ratio: best?.ratio ?? Number.NaN,
    rpm_at_target: (best?.rotation ?? Number.NaN) / RPM,
  };
}

/** Miles an hour for one turn a minute of a wheel of one foot radius. */
const miles = (): Numbers => ({
  k: speedInGear({ rotation: RPM, ratio: 1, circumference: 2 * Math.PI * 0.3048 }) / 0.44704,
});

const curve = (given: Given) => {
  const torque = list(given, 'torque_Nm');
  return list(given, 'rpm').map((rpm, n) => ({ rotation: rpm * RPM, torque: torque[n] ?? Number.NaN }));
};

const shifts = (given: Given): Numbers => ({
  shift_rpm: shiftPoints(curve(given), {
    gears: list(given, 'gears'),
    limiter: number(given, 'limiter') * RPM,
  }).map(point => (point.kind === 'not known' ? Number.NaN : point.rotation / RPM)),
});

const force = (given: Given): Numbers => ({
  F_N: tractiveForce({
    torque: number(given, 'torque_Nm'),
    ratio: number(given, 'ratio'),
    efficiency: number(given, 'efficiency'),
    circumference: 2 * Math.PI * number(given, 'radius_m'),
  }),
});

function top(given: Given): Numbers {
  const line = {
    primary: number(given, 'primary'),
    gears: list(given, 'gears'),
    front: number(given, 'zf'),
    rear: number(given, 'zr'),
    circumference: number(given, 'circ_m'),
    efficiency: number(given, 'efficiency'),
  };
  const against = {
    density: number(given, 'rho'),
    dragArea: number(given, 'cda_m2'),
    rolling: number(given, 'crr'),
    mass: number(given, 'mass_kg'),
  };
  const found = topSpeed(curve(given), line, against, number(given, 'limiter') * RPM);
  return { top_kmh: found.kind === 'not reached' ? Number.NaN : found.speed * 3.6 };
}

const ANSWERS: readonly (readonly [RegExp, (given: Given) => Numbers])[] = [
  [/^gear\.c\d/, speeds],
  [/^gear\.drop/, drops],
  [/^gear\.choose/, nearest],
  [/^gear\.rpm/, miles],
  [/^gear\.shift/, shifts],
  [/^gear\.force/, force],
  [/^gear\.top/, top],
];

describe('gearing: ratios, speeds, sprockets, shift points, push', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    const answer = ANSWERS.filter(([pattern]) => pattern.test(id)).at(0)?.[1];
    if (answer === undefined) throw new Error(`no answer for ${id}: add its family to ANSWERS`);
    return answer(given);
  });
});
