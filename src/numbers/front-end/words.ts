/** What the front end does, and what to doubt, in sentences. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Asked } from '../asked.ts';
import { SIDES } from './build.ts';
import { frontEndUnusual } from './problems.ts';
import { uneven, type Worked } from './work.ts';

const CAUTION =
  'Caution: caster, camber and toe are steering work. Kart on a stand that cannot roll; kingpin and tie rods made again with their retention, second look, and the steering turned from lock to lock before the wheels go down. Toe is due again after caster, camber or front height.';

const mm = (si: number): string => formatQuantity(Math.abs(si), 'mm', 1);

export const sayFrontEnd = (input: Asked, worked: Worked): readonly string[] => [
  ...corners(worked),
  ...rods(worked),
  ...plates(input, worked),
  ...loads(worked),
  CAUTION,
];

function corners({ at, front }: Worked): readonly string[] {
  if (at === undefined) return ['Add "steering angle" to see camber, contact height and warp.'];
  const what = front.linkage ? 'the column turned' : 'both kingpins turned';
  const heights = SIDES.map(side => {
    const rise = side === 'left' ? at.riseLeft : at.riseRight;
    const camber = formatQuantity(side === 'left' ? at.camberLeft : at.camberRight, '°', 1);
    return `the ${side} wheel ${rise < 0 ? 'pushes its corner up' : 'lets its corner down'} by ${mm(rise)} and stands at ${camber} camber`;
  });
  return [
    `With ${what} ${formatQuantity(Math.abs(at.steer), '°', 1)} to the ${at.steer < 0 ? 'right' : 'left'}, ${heights.join('; ')}.`,
    `The front is warped by ${mm(at.warp)}: the ${at.warp < 0 ? 'right' : 'left'} front gains and the ${at.warp < 0 ? 'right' : 'left'} rear loses load.`,
  ];
}

function rods({ sides }: Worked): readonly string[] {
  return SIDES.flatMap(side => {
    const per = sides[side].toePerLength;
    if (per === undefined) return [];
    return [
      `A ${side} tie rod longer by 1 mm gives ${formatQuantity(Math.abs(per) / 1000, '°', 2)} more ${per > 0 ? 'toe-in' : 'toe-out'} on that wheel.`,
    ];
  });
}

function plates(input: Asked, { plates: read }: Worked): readonly string[] {
  const outer = input['outer angle'];
  if (read === undefined || typeof outer !== 'object') return [];
  if (!Number.isFinite(read.share))
    return ['No inner angle turns about the same point as that outer angle: check spacing and wheelbase.'];
  return [
    `For ${outer.text} on the outside, ${formatQuantity(read.ideal, '°', 1)} on the inside would be without scrub; yours has ${formatQuantity(read.share, '%', 0)} of that difference, reckoned from the outer wheel.`,
  ];
}

function loads({ at, transfer, liftSteer, lateral, front }: Worked): readonly string[] {
  const found: string[] = [];
  if (transfer && at)
    found.push(
      `That moves ${formatQuantity(Math.abs(transfer.front), 'N', 0)} across the front and ${formatQuantity(Math.abs(transfer.rear), 'N', 0)} across the rear axle.`,
    );
  if (front.weight === undefined) return found;
  const turning = lateral > 0 ? `turning at ${formatQuantity(lateral, 'g0', 2)}` : 'standing';
  if (typeof liftSteer === 'number')
    found.push(
      liftSteer < 1e-5
        ? `While ${turning}, the inner rear wheel is up without any steering.`
        : `While ${turning}, the inner rear wheel lifts from ${formatQuantity(liftSteer, '°', 1)} of steering.`,
    );
  else if (liftSteer === 'stays down')
    found.push(`While ${turning}, steering up to 45° does not lift the inner rear wheel.`);
  if (at && Number.isFinite(at.liftAt))
    found.push(`At this steering it lifts from ${formatQuantity(at.liftAt, 'g0', 2)} of lateral acceleration.`);
  return found;
}

const PAIRS = [
  'caster',
  'kingpin inclination',
  'stub length',
  'hub forward',
  'tyre diameter',
  'camber',
  'arm back',
  'arm in',
];

export function frontEndNotes(input: Asked, { at, series, front }: Worked): readonly string[] {
  const found: string[] = [...frontEndUnusual(input)];
  const apart = uneven(input, PAIRS);
  if (apart.length > 0)
    found.push(
      `Left and right differ in ${apart.join(', ')}: the kart lifts and pulls otherwise in left and right turns.`,
    );
  if (at && !input['tyre width'])
    found.push(
      'The wheel is taken as a thin disc: a flat tyre that stands on its edge adds to the height. Add "tyre width" for the most it can be.',
    );
  if (at && !front.linkage) found.push('Both kingpins were turned alike: add the linkage to see what the column does.');
  if (series !== undefined) {
    found.push(
      'Frame stiffness differs from kart to kart and with seat and struts: measure it on this one, up and down.',
    );
    found.push('The loads hold while all four wheels touch; beyond that ask wheel-loads.');
  }
  if (at && at.innerRear <= 0)
    found.push('With the inner rear wheel off the road the other loads are no longer these: ask wheel-loads.');
  return found;
}
