/** Weather, tyres and fuel as they were read: what cannot be, or reads like something else, is asked about before it is kept. */
import type { Payload } from '../book/index.ts';
import { air, type Problems, readRatio } from '../numbers/index.ts';
import { airQuestion } from '../prep/index.ts';
import type { Check, Context } from './context.ts';
import { type Problem, refuse, sentence } from './problem.ts';

/** What the number `air` refuses is asked about here, with its words: °F for °C, gauge for absolute, sea level for station. */
export const weatherRight: Check<'weather'> = (payload, context) => {
  if (context.sure) return [];
  const question = airQuestion(payload);
  if (question === null) return alone(payload, context);
  const answer = air.ask(question);
  return answer.kind === 'problems' ? fromAir(answer, context) : surface(payload.trackCelsius, context);
};

const KEYS: Readonly<Record<string, string>> = {
  temperature: 'celsius',
  pressure: 'pascal',
  'pressure is': 'pressureIs',
};

const fromAir = ({ problems }: Problems, { where }: Context): readonly Problem[] =>
  problems.map(({ path, expected, got, remedy }) =>
    refuse('far outside', `${where}.${KEYS[path] ?? path}`, `Expected ${expected}, got ${got}.`, sentence(remedy)),
  );

/** Where the pressure or what it is was not read, each figure is held against what air can be. */
function alone({ celsius, pascal, trackCelsius }: Extract<Payload, { kind: 'weather' }>, context: Context) {
  return [
    ...between(celsius, [-30, 55], 'celsius', '°C', 'Read it in the shade; is it °F, write its unit.', context),
    ...between(
      pascal,
      [55_000, 108_500],
      'pascal',
      'Pa',
      'Write what a barometer shows, in Pa: 101300, not 1013.',
      context,
    ),
    ...surface(trackCelsius, context),
  ];
}

const surface = (trackCelsius: number | undefined, context: Context) =>
  between(trackCelsius, [-20, 80], 'trackCelsius', '°C', 'Read the surface again; is it °F, write its unit.', context);

const HOTTEST_TREAD = 160; // °C; a tyre is scrap long before: common practice

export const treadsRight: Check<'treads probed'> = (payload, context) => {
  const treads = Object.entries(payload.celsius);
  if (treads.length === 0)
    return [
      refuse(
        'reading missing',
        `${context.where}.celsius`,
        'Expected the tread temperatures of one tyre at least, got none.',
        'Give inside, middle and outside of a tyre, in °C.',
      ),
    ];
  const remedy = 'Read it again; is it °F, write its unit.';
  return treads.flatMap(([tyre, tread]) =>
    Object.entries(tread ?? {}).flatMap(([place, celsius]) =>
      between(celsius, [-20, HOTTEST_TREAD], `celsius.${tyre}.${place}`, '°C', remedy, context),
    ),
  );
};

/** More than a kart's tank holds twice over is a slip of the unit; common practice. */
const MOST_LITRES = 20;

export const fuelUsedRight: Check<'fuel used'> = ({ litres }, context) =>
  context.sure || litres <= MOST_LITRES
    ? []
    : [
        refuse(
          'far outside',
          `${context.where}.litres`,
          `Expected at most ${MOST_LITRES} l in one session, got ${litres} l.`,
          'Write what was filled in less what was drained, in litres.',
        ),
      ];

export const fuelMixedRight: Check<'fuel mixed'> = ({ litres, oilMillilitres }, context) => {
  if (context.sure || litres === 0 || oilMillilitres === 0) return [];
  const read = readRatio(`${(litres * 1000) / oilMillilitres}:1`);
  if (read.ok) return [];
  return [
    refuse(
      'far outside',
      `${context.where}.oilMillilitres`,
      `Expected ${read.expected}, got ${litres} l with ${oilMillilitres} ml, which is ${((litres * 1000) / oilMillilitres).toFixed(1)}:1.`,
      'Write the petrol in litres and the oil in millilitres; too little oil seizes the engine.',
    ),
  ];
};

function between(
  value: number | undefined,
  [low, high]: readonly [number, number],
  key: string,
  unit: string,
  remedy: string,
  { where, sure }: Context,
): readonly Problem[] {
  if (sure || value === undefined || (value >= low && value <= high)) return [];
  return [
    refuse(
      'far outside',
      `${where}.${key}`,
      `Expected ${low} ${unit} to ${high} ${unit}, got ${value} ${unit}.`,
      remedy,
    ),
  ];
}
