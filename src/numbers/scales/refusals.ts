/** What cannot be on the scales, with what would be right: all of it at once. */
import { formatQuantity, type Measure } from '../../quantity/index.ts';
import type { InputProblem } from '../subject.ts';
import { type Input, RAISED, STANCE, WHEELS } from './input.ts';

const LARGEST_RADIUS = 0.175; // m; above it a diameter was meant (largest tyre in use about 300 mm, common practice)

export const impossible = (input: Input): readonly InputProblem[] => [
  ...weighed(input),
  ...notAbove0(input),
  ...apart(input),
  ...lengths(input),
  ...raised(input),
  ...shares(input),
  ...places(input),
];

const problem = (path: string, expected: string, got: string, remedy: string): InputProblem => ({
  path,
  expected,
  got,
  remedy,
});

/** Four readings, or a total; one unit for all four. */
function weighed(input: Input): readonly InputProblem[] {
  const given = WHEELS.filter(wheel => input[wheel] !== undefined);
  if (given.length === 0 && input.total === undefined)
    return [
      problem('front left', 'four readings, or "total"', 'neither', 'weigh all four wheels at once, on the level'),
    ];
  if (given.length > 0 && given.length < 4)
    return WHEELS.filter(wheel => input[wheel] === undefined).map(wheel =>
      problem(wheel, 'a reading for each wheel', 'nothing', 'weigh all four wheels at once, or give "total" alone'),
    );
  const units = [...new Set(given.map(wheel => input[wheel]?.unit ?? ''))];
  if (units.length > 1)
    return [
      problem(
        'front left',
        'the four readings in one unit',
        units.join(' and '),
        'write all four as the scales show them; one in another unit is more often a slip',
      ),
    ];
  if (given.length === 0)
    return [...STANCE, ...RAISED, 'front target', 'left target', 'places']
      .filter(name => name !== 'places' || input.places !== undefined)
      .filter(name => (input as Readonly<Record<string, unknown>>)[name] !== undefined)
      .map(name =>
        problem(name, 'the four readings beside it', '"total" alone', 'weigh the four wheels, or leave this out'),
      );
  return [];
}

function notAbove0(input: Input): readonly InputProblem[] {
  const sizes = [...WHEELS, 'total', ...STANCE, ...RAISED, 'least mass', 'fuel density', 'bolt diameter'] as const;
  const fixings = ['bolts a block', 'largest block', 'mass a bolt'] as const;
  const none = [...sizes, ...fixings].flatMap(name => {
    const value: Measure | undefined = input[name];
    return value === undefined || value.si > 0
      ? []
      : [problem(name, 'more than 0', value.text, 'measure it again, and write it without a sign')];
  });
  const below = (['fuel to burn', 'standard uncertainty'] as const).flatMap(name => {
    const value: Measure | undefined = input[name];
    return value === undefined || value.si >= 0
      ? []
      : [problem(name, '0 or more', value.text, 'write it without a sign')];
  });
  const { confidence } = input;
  const sure =
    confidence && !(confidence.si >= 0.5 && confidence.si < 1)
      ? [problem('confidence', 'from 50 % to below 100 %', confidence.text, 'write for example "95 %"')]
      : [];
  return [...none, ...below, ...sure];
}

/** Four readings that do not add up to the one scale's. */
function apart(input: Input): readonly InputProblem[] {
  const readings = WHEELS.flatMap(wheel => input[wheel] ?? []);
  const { total } = input;
  if (readings.length < 4 || total === undefined) return [];
  const sum = readings.reduce((kg, { si }) => kg + si, 0);
  const half = readings.reduce((kg, r) => kg + (r.half ?? 0), total.half ?? 0);
  const room = Math.max(half, 0.005 * sum); // half a per cent where no limits were given (common practice)
  if (Math.abs(sum - total.si) <= room) return [];
  return [
    problem(
      'total',
      `about the sum of the four, ${formatQuantity(sum, total.unit)}`,
      total.text,
      'zero all scales, weigh again with the same driver and fuel, and correct the one that is wrong',
    ),
  ];
}

function lengths(input: Input): readonly InputProblem[] {
  const needed = input.places !== undefined;
  const some = input['front track'] ?? input['rear track'];
  const missing = needed || some !== undefined ? STANCE.filter(name => input[name] === undefined) : [];
  return missing.map(name =>
    problem(
      name,
      'wheelbase and both tracks, for the side of a place and the middle of the mass',
      'nothing',
      'measure from middle of contact to middle of contact; front and rear track differ',
    ),
  );
}

function raised(input: Input): readonly InputProblem[] {
  const given = RAISED.filter(name => input[name] !== undefined);
  if (given.length === 0) return [];
  const needs = [...RAISED, 'wheelbase'] as const;
  const missing = needs.filter(name => input[name] === undefined);
  if (missing.length > 0)
    return missing.map(name =>
      problem(name, 'all that the height needs', 'nothing', `give ${needs.map(n => `"${n}"`).join(', ')}`),
    );
  const found: InputProblem[] = [];
  for (const name of ['front wheel radius', 'rear wheel radius'] as const) {
    const radius = input[name];
    if (radius && radius.si > LARGEST_RADIUS)
      found.push(
        problem(
          name,
          'a radius: ground to the middle of the axle',
          radius.text,
          `that is more like a diameter: half of it is ${formatQuantity(radius.si / 2, radius.unit)}`,
        ),
      );
  }
  const [L, H] = [input.wheelbase?.si ?? Number.NaN, input.rise?.si ?? Number.NaN];
  if (H >= 0.8 * L)
    found.push(
      problem('rise', 'well under the wheelbase', input.rise?.text ?? '', 'raise the rear by about 300 mm, no more'),
    );
  if (H > 0 && H < 0.05 * L)
    found.push(
      problem('rise', 'at least 50 mm', input.rise?.text ?? '', 'raise the rear by about 300 mm: less shows nothing'),
    );
  const level = (input['front left']?.si ?? Number.NaN) + (input['front right']?.si ?? Number.NaN);
  const up = input['front raised'];
  if (up && up.si <= level)
    found.push(
      problem(
        'front raised',
        `more than the front scales show level, ${formatQuantity(level, up.unit)}`,
        up.text,
        'raising the rear always loads the front: exchange the two readings, or weigh again with wheels free to roll',
      ),
    );
  const total = WHEELS.reduce((kg, wheel) => kg + (input[wheel]?.si ?? Number.NaN), 0);
  if (up && up.si >= total)
    found.push(
      problem('front raised', 'less than all four scales together', up.text, 'give the two front scales only'),
    );
  return found;
}

function shares(input: Input): readonly InputProblem[] {
  return (['front target', 'left target'] as const).flatMap(name => {
    const wanted = input[name];
    return wanted === undefined || (wanted.si > 0 && wanted.si < 1)
      ? []
      : [problem(name, 'a share between 0 % and 100 %', wanted.text, 'write it with its sign, for example "43 %"')];
  });
}

function places(input: Input): readonly InputProblem[] {
  const { places: list } = input;
  if (list === undefined) return [];
  const found: InputProblem[] = [];
  if (list.length === 0) found.push(problem('places', 'one place or more', 'none', 'name where ballast can be bolted'));
  if (!input['least mass'] && !input['front target'] && !input['left target'])
    found.push(
      problem('places', 'what the ballast is for', 'nothing', 'add "least mass", "front target" or "left target"'),
    );
  const seen = new Set<string>();
  list.forEach(({ name, most }, n) => {
    if (seen.has(name))
      found.push(problem(`places/${n}/name`, 'a name of its own', `"${name}" again`, 'number the places'));
    seen.add(name);
    if (!(most.si > 0)) found.push(problem(`places/${n}/most`, 'more than 0', most.text, 'or leave the place out'));
  });
  return found;
}
