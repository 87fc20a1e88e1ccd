/** What to pour and how far it goes, and what to doubt. */
import { formatQuantity } from '../../quantity/index.ts';
import { chance } from '../figure.ts';
import { USUAL_RATIO } from '../mix-ratio.ts';
import { atLeast, litres, mass, millilitres, mixtureText } from './figures.ts';
import type { Worked } from './work.ts';

const CAUTION =
  'Caution: petrol vapour burns and is bad to breathe. Mix and fill outdoors, engine off and cool, no flame or spark, can on the ground and not on the trailer, extinguisher at hand, gloves on; write ratio and date on the can.';

export const say = (w: Worked): readonly string[] => [
  ...pouring(w),
  ...mixture(w),
  ...fuel(w),
  ...atScales(w),
  CAUTION,
];

function pouring({ pour, input }: Worked): readonly string[] {
  if (!pour) return [];
  const oil = millilitres(pour.oil).text;
  const petrol = input['volume is'] === 'mix in the can' ? litres(pour.petrol).text : (input.volume?.text ?? '');
  const had = input['in the can'] && input['in the can'].si > 0 ? ` to the ${input['in the can'].text} in the can` : '';
  return [
    `Pour ${oil} of oil and ${petrol} of petrol${had}. That makes ${litres(pour.mix).text} at ${ratioOf(input)}.`,
    'Some petrol first, then all the oil, close and shake, then the rest, and shake again before each fill.',
  ];
}

const ratioOf = ({ ratio, 'ratio by': by }: Worked['input']): string => `${ratio}:1 by ${by}`;

function mixture({ mixture: by, input }: Worked): readonly string[] {
  if (by === undefined) return [];
  const text = mixtureText(by);
  const was = `${input['ratio before']}:1`;
  if (text === 'no change') return [`The same oil as before, ${was}: the jets stay.`];
  return by < 1
    ? [
        `More oil than ${was}: less petrol through the same jet, ${text}. Leaner is the way to a seizure: ask for the main jet again before the run.`,
      ]
    : [
        `Less oil than ${was}: more petrol through the same jet, ${text}, but less oil for the bearings. Never go under what the engine maker asks for to change the mixture: too little oil seizes.`,
      ];
}

function fuel(w: Worked): readonly string[] {
  const { session, input, perLap, spare } = w;
  if (!session) return [];
  if (session.kind === 'not known') {
    const most =
      perLap?.kind === 'too few' && perLap.most !== undefined
        ? ` The most seen is ${litres(perLap.most, 3).text} a lap, no forecast.`
        : '';
    return [`How much it takes is not known: ${session.why}.${most} Until then fill the tank, and look what is left.`];
  }
  const laps = `${input.laps?.si} laps and ${spare} spare`;
  const rest = input.reserve?.text ?? '';
  if (session.kind === 'does not fit')
    return [
      `It does not fit: ${laps} with ${rest} left take ${atLeast(session.fill).text}, and the tank holds ${input['tank holds']?.text}. Fewer spare laps, or a larger tank where the rules allow it.`,
    ];
  return [
    `Have ${atLeast(session.fill).text} of mix in the tank for ${laps} with ${rest} left. It will burn ${litres(session.burn.mean, 1).text} to ${litres(session.burn.high, 1).text}.`,
  ];
}

function atScales({ flag, input, session }: Worked): readonly string[] {
  if (!flag || !session || session.kind === 'not known') return [];
  const limit = input['least mass'];
  const over = flag.end - (limit?.si ?? Number.NaN);
  const state =
    over >= 0
      ? `${mass(flag.end).text} at the flag, ${mass(over).text} over the least mass of ${limit?.text}; chance of being heavy enough ${chance(flag.chance).text}.`
      : `${mass(flag.end).text} at the flag, ${mass(-over).text} under the least mass of ${limit?.text}.`;
  return flag.shortBy > 0
    ? [
        state,
        `Add ${formatQuantity(Math.ceil(flag.shortBy * 10 - 1e-9) / 10, 'kg', 1)} of ballast for 95 %, and bolt it as the rules say.`,
      ]
    : [state];
}

export const notes = (w: Worked): readonly string[] => [
  ...doubts(w),
  ...assumed(w),
  'Engine maker and class rules say oil, ratio, fuel sample and what must be left; they differ from year to year.',
];

/** A record this far beside theory is worth a second look; theory alone plans no fuel. Common practice. */
const FAR = 1.5;

function doubts({ input, perLap, theory, ratio }: Worked): readonly string[] {
  const known = perLap?.kind === 'known' ? perLap : undefined;
  const off = known && theory && (known.mean > theory[1] * FAR || known.mean < theory[0] / FAR);
  const wide = known && known.spread > 0.15 * known.mean;
  return [
    ...(ratio < USUAL_RATIO.least || ratio > USUAL_RATIO.most
      ? [
          `Outside what kart oils are sold for, ${USUAL_RATIO.least}:1 to ${USUAL_RATIO.most}:1: look at the maker's sheet again.`,
        ]
      : []),
    ...(off
      ? [
          `Power and lap time would explain ${litres(theory[0], 3).text} to ${litres(theory[1], 3).text} a lap: were laps or litres miscounted, does it leak, or was fuel drained?`,
        ]
      : []),
    ...(wide
      ? ['The sessions on record differ by more than 15 %: other tracks, rain or a slip of the pen among them?']
      : []),
    ...(known ? [`From ${known.fills} sessions; the fill holds 39 times of 40 on days like those.`] : []),
    ...(input['ratio before'] === undefined
      ? []
      : ['A thicker mix flows a little less on top of that (read second hand).']),
  ];
}

function assumed({ input, flag, session }: Worked): readonly string[] {
  const density = [
    ...(input['petrol density'] ? [] : ['petrol 0.745 kg/l (common practice)']),
    ...(input['oil density'] ? [] : ['oil 0.90 kg/l (memory)']),
  ];
  const matters = input['ratio by'] === 'mass' || flag !== undefined || session !== undefined;
  return [
    ...(matters && density.length > 0 ? [`Taken, because not given: ${density.join(', ')}. Weigh a litre.`] : []),
    ...(session && !input['spare laps'] ? ['2 spare laps were taken (common practice).'] : []),
    ...(flag && !input['other loss'] ? ['0.4 kg ± 0.3 kg was taken for sweat, rubber and oil (common practice).'] : []),
    ...(flag && input['on the scales']?.half === undefined
      ? ['The scale was taken as ± 0.2 kg (common practice).']
      : []),
  ];
}
