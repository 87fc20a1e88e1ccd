/** What no gearing can be, each with what would be right. */
import type { Measure } from '../../quantity/index.ts';
import { type Asked, incomplete, outside, wrong } from '../asked.ts';
import type { InputProblem } from '../subject.ts';
import { oddPair, oddTeeth } from '../teeth.ts';
import { DRAG, type Input, OWNED } from './input.ts';

const RPM = Math.PI / 30;
const KMH = 1 / 3.6;
const TURNING = ['engine speed', 'logged engine speed', 'wanted engine speed', 'limiter'] as const;

export const impossible = (input: Input): readonly InputProblem[] => [
  ...gearbox(input),
  ...sprockets(input),
  ...tyre(input),
  ...asked(input),
  ...curve(input),
  ...sizes(input),
];

/** The question with its lists as plain words, for what only asks whether something was given. */
const flat = (input: Input): Asked =>
  Object.fromEntries(
    Object.entries(input).map(([key, value]) => [key, Array.isArray(value) ? 'several' : (value as Asked[string])]),
  );

function gearbox({ drive, 'primary ratio': primary, gears }: Input): readonly InputProblem[] {
  if (drive === 'direct')
    return (['primary ratio', 'gears'] as const).flatMap(key =>
      (key === 'gears' ? gears : primary)
        ? [wrong(key, 'none in direct drive', 'one', `take "${key}" out, or write "gearbox" as the drive`)]
        : [],
    );
  const found: InputProblem[] = [];
  if (primary === undefined)
    found.push(wrong('primary ratio', 'the primary ratio of the gearbox', 'nothing', 'add it, for example "75/19"'));
  else if (!(primary.si >= 1 && primary.si <= 8))
    found.push(wrong('primary ratio', '1 to 8, driven over driving teeth', primary.text, turned(primary)));
  if (gears === undefined)
    return [
      ...found,
      wrong('gears', 'the gears, first gear first', 'nothing', 'add them, for example "33/13 29/16 27/18"'),
    ];
  const got = gears.map(gear => gear.text).join(' ');
  const odd = gears.find(gear => !(gear.si >= 0.6 && gear.si <= 5));
  const [first] = gears;
  if (gears.length > 10) found.push(wrong('gears', 'at most 10 gears', `${gears.length}`, 'write each gear once'));
  else if (first && gears.length > 1 && !(first.si >= 1))
    found.push(wrong('gears', 'a first gear of 1 or more', first.text, turned(first)));
  else if (odd) found.push(wrong('gears', 'gears between 0.6 and 5', odd.text, turned(odd)));
  else if (gears.some((gear, n) => n > 0 && !(gear.si < (gears[n - 1]?.si ?? 0))))
    found.push(
      wrong(
        'gears',
        'each gear with a smaller ratio than the one before',
        got,
        'begin with first gear, and write each once',
      ),
    );
  return found;
}

/** A ratio below what it can be: written the other way round, most likely. */
function turned({ si, text }: Measure): string {
  const [driving, driven] = text.split('/').map(part => part.trim());
  if (!(si < 1 && si > 0)) return 'write driven over driving teeth, such as "75/19"';
  return driven === undefined
    ? `is it upside down? Driven over driving would be ${(1 / si).toFixed(2)}`
    : `is it upside down? Driven over driving would be "${driven}/${driving}"`;
}

function sprockets(input: Input): readonly InputProblem[] {
  const { 'front sprocket': front, 'rear sprocket': rear } = input;
  const single = [...oddTeeth('front sprocket', front), ...oddTeeth('rear sprocket', rear)];
  const owned = OWNED.flatMap(key => (input[key] ?? []).flatMap(teeth => oddTeeth(key, teeth)).slice(0, 1));
  return [...single, ...(single.length === 0 ? oddPair(front, rear) : []), ...owned];
}

function tyre(input: Input): readonly InputProblem[] {
  const round = input['rolling circumference'];
  const group = ['logged engine speed', 'logged speed', ...(input.drive === 'gearbox' ? ['logged gear'] : [])];
  const log = incomplete(flat(input), group, 'a log');
  const gears = [...gearNumber(input, 'logged gear'), ...gearNumber(input, 'wanted gear')];
  if (round === undefined)
    return input['logged speed'] || log.length > 0
      ? [...log, ...gears]
      : [
          wrong(
            'rolling circumference',
            'how far a rear tyre rolls in one turn, or a log',
            'nothing',
            'roll the kart one turn with the driver in and measure, for example "860 mm ± 5 mm"',
          ),
        ];
  const { si, half = 0, text } = round;
  const diameter =
    si > 0.15 && si < 0.4 ? `is this the diameter? Once round is about ${(si * Math.PI * 1000).toFixed(0)} mm; ` : '';
  const can = si >= 0.5 && si <= 1.5;
  return [
    ...log,
    ...gears,
    ...(can && half < 0.2 * si
      ? []
      : [
          wrong(
            'rolling circumference',
            'a way once round of 500 mm to 1500 mm, known within a fifth',
            text,
            `${diameter}roll the kart one turn and measure on the ground`,
          ),
        ]),
  ];
}

function gearNumber(input: Input, key: 'logged gear' | 'wanted gear'): readonly InputProblem[] {
  const [gear, count] = [input[key], input.gears?.length];
  if (gear === undefined) return [];
  if (input.drive === 'direct') return [wrong(key, 'none in direct drive', gear.text, `take "${key}" out`)];
  if (count === undefined || (Number.isInteger(gear.si) && gear.si >= 1 && gear.si <= count)) return [];
  return [wrong(key, `a gear from 1 to ${count}`, gear.text, 'write the number of the gear, such as "6"')];
}

function asked(input: Input): readonly InputProblem[] {
  const group = ['wanted engine speed', 'wanted speed', ...(input.drive === 'gearbox' ? ['wanted gear'] : [])];
  const { 'wanted engine speed': wanted, limiter } = input;
  const owned = OWNED.some(key => input[key] !== undefined);
  return [
    ...incomplete(flat(input), owned ? [...group, ...OWNED] : group, 'a choice of sprockets').filter(
      ({ path }) => !OWNED.some(key => key === path) || owned,
    ),
    ...(wanted && limiter && wanted.si > limiter.si
      ? [
          wrong(
            'wanted engine speed',
            `at most the limiter, ${limiter.text}`,
            wanted.text,
            'correct the one that is wrong',
          ),
        ]
      : []),
  ];
}

function curve(input: Input): readonly InputProblem[] {
  const { 'torque curve': points, limiter } = input;
  if (points === undefined)
    return incomplete(flat(input), DRAG, 'drag').concat(
      DRAG.every(key => input[key] === undefined)
        ? []
        : [wrong('torque curve', 'a torque curve beside drag', 'nothing', 'add at least two points, or take drag out')],
    );
  const found = [...incomplete(flat(input), DRAG, 'drag')];
  if (limiter === undefined)
    found.push(
      wrong(
        'limiter',
        'the highest engine speed, for where to shift',
        'nothing',
        'add the maker\'s, for example "13500 rpm"',
      ),
    );
  if (points.length < 2)
    found.push(wrong('torque curve', 'at least two points', String(points.length), 'add points, slowest first'));
  points.forEach(({ at, torque }, n) => {
    const before = points[n - 1];
    if (!(at.si >= 100 * RPM && at.si <= 30000 * RPM))
      found.push(wrong(`torque curve/${n}/at`, '100 rpm to 30000 rpm', at.text, 'write it in rpm'));
    else if (before && !(at.si > before.at.si))
      found.push(
        wrong(
          `torque curve/${n}/at`,
          `more than ${before.at.text}, the point before`,
          at.text,
          'put the points in order, each once',
        ),
      );
    if (!(torque.si >= 0 && torque.si <= 100))
      found.push(
        wrong(
          `torque curve/${n}/torque`,
          '0 to 100 N·m at the crankshaft',
          torque.text,
          'take it at the crankshaft, not at the wheel',
        ),
      );
  });
  return found;
}

function sizes(input: Input): readonly InputProblem[] {
  const of = flat(input);
  return [
    ...outside(of, TURNING, [500 * RPM, 30000 * RPM], 'rpm', 'write engine speed in rpm, such as "13000 rpm"'),
    ...outside(of, ['logged speed', 'wanted speed'], [10 * KMH, 300 * KMH], 'km/h', 'write it with km/h or mph'),
    ...outside(of, ['driveline efficiency'], [0.5, 1], '%', 'write ground over crankshaft, such as "92 %"'),
    ...outside(of, ['mass'], [50, 500], 'kg', 'write kart and driver together'),
    ...outside(of, ['drag area'], [0.1, 2], 'm²', 'write coefficient × frontal area, such as "0.55 m²"'),
    ...outside(of, ['rolling resistance'], [0.002, 0.15], '%', 'write rolling force over weight, such as "2.5 %"'),
    ...outside(of, ['air density'], [0.6, 1.6], 'kg/m³', 'write the air of the day, such as "1.2 kg/m³"'),
  ];
}
