/** What to do about toe and squareness, and what to doubt. */
import { formatQuantity } from '../../quantity/index.ts';
import { type Input, ONE_EACH, RIM, SQUARE, STRING, TURNED } from './input.ts';
import type { Square, Toe } from './read.ts';
import type { RodWork } from './rods.ts';
import { stringBias, toeTotal } from './toe.ts';

/** Sides within 1 mm, diagonals within 2 mm [m]. Source: square-limits. */
const LIMITS = { sides: 0.001, diagonals: 0.002 };
/** The smallest toe worth turning a rod for: what a person can read [m over the diameter]. Common practice. */
const ENOUGH = 0.0003;

const CAUTION =
  'Caution: a tie rod that comes apart takes the steering away. Keep at least 1.5 thread diameters of every rod end in the rod (common practice; its maker may ask for more), both lock nuts tight, witness marks, and a second look; turn from lock to lock before the wheels go down.';

const mm = (si: number): string => formatQuantity(Math.abs(si), 'mm', 1);
const inOrOut = (si: number): string => (si > 0 ? 'toe-in' : si < 0 ? 'toe-out' : 'no toe');

const said = (si: number): string => (Math.abs(si) < 5e-5 ? 'no toe' : `${mm(si)} ${inOrOut(si)}`);

export function sayToe(input: Input, toe: Toe | undefined, work: RodWork | undefined): readonly string[] {
  if (toe === undefined) return [];
  const total = toeTotal(toe.total / 2, toe.diameter);
  const state = `Both wheels together stand ${said(total)} at ${formatQuantity(toe.diameter, 'mm')} diameter: ${formatQuantity(Math.abs(toe.total), '°', 2)}.`;
  return [state, ...sayWork(input, toe, work)];
}

function sayWork(input: Input, toe: Toe, work: RodWork | undefined): readonly string[] {
  const over = input['wanted toe diameter'];
  const wanted = input['wanted toe-in'];
  if (work === undefined || over === undefined || wanted === undefined) return [];
  const now = toeTotal(toe.total / 2, over.si);
  const move = wanted.si - now;
  if (Math.abs(move) < ENOUGH) return [`That is the wanted ${said(wanted.si)} at ${over.text}: leave the tie rods.`];
  const longer = work.each !== undefined && (work.each > 0 ? 'Lengthen' : 'Shorten');
  const turns = work.turns === undefined ? '' : `, ${Math.abs(work.turns).toFixed(2)} turns of the rod`;
  return [
    `Wanted is ${said(wanted.si)} at ${over.text}; there it is ${said(now)}: ${mm(move)} more ${inOrOut(move)}.`,
    longer
      ? `${longer} each tie rod by ${formatQuantity(Math.abs(work.each ?? 0), 'mm', 2)}${turns}, both by the same; then measure again.`
      : 'Turn both tie rods by the same, little by little, and measure again.',
    CAUTION,
  ];
}

export function saySquare(square: Square | undefined): readonly string[] {
  if (square === undefined) return [];
  const { yaw, offset, marks, uYaw, uOffset } = square;
  const back = yaw > 0 ? 'left' : 'right';
  const by = formatQuantity(Math.abs(marks * Math.sin(yaw)), 'mm', 1);
  const turned =
    Math.abs(yaw) <= 2 * uYaw
      ? 'The readings do not show the axle turned: what is left lies within their uncertainty.'
      : `The ${back} end of the axle stands ${by} too far back at its mark: bring the ${back} bearing carrier forward, or the other back, by the same angle.`;
  const aside =
    Math.abs(offset) <= 2 * uOffset
      ? []
      : [
          `The marks on the axle stand ${mm(offset)} to the ${offset > 0 ? 'left' : 'right'} of the kingpins' middle: that is not a turned axle; check the marks and where the axle sits.`,
        ];
  const over = Math.abs(square.sides) > LIMITS.sides || Math.abs(square.diagonals) > LIMITS.diagonals;
  return [
    turned,
    ...aside,
    `Sides differ by ${mm(square.sides)} (within 1 mm) and diagonals by ${mm(square.diagonals)} (within 2 mm, common practice): ${over ? 'outside' : 'inside'}.`,
    ...(over
      ? [
          'If the carriers are where they belong and it stays outside, have the frame looked at by a qualified person before it runs.',
        ]
      : []),
    ...(Math.abs(yaw) > 2 * uYaw
      ? [
          "Caution: carrier bolts opened are made again to the maker's torque with their retention, and chain line, brake disc and rear track are checked after.",
        ]
      : []),
  ];
}

const READINGS = ['measuring diameter', 'toe-in total', ...RIM, ...TURNED, ...ONE_EACH, ...STRING, ...SQUARE] as const;

export function alignmentNotes(input: Input, toe: Toe | undefined, square: Square | undefined): readonly string[] {
  const found: string[] = [];
  const plain = READINGS.some(key => input[key] !== undefined && input[key].half === undefined);
  if (plain)
    found.push(
      'Readings without limits were taken as ± 0.5 mm (common practice): write "1000 mm ± 1 mm" to say otherwise.',
    );
  if (toe !== undefined && toe.runOut === undefined)
    found.push('Rim run-out is still in it: roll on by half a turn and read at the same marks again.');
  if (toe !== undefined && Math.abs(toe.total) <= 2 * toe.u)
    found.push(
      'The uncertainty is larger than the toe itself: not even in or out is sure. Read more finely, or over a larger diameter.',
    );
  if (toe?.left === undefined && toe !== undefined)
    found.push('This way of reading cannot tell the left wheel from the right: centre the steering first.');
  if (input['string off parallel'] && input['string span']) {
    const bias = formatQuantity(stringBias(input['string off parallel'].si, input['string span'].si), '°', 3);
    found.push(
      `A string out of parallel puts up to ${bias} on its wheel; two strings truly parallel to each other leave the total right and only the split wrong.`,
    );
  }
  if (toe !== undefined)
    found.push(
      'Measure with the driver or his weight in the seat: the frame moves toe. Caster, camber and ride height come before toe, and toe is due again after them.',
    );
  if (square?.doubtful)
    found.push(
      'Sides, diagonals and spacings do not belong to one figure within their limits: measure again before moving anything.',
    );
  return found;
}
