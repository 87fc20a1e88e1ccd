/** Stagger, treads and the age of a set, in figures and words. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Input } from './input.ts';
import { capital, joined, kelvins, many, millimetres, NO_PART, type Part } from './parts.ts';
import { SET_LIMITS, setLife } from './set-life.ts';
import { rolledOut, staggerFor, staggerRadius } from './stagger.ts';
import { TREAD, treadOf } from './tread.ts';

export function staggerPart({ rear }: Input): Part {
  if (!rear) return NO_PART;
  const [left, right] = [rear['rolled left'], rear['rolled right']].map(each => rolledOut(each.si, rear.turns.si));
  if (left === undefined || right === undefined) return NO_PART;
  const track = rear['contact track'].si;
  const stagger = right - left;
  const doubt = rolledOut((rear['rolled left'].half ?? 0) + (rear['rolled right'].half ?? 0), rear.turns.si);
  const radius = staggerRadius({ left, right, track });
  const wanted = rear['wanted radius'];
  const wants = wanted && staggerFor({ radius: wanted.si, track, mean: (left + right) / 2 });
  const larger = stagger > 0 ? 'right' : 'left';
  const toward = stagger > 0 ? 'left' : 'right';
  return {
    figures: {
      'round left': millimetres(left),
      'round right': millimetres(right),
      'stagger, right larger': millimetres(stagger),
      ...(doubt > 0 && { 'stagger known within': millimetres(doubt) }),
      ...(Number.isFinite(radius) && {
        'radius it rolls': { si: radius, unit: 'm', text: formatQuantity(radius, 'm', 0) },
      }),
      ...(wants !== undefined && { 'stagger wanted': millimetres(wants) }),
    },
    say: [
      `Rear left ${millimetres(left).text} round, rear right ${millimetres(right).text}.`,
      ...(Math.abs(stagger) <= Math.max(doubt, 1e-9)
        ? ['No stagger that this measuring can tell: the axle rolls straight.']
        : [
            `Rear ${larger} is ${millimetres(Math.abs(stagger)).text} larger: the axle by itself rolls to the ${toward}, round ${formatQuantity(radius, 'm', 0)}. Where corners go both ways, match the two within 2 mm (common practice).`,
          ]),
      ...(wanted && wants !== undefined
        ? [`To roll round ${wanted.text}, the outer tyre needs to be ${millimetres(wants).text} larger than the inner.`]
        : []),
    ],
    notes:
      doubt > 0 ? [] : ['No limits were given for the rolled lengths; a tape and a chalk mark are good to 1 or 2 mm.'],
  };
}

export const treadPart = ({ treads = [] }: Input): Part =>
  joined(
    treads.map(({ tyre, inside, middle, outside }): Part => {
      const { crown, lean, spread, pressure, wide } = treadOf({
        inside: inside.si,
        middle: middle.si,
        outside: outside.si,
      });
      const size = (k: number): string => kelvins(Math.abs(k)).text;
      const shows = {
        high: `the middle is ${size(crown)} hotter than the edges: pressure rather high`,
        low: `the middle is ${size(crown)} cooler than the edges: pressure rather low`,
        'as it is': `middle and edges within ${size(TREAD.crown)}: leave the pressure`,
        'not known': 'not known',
      }[pressure];
      const side =
        Math.abs(lean) < 1e-9 ? 'inside and outside alike' : `${lean > 0 ? 'inside' : 'outside'} ${size(lean)} hotter`;
      return {
        figures: {
          [`crown ${tyre}`]: kelvins(crown),
          [`inside less outside ${tyre}`]: kelvins(lean),
          [`spread ${tyre}`]: kelvins(spread),
        },
        say: [
          `${capital(tyre)}: ${shows}; ${side}.${wide ? ` The spread, ${size(spread)}, is more than the usual ${size(TREAD.spread)}.` : ''}`,
        ],
        notes: [
          'Tread temperatures are a trend of one tyre from run to run: a live axle and little camber leave no more (common practice). Probe, at once after a hot lap.',
        ],
      };
    }),
  );

export function setPart({ set }: Input): Part {
  if (!set) return NO_PART;
  const si = (key: keyof typeof set): number | undefined => set[key]?.si;
  const [cycles, age, mostCycles, mostAge] = [si('heat cycles'), si('age'), si('most heat cycles'), si('most age')];
  const { state, cyclesLeft, ageLeft } = setLife({
    ...(cycles !== undefined && { cycles }),
    ...(age !== undefined && { age }),
    ...(mostCycles !== undefined && { mostCycles }),
    ...(mostAge !== undefined && { mostAge }),
  });
  const unknown = [...(cycles === undefined ? ['heat cycles'] : []), ...(age === undefined ? ['age'] : [])];
  return {
    figures: {
      ...(Number.isFinite(cyclesLeft) && { 'heat cycles left': many(cyclesLeft) }),
      ...(Number.isFinite(ageLeft) && {
        'time left': { si: ageLeft, unit: 'd', text: formatQuantity(ageLeft, 'd', 0) },
      }),
    },
    say: [
      state === 'at its limit'
        ? 'The set is at its limit: practice at most. Look for cracks, cords and flat spots before it goes on.'
        : state === 'within'
          ? `The set is within its limits: ${cyclesLeft} heat cycles and ${formatQuantity(ageLeft, 'd', 0)} left.`
          : `Whether the set is within its limits is not known: ${unknown.join(' and ')} not written down. Take it as used up for a race that matters.`,
    ],
    notes:
      mostCycles === undefined || mostAge === undefined
        ? [
            `Limits not given are ${SET_LIMITS.cycles} heat cycles and ${formatQuantity(SET_LIMITS.age, 'd', 0)} (common practice); the maker's word and your own lap times win.`,
          ]
        : [],
  };
}
