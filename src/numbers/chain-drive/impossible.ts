/** What no chain can be, each with what would be right. */
import { formatQuantity } from '../../quantity/index.ts';
import { incomplete, notAbove, outside, wrong } from '../asked.ts';
import type { InputProblem } from '../subject.ts';
import { oddPair, oddTeeth } from '../teeth.ts';
import type { Input } from './input.ts';
import { pitchCircle } from './length.ts';
import { CHAIN_SIZES, CHAINS } from './sizes.ts';

const RPM = Math.PI / 30;

export const impossible = (input: Input): readonly InputProblem[] => {
  const teeth = [
    ...oddTeeth('front sprocket', input['front sprocket']),
    ...oddTeeth('rear sprocket', input['rear sprocket']),
  ];
  const pair = teeth.length === 0 ? oddPair(input['front sprocket'], input['rear sprocket']) : [];
  const known = teeth.length + pair.length === 0;
  return [
    ...teeth,
    ...pair,
    ...(known ? apart(input) : []),
    ...slot(input),
    ...length(input),
    ...links(input),
    ...notAbove(input, ['slack', 'out of line', 'room away', 'room toward'], true),
    ...outside(input, ['slack'], [0, 0.1], 'mm', 'write the whole movement up and down at mid-span'),
    ...outside(
      input,
      ['out of line'],
      [0, 0.05],
      'mm',
      'lay a straight-edge on the larger sprocket and measure the gap at the other',
    ),
    ...incomplete(input, ['power', 'front sprocket speed'], 'the pull'),
    ...outside(input, ['power'], [100, 60000], 'kW', 'write the power that goes through the chain, such as "34 kW"'),
    ...outside(
      input,
      ['front sprocket speed'],
      [50 * RPM, 20000 * RPM],
      'rpm',
      'write the speed of the sprocket itself',
    ),
    ...outside(input, ['chain mass'], [0.05, 5], 'kg', 'weigh the chain and count its links'),
    ...(input['chain mass'] && !input['links now']
      ? [wrong('links now', 'the links that were weighed', 'nothing', 'count them, for example "110"')]
      : []),
    ...(input['chain mass'] && !input.power
      ? [wrong('power', 'a power beside the mass of the chain', 'nothing', 'add it, for example "34 kW"')]
      : []),
  ];
};

/** Sprockets that would touch, or stand further apart than on any kart. */
function apart(input: Input): readonly InputProblem[] {
  const centre = input['centre distance'];
  if (!centre) return [];
  const { pitch } = CHAIN_SIZES[input.chain];
  const round = pitchCircle(pitch, input['front sprocket'].si) + pitchCircle(pitch, input['rear sprocket'].si);
  const least = round / 2 + pitch; // half a pitch of tooth and plate on either side
  return centre.si > least && centre.si <= 1.5
    ? []
    : [
        wrong(
          'centre distance',
          `more than ${formatQuantity(least, 'mm', 0)}, where these sprockets of ${input.chain} chain would touch, and at most 1500 mm`,
          centre.text,
          'measure from middle to middle; look at the teeth and at which chain it is',
        ),
      ];
}

function slot(input: Input): readonly InputProblem[] {
  const found = incomplete(input, ['room away', 'room toward'], 'what the slots allow');
  const room = input['room away'] ?? input['room toward'];
  return room && !input['centre distance']
    ? [
        ...found,
        wrong('centre distance', 'the distance now, beside the room', 'nothing', 'add it, for example "230 mm"'),
      ]
    : found;
}

/** Beyond these a chain is not worn or new but another one, or wrongly counted. */
const STRETCH = { least: -0.005, most: 0.05 } as const;

function length(input: Input): readonly InputProblem[] {
  const found = [...incomplete(input, ['measured length', 'pitches measured'], 'wear')];
  const { 'measured length': read, 'pitches measured': count } = input;
  if (!read || !count) return found;
  if (!Number.isInteger(count.si) || count.si < 5 || count.si > 200)
    return [
      ...found,
      wrong('pitches measured', 'a whole number from 5 to 200', count.text, 'count pin to pin: 20 pitches are 21 pins'),
    ];
  const { pitch } = CHAIN_SIZES[input.chain];
  const stretch = read.si / (count.si * pitch) - 1;
  if ((read.half ?? 0) > 0.01 * read.si)
    return [
      ...found,
      wrong('measured length', 'a length known within 1 %', read.text, 'read again with a calliper over more pitches'),
    ];
  if (stretch >= STRETCH.least && stretch <= STRETCH.most) return found;
  const one = read.si / count.si;
  const other = CHAINS.find(name => {
    const over = one / CHAIN_SIZES[name].pitch - 1;
    return over >= STRETCH.least && over <= STRETCH.most;
  });
  return [
    ...found,
    wrong(
      'measured length',
      `about ${formatQuantity(count.si * pitch, 'mm', 1)} over ${count.text} pitches of ${input.chain} chain`,
      read.text,
      `that is ${formatQuantity(one, 'mm', 2)} a pitch${other === undefined ? '' : `, as of ${other} chain`}: look at the chain, count the pitches, measure again`,
    ),
  ];
}

function links(input: Input): readonly InputProblem[] {
  const now = input['links now'];
  if (!now || (Number.isInteger(now.si) && now.si >= 20 && now.si <= 1000)) return [];
  return [
    wrong(
      'links now',
      'a whole number from 20 to 1000',
      now.text,
      'count every link, inner, outer and the joining link',
    ),
  ];
}
