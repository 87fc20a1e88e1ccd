/** The question about toe and squareness, in trade words, and what stands against it. Toe-in above 0 everywhere. */
import { z } from 'zod';
import { formatQuantity } from '../../quantity/index.ts';
import { type Asked, incomplete, notAbove, outside, siOf, wrong } from '../asked.ts';
import { type InputProblem, quantity, uncertain } from '../subject.ts';

const size = (meaning: string, example: string) => uncertain('length', meaning, example).optional();

export const schema = z.strictObject({
  'measuring diameter': size('over which toe was read: rim edge, tyre middle, or between sight lines', '255 mm'),
  'front apart': size('rims apart in front, at axle height', '1000 mm'),
  'rear apart': size('the same marks of both rims, behind', '1002 mm'),
  'front apart after half a turn': size('in front, wheels rolled on by half a turn', '1000.4 mm'),
  'rear apart after half a turn': size('behind, wheels rolled on by half a turn', '1002.2 mm'),
  'toe-in total': size('both wheels together; toe-out is below 0, or give "toe-out total"', '-2 mm'),
  'toe-in left': size('the left wheel alone, as by laser and plate', '-1 mm'),
  'toe-in right': size('the right wheel alone', '-1 mm'),
  'toe-out total': size('both wheels together, toe-out above 0', '2 mm'),
  'toe-out left': size('the left wheel alone, as toe-out', '1 mm'),
  'toe-out right': size('the right wheel alone, as toe-out', '1 mm'),
  'string front gap left': size('left string in to the front edge of the rim', '50 mm'),
  'string rear gap left': size('left string in to the rear edge of the rim', '49 mm'),
  'string front gap right': size('right string in to the front edge of the rim', '50 mm'),
  'string rear gap right': size('right string in to the rear edge of the rim', '49 mm'),
  'string off parallel': size('how far each string may be out of parallel over its span', '1 mm'),
  'string span': size('length of string over which it may be out', '1500 mm'),
  'wanted toe-in': quantity('length', 'both wheels together, toe-in above 0, toe-out below', '-2 mm').optional(),
  'wanted toe-out': quantity('length', 'both wheels together, toe-out above 0, toe-in below', '2 mm').optional(),
  'wanted toe diameter': quantity('length', 'over which the wanted toe is meant', '260 mm').optional(),
  'steering arm': quantity('length', 'kingpin axis square to the line of the tie rod', '95 mm').optional(),
  'steering arms': z.enum(['behind', 'ahead']).optional(),
  'rod thread pitch': quantity('length', 'pitch of the thread in the tie rod', '1.25 mm').optional(),
  'rod threads': z.enum(['left and right', 'one']).optional(),
  'side left': size('left kingpin to left mark on the axle', '1050 mm'),
  'side right': size('right kingpin to right mark on the axle', '1050 mm'),
  'diagonal from left': size('left kingpin to right mark on the axle', '1379 mm'),
  'diagonal from right': size('right kingpin to left mark on the axle', '1379 mm'),
  'kingpin spacing': size('between the kingpin marks', '800 mm'),
  'axle mark spacing': size('between the marks on the axle', '1000 mm'),
});
export type Input = z.output<typeof schema>;

export const RIM = ['front apart', 'rear apart'] as const;
export const TURNED = ['front apart after half a turn', 'rear apart after half a turn'] as const;
export const ONE_EACH = ['toe-in left', 'toe-in right'] as const;
export const STRING = [
  'string front gap left',
  'string rear gap left',
  'string front gap right',
  'string rear gap right',
] as const;
export const SQUARE = [
  'side left',
  'side right',
  'diagonal from left',
  'diagonal from right',
  'kingpin spacing',
  'axle mark spacing',
] as const;

const METHODS = [
  ['rims', RIM],
  ['total', ['toe-in total']],
  ['each', ONE_EACH],
  ['string', STRING],
] as const;
export type Method = (typeof METHODS)[number][0];

/** What may be said as toe-out: the name it has as toe-in. */
const AS_TOE_OUT = {
  'toe-out total': 'toe-in total',
  'toe-out left': 'toe-in left',
  'toe-out right': 'toe-in right',
  'wanted toe-out': 'wanted toe-in',
} as const;
const OUTS = Object.keys(AS_TOE_OUT) as readonly (keyof typeof AS_TOE_OUT)[];

/** The question with every toe said as toe-in. */
export function asToeIn(input: Input): Input {
  const found: { -readonly [key in keyof Input]: Input[key] } = { ...input };
  for (const out of OUTS) {
    const measure = input[out];
    if (measure === undefined) continue;
    delete found[out];
    found[AS_TOE_OUT[out]] = { ...measure, si: -measure.si, text: formatQuantity(-measure.si, measure.unit) };
  }
  return found;
}

/** The same toe said both ways. */
export const bothWays = (input: Asked): readonly InputProblem[] =>
  OUTS.filter(out => input[out] !== undefined && input[AS_TOE_OUT[out]] !== undefined).map(out =>
    wrong(out, 'toe said once, as toe-in or as toe-out', 'both', `take out "${out}" or "${AS_TOE_OUT[out]}"`),
  );

const given = (input: Asked, keys: readonly string[]): boolean => keys.some(key => input[key] !== undefined);

/** How toe was read; undefined when it was not. */
export const methodOf = (input: Asked): Method | undefined => METHODS.find(([, keys]) => given(input, keys))?.[0];

export function alignmentProblems(input: Asked): readonly InputProblem[] {
  const methods = METHODS.filter(([, keys]) => given(input, keys));
  const toe = methods.length > 0;
  const found: InputProblem[] = [
    ...methods.flatMap(([, keys]) => incomplete(input, keys, 'toe')),
    ...incomplete(input, SQUARE, 'squareness: diagonals alone confuse a turned axle with one that stands to a side'),
    ...incomplete(input, TURNED, 'readings after half a turn'),
    ...incomplete(input, ['wanted toe-in', 'wanted toe diameter'], 'a wanted toe, which says nothing without it'),
    ...incomplete(input, ['string off parallel', 'string span'], 'the bias of a string'),
    ...notAbove(input, [
      'measuring diameter',
      'wanted toe diameter',
      'steering arm',
      'rod thread pitch',
      ...RIM,
      ...TURNED,
    ]),
    ...notAbove(input, [...SQUARE, 'string span']),
    ...notAbove(input, [...STRING, 'string off parallel'], true),
    ...outside(
      input,
      ['measuring diameter', 'wanted toe diameter'],
      [0.1, 2],
      'mm',
      'give the diameter, not the radius, at which toe is read',
    ),
    ...outside(input, ['steering arm'], [0.03, 0.3], 'mm', 'measure from the kingpin axis square to the tie rod'),
    ...outside(input, ['rod thread pitch'], [0.0003, 0.004], 'mm', 'an M8 tie rod has 1.25 mm'),
  ];
  if (!toe && !given(input, SQUARE))
    found.push(
      wrong(
        'toe-in total',
        'a reading of toe, or the lengths for squareness',
        'neither',
        'add "toe-in total" or "front apart" and "rear apart" with "measuring diameter", or "side left" and the rest',
      ),
    );
  if (methods.length > 1)
    found.push(
      wrong(
        methods[1]?.[1][0] ?? '',
        'toe read in one way',
        `${methods.length} ways`,
        'ask once for each way and compare',
      ),
    );
  if (toe && input['measuring diameter'] === undefined)
    found.push(
      wrong(
        'measuring diameter',
        'the diameter at which toe was read',
        'nothing',
        'add it: the same millimetres are another angle at another diameter',
      ),
    );
  if (given(input, TURNED) && !given(input, RIM))
    found.push(
      wrong('front apart', 'the readings before half a turn', 'nothing', 'add "front apart" and "rear apart"'),
    );
  if (input['wanted toe-in'] !== undefined && !toe)
    found.push(wrong('toe-in total', 'toe as it is, beside the wanted toe', 'nothing', 'add a reading of toe'));
  if (input['steering arm'] !== undefined && input['steering arms'] === undefined)
    found.push(
      wrong(
        'steering arms',
        '"behind" or "ahead" of the kingpin',
        'nothing',
        'look which way a longer rod turns the wheel, and add it',
      ),
    );
  if (input['rod thread pitch'] !== undefined && input['rod threads'] === undefined)
    found.push(
      wrong(
        'rod threads',
        '"left and right" where the rod turns between its ends, "one" where one end is taken off',
        'nothing',
        'add it',
      ),
    );
  return found.length > 0 ? found : tooMuch(input);
}

/** Beyond this a reading is no toe but a slip [rad]: 5° of one wheel. */
const MOST = (5 * Math.PI) / 180;

function tooMuch(input: Asked): readonly InputProblem[] {
  const diameter = siOf(input, 'measuring diameter');
  const most = diameter * Math.sin(MOST);
  const over = (path: string, reading: number, times: number): readonly InputProblem[] =>
    Math.abs(reading) > times * most
      ? [
          wrong(
            path,
            `toe of at most ${(times * most * 1000).toFixed(1)} mm over this diameter (5° a wheel)`,
            `${(reading * 1000).toFixed(1)} mm`,
            'read front and rear at the same marks and height, in the same unit, and check the diameter',
          ),
        ]
      : [];
  const wanted = siOf(input, 'wanted toe-in', 0);
  const wantedMost = 2 * siOf(input, 'wanted toe diameter', 1) * Math.sin(MOST);
  return [
    ...over('rear apart', siOf(input, 'rear apart', 0) - siOf(input, 'front apart', 0), 2),
    ...over('rear apart after half a turn', siOf(input, TURNED[1], 0) - siOf(input, TURNED[0], 0), 2),
    ...over('toe-in total', siOf(input, 'toe-in total', 0), 2),
    ...ONE_EACH.flatMap(key => over(key, siOf(input, key, 0), 1)),
    ...over(STRING[0], siOf(input, STRING[0], 0) - siOf(input, STRING[1], 0), 1),
    ...over(STRING[2], siOf(input, STRING[2], 0) - siOf(input, STRING[3], 0), 1),
    ...(Math.abs(wanted) > wantedMost
      ? [
          wrong(
            'wanted toe-in',
            `at most ${(wantedMost * 1000).toFixed(1)} mm over its diameter`,
            `${(wanted * 1000).toFixed(1)} mm`,
            'toe is a few millimetres: check unit and sign',
          ),
        ]
      : []),
  ];
}
