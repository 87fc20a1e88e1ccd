/** What to do about the main jet, and what to doubt. */
import { formatQuantity } from '../../quantity/index.ts';
import { changeText, jetText } from './figures.ts';
import type { Direction, Held, JetAdvice } from './jet-band.ts';
import type { Worked } from './work.ts';
import { ZONES } from './zones.ts';

const VAPOUR =
  'Caution: fuel runs out with the jet and its vapour burns. Engine off and cool, no flame or spark near, tap shut, catch it, wipe up, extinguisher at hand.';
const LEAN =
  'Leaner is the way to a seizure. One size, three or four laps with a hand at the clutch, plug and piston read after full throttle; if in doubt go back up.';
const LEAKS =
  'First rule out an air leak: crankcase and inlet closed off, 5 psi (0.34 bar) by hand pump, at most 0.5 psi lost in 10 minutes; never more than 9 psi (0.62 bar), seals can be pushed out.';
const SEIZURE = 'Leaner is the way to a seizure: do not run at full throttle as it is.';

export const say = (w: Worked): readonly string[] => [
  airSays(w),
  ...jetToFit(w),
  ...rules(w),
  ...partThrottle(w),
  VAPOUR,
];

function airSays({ band, input }: Worked): string {
  const { ratio, mixture } = band;
  const air = changeText(ratio, ['denser', 'thinner']);
  const mix = changeText(mixture, ['richer', 'leaner']);
  const first = air === 'no change' ? 'The air is as it was' : `The air is ${air} than when ${input.jet} was right`;
  if (mix === 'no change') return `${first}: the mixture stays.`;
  const lean = mixture < 1 && direction(band.advice) === 'richer' ? ` ${SEIZURE}` : '';
  return `${first}: with ${input.jet} the mixture would be about ${mix}.${lean}`;
}

/** A box without a jet that is rich enough asks for a richer one too. */
const direction = (advice: JetAdvice): Direction => ('direction' in advice ? advice.direction : 'richer');

const WHY: Readonly<Record<Held, string>> = {
  'one size at a time': 'The band would allow more, but leaner goes one size at a time.',
  'smallest good jet': 'The band would allow a smaller one, but none smaller was ever logged as good.',
  'doubt of the air': 'The band would allow a smaller one, but the air is not known well enough.',
};

function jetToFit({ band, input, smallestGood }: Worked): readonly string[] {
  const { advice } = band;
  if (advice.kind === 'none rich enough')
    return [
      `No jet in the box is rich enough: ${jetText(band.high)} or more is wanted, the largest is ${advice.largest}. Get one before running at full throttle.`,
    ];
  const number = advice.kind === 'fit' ? advice.jet : advice.number;
  const orNext = advice.kind === 'fit' ? '' : ', or the next size above it that you have';
  const held = advice.heldBy ? [WHY[advice.heldBy]] : [];
  if (advice.direction === 'richer')
    return [
      `Fit ${jetText(number)}${orNext}, before the run. Too rich slows it and fouls the plug, no more; read the plug and come back down from there.`,
    ];
  if (advice.direction === 'keep')
    return [
      `Keep ${input.jet}.`,
      ...held,
      ...(band.high > input.jet * (1 + 1e-6) ? ['The change is smaller than the readings show.'] : []),
    ];
  const below =
    number < smallestGood - 1e-9
      ? [`That is below ${smallestGood}, the smallest jet logged as good: your decision.`]
      : [];
  return [`${jetText(number)}${orNext} may be tried.`, ...held, ...below, LEAN, LEAKS];
}

function rules({ band, learned }: Worked): readonly string[] {
  const [low, high] = band.theory.map(jetText);
  const theory = low === high ? low : `${low} to ${high}`;
  const two = `Theory asks for ${theory}, the paddock rule for ${jetText(band.paddock)}`;
  if (learned?.kind === 'learned' && band.learned)
    return [
      `This engine's own log asks for ${[...new Set(band.learned.map(jetText))].join(' to ')}. ${two}. ${band.beyondLog ? 'The log has not seen such air, so the richest of all counts.' : 'The log counts, its richer end.'}`,
    ];
  return [`${two}; the richer end counts, rounded up.`];
}

function partThrottle({ share, band }: Worked): readonly string[] {
  if (share === undefined) return [];
  const size = formatQuantity(share, '%', 0);
  const aside =
    band.advice.kind === 'fit' && band.advice.direction === 'keep' ? '' : ' Look at the needle for the rest.';
  return [`At that needle position only ${size} of a change of the main jet reaches the engine.${aside}`];
}

export const notes = (w: Worked): readonly string[] => [
  ...asked(w),
  ...outside(w),
  ...logSays(w),
  ...airNotes(w),
  ...ZONES.map(({ work }) => work),
  'Another oil, ratio, fuel, plug, pipe or hotter water each make the old jet a stranger: begin rich and read the plug.',
  'The paddock rule, the rounding and one size at a time are common practice. The maker’s sheet and the engine builder win.',
];

const asked = ({ input, need, band }: Worked): readonly string[] => [
  ...(input['numbered by'] === 'not known'
    ? ['Whether the number is a bore or a flow is not known, so both are in the band. Ask whoever sold the jets.']
    : []),
  ...(input['jets in the box'] ? [] : ['Name the jets in the box, and the answer is one of them.']),
  ...(need === 1 ? [] : [`Fuel, oil and ethanol alone ask for ${changeText(need, ['more', 'less'])} jet area.`]),
  ...(input['ethanol now'] && (input['ethanol now'].si > 0.1 || input['ethanol then']?.si !== input['ethanol now'].si)
    ? ['Ethanol also draws water and attacks some seals and hoses: see that the class rules and the maker allow it.']
    : []),
  ...(band.advice.kind === 'none rich enough' ? ['Lifting the needle does not help at full throttle.'] : []),
];

/** What holds of both airs is said once. */
const airNotes = ({ was, now }: Worked): readonly string[] => [
  ...was.notes.map(note => `${now.notes.includes(note) ? 'Air then and now' : 'Air then'}: ${note}`),
  ...now.notes.filter(note => !was.notes.includes(note)).map(note => `Air now: ${note}`),
];

/** Further from 1 than this, no check covers it; common practice. */
const FAR = 0.25;

const outside = ({ band, input }: Worked): readonly string[] => [
  ...(Math.abs(band.ratio - 1) > FAR
    ? [
        'Outside the range this was checked for: air that differs by more than 25 %. Are then and now exchanged, or a pressure of the wrong kind?',
      ]
    : []),
  ...(input['numbered by'] === 'diameter' && (input.jet < 80 || input.jet > 250)
    ? [
        `Outside the range this was checked for: a bore of ${formatQuantity(input.jet * 1e-5, 'mm')}, usually 0.8 mm to 2.5 mm. Is the number a flow?`,
      ]
    : []),
];

function logSays({ learned, input, band }: Worked): readonly string[] {
  if (learned === undefined)
    return ['Log air, jet and plug of each session: from five on, this engine’s own exponent replaces the band.'];
  if (learned.kind === 'not yet') return [`The log cannot tell yet: ${learned.why}. The band counts.`];
  if (band.learned === undefined)
    return [
      'The log goes by dry air, and these airs are given without it: add humidity or the dry-air density. The band counts.',
    ];
  const lean = (input.log ?? []).filter(({ plug }) => plug === 'lean').length;
  return lean > 0
    ? [`${lean} of the logged sessions were read as lean: they teach nothing here, look at what they had in common.`]
    : [];
}
