/** What to set cold for the wanted hot pressures, from the record, else by the gas law, else not known. */
import { formatQuantity } from '../../quantity/index.ts';
import { standardAt } from '../air/standard-atmosphere.ts';
import { gaugeElsewhere, humidityInside, warmedWet, waterToSaturate } from './gas.ts';
import type { Input, RunInput } from './input.ts';
import { capital, joined, many, NO_PART, type Part, pressure, warmth } from './parts.ts';
import { ALIKE, type Cold, coldFor, type PressureRun } from './record.ts';

const MAP_DOUBT = 4500; // Pa: weather rarely moves more, common practice
const DRY_MOST = 1.5e5; // Pa gauge, hot, dry: common practice

const runOf = (run: RunInput, today: number): PressureRun => ({
  tyre: run.tyre,
  surface: run.surface,
  cold: run.cold.si,
  coldTemperature: run['cold temperature'].si,
  hot: run.hot.si,
  ambient: run['ambient pressure']?.si ?? today,
  track: run['track temperature'].si,
  laps: run.laps.si,
});

export const pressurePart = (input: Input): Part =>
  joined([...(input.wanted ?? []).map(wanted => one(input, wanted)), around(input), elsewhere(input), water(input)]);

function one(input: Input, { tyre, hot }: NonNullable<Input['wanted']>[number]): Part {
  const ambient = input['ambient pressure']?.si ?? Number.NaN;
  const cold = input['cold temperature'];
  const gas = input['hot temperature']?.si;
  const found = coldFor(
    {
      tyre,
      surface: input.surface ?? 'dry',
      track: input['track temperature']?.si ?? Number.NaN,
      laps: input.laps?.si ?? Number.NaN,
      wanted: hot.si,
      ambient,
      coldTemperature: cold?.si ?? Number.NaN,
      ...(gas !== undefined && { gas }),
      water: input.water === 'liquid',
    },
    (input.record ?? []).map(run => runOf(run, ambient)),
  );
  return joined([
    said(found, tyre, hot.unit, { hot: hot.text, at: cold?.text ?? '' }),
    lowest(found, input, tyre),
    high(input, hot.si),
  ]);
}

function said(found: Cold, tyre: string, unit: string, { hot, at }: { hot: string; at: string }): Part {
  const name = capital(tyre);
  const few = (runs: number): string =>
    `${runs === 0 ? 'No run' : runs === 1 ? 'One run' : `${runs} runs`} of the record ${runs < 2 ? 'is' : 'are'} like today; ${ALIKE.runs} are needed`;
  if (found.kind === 'not known')
    return {
      ...NO_PART,
      say: [
        `${name}: cold pressure not known. ${few(found.runs)}, or say "hot temperature". Set the maker's figure, and write down cold, hot and track.`,
      ],
    };
  if (found.kind === 'by the gas law')
    return {
      figures: { [`cold ${tyre}`]: pressure(found.cold, unit), [`air in tyre ${tyre}`]: warmth(found.gas, '°C') },
      say: [
        `${name}: set ${pressure(found.cold, unit).text} cold at ${at} for ${hot} hot. By the gas law with ${warmth(found.gas, '°C').text} in the tyre, not from this kart's runs.`,
      ],
      notes: [
        `${name}: ${few(found.runs)}. How sure the gas law is depends on the hot temperature given: 10 °C move the cold pressure by about ${pressure((found.cold + 1e5) * (10 / found.gas), unit).text}.`,
      ],
    };
  const { cold, rise } = found;
  const [low, top] = [pressure(cold.low, unit), pressure(cold.high, unit)];
  return {
    figures: {
      [`cold ${tyre}`]: pressure(cold.value, unit),
      [`cold ${tyre}, lowest likely`]: low,
      [`cold ${tyre}, highest likely`]: top,
      [`air in tyre ${tyre}`]: warmth(rise.gas.value, '°C'),
      [`similar runs ${tyre}`]: many(rise.used.length),
    },
    say: [
      `${name}: set ${pressure(cold.value, unit).text} cold at ${at} for ${hot} hot; 19 times of 20 the right figure is from ${low.text} to ${top.text}. From ${rise.used.length} runs on days like today.`,
    ],
    notes: [
      ...(rise.by === 'mean'
        ? [
            `${name}: mean of ${rise.used.length} runs; from ${ALIKE.forSlope} on, over ${ALIKE.spread} K of track temperature, the record shows how the rise follows the track.`,
          ]
        : []),
      ...(rise.beyond
        ? [
            `Outside the range this was checked for: ${tyre}, the track is colder or hotter than on any similar day of the record.`,
          ]
        : []),
      `Similar: same tyre or axle, same surface, track within ${ALIKE.within} K, at least ${ALIKE.laps} laps and half of today's (common practice).`,
    ],
  };
}

const lowest = (found: Cold, { 'least pressure': least }: Input, tyre: string): Part => {
  const cold =
    found.kind === 'from the record' ? found.cold.value : found.kind === 'by the gas law' ? found.cold : Number.NaN;
  return least && cold < least.si
    ? {
        ...NO_PART,
        say: [
          `${capital(tyre)}: that is under the least allowed. Set ${least.text}, not less; the hot pressure will be higher than wanted.`,
        ],
      }
    : NO_PART;
};

const high = ({ surface }: Input, hot: number): Part =>
  hot > DRY_MOST && surface !== 'wet'
    ? {
        ...NO_PART,
        notes: [
          'Outside the range this was checked for: more than 1.5 bar hot on a dry track (common practice). Is it absolute? A gauge shows the pressure over the air around.',
        ],
      }
    : NO_PART;

function around(input: Input): Part {
  const [ambient, height] = [input['ambient pressure'], input['track height']];
  if (!ambient || !input.wanted) return NO_PART;
  if (!height)
    return {
      ...NO_PART,
      notes: [
        'The air pressure is taken as read at the track. Give "track height" to have a sea level figure noticed.',
      ],
    };
  const usual = standardAt(height.si).pascal;
  return Math.abs(ambient.si - usual) > MAP_DOUBT
    ? {
        ...NO_PART,
        notes: [
          `Outside the range this was checked for: ${ambient.text} where ${formatQuantity(usual, 'hPa', 0)} is usual at ${height.text}. Is it the sea level figure of a forecast?`,
        ],
      }
    : NO_PART;
}

function elsewhere({ 'set elsewhere': set, 'ambient pressure': here }: Input): Part {
  if (!set || !here) return NO_PART;
  const now = pressure(gaugeElsewhere(set.gauge.si, set['ambient pressure'].si, here.si), set.gauge.unit);
  return {
    figures: { 'gauge here': now },
    say: [
      `What was ${set.gauge.text} there shows ${now.text} here at the same temperature. Set pressures at the track.`,
    ],
    notes: [],
  };
}

function water(input: Input): Part {
  const {
    'tyre volume': volume,
    'hot temperature': hot,
    humidity,
    'ambient pressure': ambient,
    wanted,
    water: inside,
  } = input;
  const unit = wanted?.[0]?.hot.unit ?? 'bar';
  const cold = input['cold temperature'];
  const grams = volume && hot ? waterToSaturate(volume.si, hot.si) : undefined;
  const pumped =
    humidity && ambient && wanted?.[0]
      ? humidityInside({ gauge: wanted[0].hot.si, ambient: ambient.si, humidity: humidity.si })
      : undefined;
  const extra =
    inside === 'liquid' && hot && cold && ambient
      ? warmedWet({ gauge: 0, ambient: ambient.si, from: cold.si, to: hot.si }) -
        (ambient.si * hot.si) / cold.si +
        ambient.si
      : undefined;
  return {
    figures: {
      ...(grams !== undefined && {
        'water that fills it with vapour': { si: grams, unit: 'g', text: formatQuantity(grams, 'g', 1) },
      }),
      ...(pumped !== undefined && {
        'humidity inside': { si: pumped, unit: '%', text: formatQuantity(pumped, '%', 0) },
      }),
      ...(extra !== undefined && { 'rise by liquid water': pressure(extra, unit) }),
    },
    say: [
      ...(extra === undefined
        ? []
        : [
            `Liquid water adds ${pressure(extra, unit).text} by the time the tyre is hot, and not the same twice. Take the valve out, dry the tyre, fill it with dry air.`,
          ]),
      ...(grams === undefined
        ? []
        : [`${formatQuantity(grams, 'g', 1)} of water is enough to keep one tyre full of vapour.`]),
      ...(pumped !== undefined && pumped > 1
        ? ['The air pumped in is past full of water: drain the tank and its hose first.']
        : []),
    ],
    notes: input.water === undefined && wanted ? ['The air in the tyres is taken as free of liquid water.'] : [],
  };
}
