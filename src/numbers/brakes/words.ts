/** What to do, and what to doubt, about the brakes. */
import { formatQuantity } from '../../quantity/index.ts';
import { small } from '../figure.ts';
import { weightOf } from './balance.ts';
import { force, hours, metres, share, slowing, tenths } from './figures.ts';
import { brakingDistance, wearOf } from './stop.ts';
import type { Worked } from './work.ts';

const CAUTION =
  "Caution: nothing else stops the kart. After any change bed pads and discs in, press the pedal firm for half a minute, then try at walking pace before any speed; lock ring and clips made, second look. The makers' manuals and the class rules win, and in doubt a qualified person looks. Discs stay hot long after a run: gloves.";

export const say = (worked: Worked): readonly string[] => [
  ...order(worked),
  ...bias(worked),
  ...stops(worked),
  ...wear(worked),
  CAUTION,
];

function order({ first, locks, asked, reached, pedalAtLock, input, ends }: Worked): readonly string[] {
  const axle = first === 'rear' ? 'the rear axle, both wheels at once' : 'the front wheels';
  const other = first === 'rear' ? 'front' : 'rear';
  const then = ends.front ? `, the other end at ${slowing(locks[other]).text}` : '';
  return [
    `First to lock: ${axle}, at ${slowing(locks[first]).text}${then}; a foot of ${force(pedalAtLock).text} does it.`,
    asked > reached
      ? `${input['pedal force'].text} on the pedal is more than the tyres take: it locks ${axle}. Count on ${slowing(reached).text}.`
      : `${input['pedal force'].text} on the pedal slows the kart by ${slowing(reached).text}.`,
  ];
}

/** Nearer than this to the ideal the bar is left alone. */
const LEAST_MOVE = 0.0005; // m

function bias({ bar, share: now, ideal }: Worked): readonly string[] {
  if (!bar) return [];
  const { move } = bar;
  if (Math.abs(move) < LEAST_MOVE) return [`The bar stands where both axles are used alike: ${share(now).text} front.`];
  const wanted = `Front share is ${share(now).text}; ${share(ideal).text} would use both axles alike at this grip.`;
  if (!withinBar(bar.wanted))
    return [`${wanted} The bar alone should not give that: look at master bores, pistons and discs, then ask again.`];
  return [
    `${wanted} That is the bearing ${tenths(Math.abs(move)).text} toward the ${move > 0 ? 'front' : 'rear'} clevis. Go there in small steps, each tried slowly: on less grip the ideal lies further back.`,
  ];
}

/** Share of the bar within which it works freely; common practice. */
const withinBar = (share: number): boolean => share > 0.3 && share < 0.7;

function stops({ stop, reached, heat, input }: Worked): readonly string[] {
  if (!stop) return [];
  const slow = slowing(reached).si;
  const hot = Object.entries(heat).map(
    ([end, up]) => `${end} ${formatQuantity(up, '°C', 0, 'temperature-difference')}`,
  );
  return [
    `From ${input.speed?.text ?? ''} it takes ${metres(brakingDistance(stop, slow)).text} of braking at that deceleration.`,
    ...(hot.length > 0 ? [`One such stop heats a disc by at most: ${hot.join(', ')}.`] : []),
  ];
}

const wear = ({ wear }: Worked): readonly string[] =>
  wear.map(each => {
    const { left, until } = wearOf(each);
    if (!(left > 0))
      return `Replace the ${each.name} now: it is at or under its limit of ${small(each.limit).text}. Do not run on it.`;
    const last = each.known ? `; at this rate about ${hours(until).text}` : '';
    return `The ${each.name} has ${small(left).text} left to its limit of ${small(each.limit).text}${last}.`;
  });

export function notes(worked: Worked): readonly string[] {
  const { input, bar, first, reached, lifts, assumed, stop } = worked;
  const { half } = input['pad friction'];
  const friction = input['pad friction'].si;
  const swapped = [input.front, input.rear].some(c => c && c['master bore'].si > c['piston diameter'].si);
  return [
    ...(assumed.length > 0 ? [`Taken from memory, because not given: ${assumed.join(', ')}.`] : []),
    half === undefined
      ? 'Pad friction changes with heat and bedding, about 0.35 to 0.5 (memory): write it with its limits.'
      : `With pad friction at its limits the pedal asks for ${slowing(scaled(worked, (friction - half) / friction)).text} to ${slowing(scaled(worked, (friction + half) / friction)).text}.`,
    ...(first === 'rear'
      ? [
          'Rear first: the kart wants to turn round, and on a gearbox kart the locked axle stalls the engine (memory). Pull the clutch.',
        ]
      : ['Front first: the kart runs straight on and does not steer until the foot eases (read second hand).']),
    ...(bar && !withinBar(bar.wanted)
      ? [
          'Outside validity: the bar would stand far off its middle and may bind; look at master bores and pistons instead (common practice).',
        ]
      : []),
    ...(reached >= lifts - 1e-9 ? ['Outside validity: the rear wheels leave the ground.'] : []),
    ...(swapped ? ['A master bore is larger than the caliper piston: are the two exchanged?'] : []),
    ...(input['pedal force'].si > 1000
      ? ['Outside validity: more than 1000 N is more than a seated foot gives (common practice).']
      : []),
    ...(stop
      ? [
          'Distance without air drag, at a steady deceleration; heat of one stop with none carried away, so more than one stop adds up.',
        ]
      : []),
  ];
}

/** Deceleration [g] with the brakes' part times `by`. */
const scaled = ({ asked, input }: Worked, by: number): number => {
  const drag = (input['engine drag']?.si ?? 0) / weightOf(input.mass.si);
  return (asked - drag) * by + drag;
};
