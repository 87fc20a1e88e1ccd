/** The air of the session to come. */
import { air } from '../../numbers/index.ts';
import { airQuestion } from './air.ts';
import type { Missing, TrackPart } from './model.ts';
import { asked, leads, notAsked } from './part.ts';
import type { Coming } from './session.ts';

/** After this a reading says little of the air of now; common practice: weather turns within two or three hours. */
const STALE_HOURS = 3;

export function airPart({ weather }: Coming, baseline: number | null, now: string): TrackPart {
  if (weather === undefined) return notAsked(air, [NO_WEATHER]);
  const age = (Date.parse(now) - Date.parse(weather.at)) / 3_600_000;
  const from = [
    `Read ${age < 1 ? `${Math.max(0, Math.round(age * 60))} min` : `${age.toFixed(0)} h`} ago by ${weather.by}.`,
  ];
  const old: readonly Missing[] =
    age > STALE_HOURS
      ? [{ what: `The weather was read ${age.toFixed(0)} h ago.`, how: 'Read it again before the session.' }]
      : [];
  const question = airQuestion(weather);
  if (question === null) return notAsked(air, [...lacks(weather), ...old], from);
  return asked(air, {
    question: baseline === null ? question : { ...question, 'baseline density': `${baseline.toPrecision(6)} kg/m³` },
    from,
    missing: [
      ...old,
      ...(weather.humidity === undefined
        ? [{ what: 'Nobody read the humidity: all of 0 to 100 % is in the band.', how: 'Read a hygrometer.' }]
        : []),
    ],
    lead: answer => leads(answer, { density: 'air', 'relative density': 'of the standard day' }),
  });
}

export const NO_WEATHER: Missing = {
  what: 'No weather was read today.',
  how: 'Thermometer in the shade at carburettor height, barometer at the track, hygrometer.',
};

const lacks = ({ celsius, pascal, pressureIs }: NonNullable<Coming['weather']>): readonly Missing[] => [
  ...(celsius === undefined ? [{ what: 'The temperature was not read.', how: 'In the shade, in moving air.' }] : []),
  ...(pascal === undefined ? [{ what: 'The pressure was not read.', how: 'On a barometer at the track.' }] : []),
  ...(pascal !== undefined && pressureIs === undefined
    ? [
        {
          what: 'Nobody wrote down which pressure was read.',
          how: 'Read it again and say: at the track (station), an airfield’s (QNH), or of a map or app (sea level).',
        },
      ]
    : []),
];
