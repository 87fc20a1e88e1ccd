/** What to do, and what to doubt, about gearing. */
import { pairText, road, rpm, SHOWN } from './figures.ts';
import type { Pair } from './pairs.ts';
import type { ShiftPoint } from './shift.ts';
import { fastest } from './torque-curve.ts';
import type { Choice, Worked } from './work.ts';

const CAUTION =
  'Caution: engine off and plug cap off before fingers come near chain and sprockets; after a run they are hot. Then chain line, slack and joining link anew, guard back on, second look.';

export const say = (worked: Worked): readonly string[] => [
  ...choose(worked),
  ...speeds(worked),
  ...shifts(worked),
  ...top(worked),
  ...tooth(worked),
  CAUTION,
];

function choose(worked: Worked): readonly string[] {
  const { choice, input, on } = worked;
  if (!choice) return [];
  const { pairs, need, now } = choice;
  const asked = `${input['wanted engine speed']?.text} at ${input['wanted speed']?.text}`;
  const wanted = `For ${asked}, rear over front must be ${need.toFixed(3)}; ${pairText(on)} on the kart gives ${rpm(now).text}.`;
  if (input['front sprockets owned'] === undefined) return [wanted];
  const [best] = pairs;
  if (!best)
    return [wanted, 'No pair of the box has at least as many teeth behind as in front: name the others you own.'];
  const first = pairs.filter(({ rank }) => rank === 1);
  const next = pairs.find(({ rank }) => rank > 1);
  return [
    wanted,
    first.length === 1
      ? `Fit ${pairText(best)} (front/rear): ${gives(best)}.`
      : `A tie: ${first.map(pair => `${pairText(pair)} ${gives(pair)}`).join('; ')}. More teeth run smoother, and bend the chain less.`,
    ...(next ? [`Next: ${pairText(next)}, ${gives(next)}.`] : []),
    ...overLimiter(worked, best),
  ];
}

const gives = ({ rotation, off }: Pair): string => {
  const apart = Math.abs(off);
  const far = apart < rpmStep ? 'as wanted' : `${rpm(apart).text} ${off > 0 ? 'over' : 'under'}`;
  return `${rpm(rotation).text}, ${far}`;
};
const rpmStep = (5 * Math.PI) / 30;

function overLimiter({ input: { limiter } }: Worked, best: Pair): readonly string[] {
  return limiter && best.rotation > limiter.si
    ? [
        `That is over the limiter of ${limiter.text}: an engine turned faster breaks, and seizes. Take fewer teeth behind.`,
      ]
    : [];
}

function speeds(worked: Worked): readonly string[] {
  const { speeds: all, afters, input } = worked;
  const said = all.map((speed, n) => `${all.length > 1 ? `${n + 1}: ` : ''}${road(speed, worked).text}`);
  const at = `At ${input['engine speed'].text}`;
  if (all.length === 1) return [`${at} the kart goes ${said[0]}.`];
  return [
    `${at} by gear, ${said.join('; ')}.`,
    `After each shift up there: ${afters.map(after => rpm(after).text).join(', ')}.`,
  ];
}

function shifts({ shifts: all, pull }: Worked): readonly string[] {
  if (all.length === 0 || !pull) return [];
  return [`Shift up, where the next gear pushes as hard: ${all.map(shiftText).join('; ')}.`];
}

const shiftText = (point: ShiftPoint, n: number): string => {
  const gears = `${n + 1} to ${n + 2}`;
  if (point.kind === 'not known') return `${gears} not known, the ${point.why}`;
  return `${gears} at ${point.kind === 'limiter' ? 'the limiter, ' : ''}${rpm(point.rotation).text}`;
};

function top(worked: Worked): readonly string[] {
  const { top: found, ratios } = worked;
  if (!found) return [];
  if (found.kind === 'not reached')
    return [
      'No gear pushes more than drag holds back, anywhere on this curve: look at drag area, rolling resistance and torque.',
    ];
  const gear = ratios.length > 1 ? ` in gear ${found.gear}` : '';
  const speed = road(found.speed, worked).text;
  return [
    found.kind === 'drag'
      ? `On the level, air and rolling hold it at ${speed}${gear}.`
      : `The engine runs out of speed first, at ${speed}${gear}: there it would still pull.`,
  ];
}

const tooth = ({ tooth: one }: Worked): readonly string[] => [
  `One tooth less in front: ${share(one.lessFront)} more engine speed at the same road speed. One tooth more behind: ${share(one.moreRear)} more.`,
];
const share = (si: number): string => `${(si * 100).toFixed(1)} %`;

export function notes(worked: Worked): readonly string[] {
  const { round, input, choice, pull, against } = worked;
  const { limiter, 'torque curve': curve } = input;
  return [
    ...tyre(worked),
    ...(choice ? unsure(choice) : []),
    ...(choice && choice.pairs.length > SHOWN
      ? [`The nearest ${SHOWN} of ${choice.pairs.length} pairs are shown.`]
      : []),
    ...(choice && choice.pairs.length < ownedPairs(worked)
      ? ['Pairs with more teeth in front than behind are left out.']
      : []),
    ...(limiter && input['engine speed'].si > limiter.si
      ? [`Outside validity: ${input['engine speed'].text} is over the limiter of ${limiter.text}.`]
      : []),
    ...(pull && worked.shifts.length > 0
      ? [
          'Shift points are for a steady pull: wheels and crank that must be sped up, and the time of the shift, bring the best point a little lower in the low gears. The watch decides.',
        ]
      : []),
    ...(pull && !input['driveline efficiency'] ? ['Efficiency of the driveline was taken as 92 % (memory).'] : []),
    ...(pull && limiter && curve && fastest(pull.curve) < limiter.si
      ? [`The torque curve ends at ${curve.at(-1)?.at.text}, below the limiter: nothing is said beyond it.`]
      : []),
    ...(against
      ? ['Level track, no wind. Drag area and rolling resistance are worth what your coast-down was worth.']
      : []),
    ...(round.circumference < 0.75 || round.circumference > 1
      ? [
          'Outside the range this was checked for: once round the rear tyre is usually 750 mm to 1000 mm (common practice).',
        ]
      : []),
    'The engine maker says how fast it may turn; the class rules may fix sprockets.',
  ];
}

const ownedPairs = ({ input }: Worked): number =>
  new Set(input['front sprockets owned']?.map(each => each.si)).size *
  new Set(input['rear sprockets owned']?.map(each => each.si)).size;

function tyre({ round }: Worked): readonly string[] {
  if (round.from === 'tape')
    return [
      'A driven tyre slips a few per cent, and grows: read engine and road speed at one moment of a straight from a log and give both, then it is in.',
      ...(round.half > 0 ? [] : ['The circumference was given without limits: write "860 mm ± 5 mm".']),
    ];
  if (round.slip === undefined) return ['Slip and growth of the tyre are in the circumference, as logged.'];
  return round.slip < -0.03 || round.slip > 0.1
    ? [
        `Tape and log differ by ${share(Math.abs(round.slip))}, more than slip and growth explain: look at the gear, the sprockets and the unit of the log. The log was used.`,
      ]
    : [`Tape and log differ by ${share(Math.abs(round.slip))}: slip and growth of the tyre. The log was used.`];
}

/** Pairs nearer to each other than the tyre is known cannot be told apart by this. */
function unsure({ pairs, doubt }: Choice): readonly string[] {
  const [best] = pairs;
  const near = best ? pairs.filter(({ off, rank }) => rank > 1 && Math.abs(off) - Math.abs(best.off) < doubt) : [];
  return best && near.length > 0
    ? [
        `The tyre is known to ${rpm(doubt).text} either way: ${near.slice(0, 3).map(pairText).join(', ')} may be as near as ${pairText(best)}. Try on the track.`,
      ]
    : [];
}
