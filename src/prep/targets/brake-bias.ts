/** Where the bearing of the balance bar stands for front and rear to lock together, from the kart's own brakes. */
import {
  barOffset,
  barShareFor,
  caliperTorque,
  idealFrontShare,
  masterPressure,
  pistonArea,
} from '../../numbers/index.ts';
import { type Dimension, formatQuantity } from '../../quantity/index.ts';
import { dimensionsFor, type Refine, without } from './model.ts';

const ENDS = ['front', 'rear'] as const;
type End = (typeof ENDS)[number];

const NEEDED = {
  'bar spacing': 'length',
  'front master bore': 'length',
  'front piston diameter': 'length',
  'front pistons a side': 'count',
  'front effective radius': 'length',
  'front tyre diameter': 'length',
  'rear master bore': 'length',
  'rear piston diameter': 'length',
  'rear pistons a side': 'count',
  'rear effective radius': 'length',
  'rear tyre diameter': 'length',
  wheelbase: 'length',
  'front share': 'ratio',
  'cg height': 'length',
  'tyre grip': 'ratio',
} as const satisfies Record<string, Dimension>;
type Dimensions = Readonly<Record<keyof typeof NEEDED, number>>;

/** Calipers of an axle where the kart file gives no "front calipers" or "rear calipers". */
const CALIPERS: Readonly<Record<End, number>> = { front: 2, rear: 1 };

export const brakeBias: Refine = (own, _item, kart) => {
  const found = dimensionsFor(kart, NEEDED);
  if ('missing' in found) return without(own, found.missing);
  const { of } = found;
  const gain = (end: End): number => force(of, end, kart.dimensions[`${end} calipers`]?.si ?? CALIPERS[end]);
  const spacing = of['bar spacing'];
  const wanted = idealFrontShare(
    { wheelbase: of.wheelbase, ahead: of['front share'] * of.wheelbase, height: of['cg height'] },
    of['tyre grip'],
  );
  const offset =
    wanted < 1 ? barOffset(spacing, barShareFor(wanted, { front: gain('front'), rear: gain('rear') })) : Number.NaN;
  if (!(Math.abs(offset) < spacing / 2))
    return without(own, ['front share', 'cg height', 'tyre grip'], 'the front would have to brake alone');
  return {
    ...own,
    target: { si: offset, unit: 'mm', text: `${formatQuantity(Math.abs(offset), 'mm', 1)} ${toward(offset)}` },
    say: [
      ...own.say,
      `Read from the middle of the bar, toward the front clevis above 0. Computed from the brakes in the kart file for a grip of ${formatQuantity(of['tyre grip'], '%')}: ${formatQuantity(wanted, '%')} of the braking on the front wheels, where both axles lock together. A start only: on a wet track the front locks first; the rear locking first spins the kart.`,
    ],
  };
};

export const toward = (offset: number): string => `toward the ${offset < 0 ? 'rear' : 'front'} clevis`;

/** Newtons at the ground for one newton on the master; pad friction is taken alike front and rear and falls out. */
const force = (of: Dimensions, end: End, calipers: number): number =>
  (calipers *
    caliperTorque({
      pressure: masterPressure(1, of[`${end} master bore`]),
      area: pistonArea(of[`${end} piston diameter`], of[`${end} pistons a side`]),
      friction: 1,
      radius: of[`${end} effective radius`],
    })) /
  (of[`${end} tyre diameter`] / 2);
