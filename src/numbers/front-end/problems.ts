/** What stands against a question about the front end, all at once. */
import { type Asked, incomplete, notAbove, outside, sideProblems, siOf, unusual, withSides, wrong } from '../asked.ts';
import type { InputProblem } from '../subject.ts';
import { bodyProblems } from '../wheel-loads/input.ts';
import { hasLinkage } from './build.ts';
import { LINKAGE, SPRINGS, WEIGHT } from './input.ts';

const DEGREE = Math.PI / 180;
const NEEDED = [
  ['caster', '12°'],
  ['kingpin inclination', '11°'],
  ['stub length', '110 mm'],
  ['tyre diameter', '260 mm'],
] as const;
const PAIRS = [
  ...NEEDED,
  ['hub forward', '0 mm'],
  ['camber', '0°'],
  ['arm back', '95 mm'],
  ['arm in', '20 mm'],
  ['arm drop', '0 mm'],
  ['tie rod', '354.7 mm'],
] as const;

export function frontEndProblems(input: Asked): readonly InputProblem[] {
  return [
    ...NEEDED.flatMap(([name, example]) => lacking(input, name, example)),
    ...PAIRS.flatMap(([name, example]) => sideProblems(input, name, example)),
    ...sizes(input),
    ...steering(input),
    ...linkage(input),
    ...weight(input),
  ];
}

const has = (input: Asked, name: string): boolean => withSides(name).some(key => input[key] !== undefined);

const lacking = (input: Asked, name: string, example: string): readonly InputProblem[] =>
  has(input, name) ? [] : [wrong(name, 'a value for each side', 'nothing', `add "${name}", for example "${example}"`)];

function sizes(input: Asked): readonly InputProblem[] {
  const turn = 'angles in degrees; beyond this it is no kart front end';
  return [
    ...notAbove(input, [
      ...withSides('stub length'),
      ...withSides('tyre diameter'),
      ...withSides('tie rod'),
      'tyre width',
      'kingpin spacing',
      'column arm',
    ]),
    ...outside(input, withSides('caster'), [-45 * DEGREE, 45 * DEGREE], '°', turn),
    ...outside(input, withSides('kingpin inclination'), [-45 * DEGREE, 45 * DEGREE], '°', turn),
    ...outside(input, withSides('camber'), [-20 * DEGREE, 20 * DEGREE], '°', turn),
    ...outside(
      input,
      ['column arm spread'],
      [0, 180 * DEGREE],
      '°',
      'the angle between both inner rod ends, seen along the column',
    ),
    ...outside(
      input,
      ['column rake'],
      [-80 * DEGREE, 80 * DEGREE],
      '°',
      'measured from the vertical, not from the floor',
    ),
    ...outside(
      input,
      withSides('stub length'),
      [0.01, 0.4],
      'mm',
      'measure from the kingpin axis to the middle of the wheel',
    ),
    ...outside(
      input,
      withSides('tyre diameter'),
      [0.15, 0.6],
      'mm',
      'give the diameter over the tread, not the radius and not the rim',
    ),
  ];
}

function steering(input: Asked): readonly InputProblem[] {
  const found = [
    ...outside(
      input,
      ['steering angle', 'column angle'],
      [-89 * DEGREE, 89 * DEGREE],
      '°',
      'give the turn of the kingpin, left above 0',
    ),
    ...incomplete(input, ['inner angle', 'outer angle'], 'an Ackermann share from turn plates'),
    ...outside(
      input,
      ['inner angle', 'outer angle'],
      [0.1 * DEGREE, 80 * DEGREE],
      '°',
      'read both from straight ahead, without a sign',
    ),
  ];
  if (input['inner angle'] && !input.wheelbase) found.push(absent('wheelbase', '1045 mm', 'the Ackermann share'));
  if (input['inner angle'] && !input['kingpin spacing'])
    found.push(absent('kingpin spacing', '800 mm', 'the Ackermann share'));
  if (hasLinkage(input) && input['steering angle'])
    found.push(
      wrong(
        'steering angle',
        'the turn of the column, where a linkage is given',
        'the turn of the kingpins',
        'take it out and add "column angle"',
      ),
    );
  if (!hasLinkage(input) && input['column angle'])
    found.push(
      wrong(
        'column angle',
        'a linkage, or "steering angle"',
        'no linkage',
        `add ${LINKAGE.map(k => `"${k}"`).join(', ')}, or give "steering angle"`,
      ),
    );
  return found;
}

const absent = (path: string, example: string, purpose: string): InputProblem =>
  wrong(path, `"${path}" too, for ${purpose}`, 'nothing', `add it, for example "${example}"`);

function linkage(input: Asked): readonly InputProblem[] {
  if (!hasLinkage(input)) {
    const loose = [...withSides('tie rod'), ...withSides('arm drop'), 'column rake', 'column arm drop'].filter(
      k => input[k] !== undefined,
    );
    return loose.map(key =>
      wrong(key, 'the rest of the linkage beside it', 'nothing', `add ${LINKAGE.map(k => `"${k}"`).join(', ')}`),
    );
  }
  return [
    ...LINKAGE.filter(name => !has(input, name)).map(name =>
      absent(name, name === 'column arm spread' ? '50°' : '20 mm', 'the linkage'),
    ),
    ...(input['kingpin spacing'] ? [] : [absent('kingpin spacing', '800 mm', 'the linkage')]),
  ];
}

function weight(input: Asked): readonly InputProblem[] {
  const found: InputProblem[] = [...incomplete(input, [...WEIGHT], 'the load of the inner rear wheel')];
  const loaded = WEIGHT.some(key => input[key] !== undefined);
  const twist = input.shim !== undefined || input['frame torque per degree'] !== undefined;
  const needs = (keys: readonly string[], purpose: string): void => {
    for (const key of keys)
      if (input[key] === undefined) found.push(absent(key, key.includes('stiffness') ? '90 N/mm' : '1080 mm', purpose));
  };
  if (loaded) needs([...SPRINGS, 'wheelbase', 'front contact track'], 'the load of the inner rear wheel');
  else if (twist) needs([...SPRINGS, 'front contact track'], 'the diagonal transfer');
  if (loaded && !twist)
    found.push(
      wrong(
        'frame torque per degree',
        'how stiff the frame is, measured',
        'nothing',
        'add it, or "shim" with "shim gain": lay 3 mm under one front scale wheel and read what it gains',
      ),
    );
  if (input['lateral acceleration'] && !loaded) found.push(absent('mass', '181 kg', 'a lateral acceleration'));
  found.push(...notAbove(input, ['lateral acceleration'], true));
  return found.length > 0 && siOf(input, 'mass', 1) > 0 ? found : [...found, ...bodyProblems(input)];
}

export const frontEndUnusual = (input: Asked): readonly string[] => [
  ...unusual(input, withSides('caster'), [0, 25 * DEGREE], '°'),
  ...unusual(input, withSides('kingpin inclination'), [0, 20 * DEGREE], '°'),
  ...unusual(input, withSides('camber'), [-5 * DEGREE, 5 * DEGREE], '°'),
  ...unusual(input, withSides('tyre diameter'), [0.24, 0.3], 'mm'),
  ...unusual(input, withSides('stub length'), [0.06, 0.2], 'mm'),
  ...unusual(input, ['steering angle', 'column angle'], [-45 * DEGREE, 45 * DEGREE], '°'),
  ...(siOf(input, 'inner angle') < siOf(input, 'outer angle')
    ? [
        'Outside the range this was checked for: the wheel on the inside turns less than the one on the outside. See that the two readings are not exchanged.',
      ]
    : []),
];
