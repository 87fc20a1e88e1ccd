/** The air as figures, what to do with them, and what to doubt. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Figure } from '../subject.ts';
import { PARTS, type Part, type Worked } from './work.ts';

const figure = (si: number, unit: string, digits: number): Figure => ({
  si,
  unit,
  text: formatQuantity(si, unit, digits),
});
export const density = (si: number): Figure => figure(si, 'kg/m³', 3);
const share = (si: number): Figure => figure(si, '%', 1);
/** `540 m (1770 ft)`, no finer than the air is known. */
export const altitude = (si: number): Figure => {
  const tens = Math.round(si / 10) * 10;
  const feet = Math.round(si / 0.3048 / 10) * 10;
  return { si, unit: 'm', text: `${formatQuantity(tens, 'm', 0)} (${feet === 0 ? 0 : feet} ft)` };
};
const hectopascal = (si: number): Figure => figure(si, 'hPa', 1);
const signed = (si: number): string => `${si > 0 ? '+' : ''}${formatQuantity(si, '%', 1)}`;
const plusMinus = (si: number, unit: string, digits: number): Figure => ({
  si,
  unit,
  text: `± ${formatQuantity(si, unit, digits)}`,
});

export function figures(w: Worked): Readonly<Record<string, Figure>> {
  const { air, input } = w;
  const dew = air.dewPoint;
  const found: Record<string, Figure> = {
    density: density(air.density),
    'density known to': plusMinus(w.band, 'kg/m³', 3),
    'relative density': share(air.relative),
    'relative dry-air density': share(air.relativeDry),
    'density altitude': altitude(air.densityAltitude),
    'pressure at the track': hectopascal(w.pascal),
    'vapour pressure': hectopascal(air.vapourPressure),
    'dew point': { si: dew, unit: '°C', text: Number.isFinite(dew) ? formatQuantity(dew, '°C', 1) : 'none: dry air' },
    'standard uncertainty of density': figure(w.u, '%', 2),
  };
  for (const part of PARTS) if (w.parts[part] > 0) found[`uncertainty from ${part}`] = figure(w.parts[part], '%', 2);
  if (w.change) found['change since the baseline'] = { si: w.change.ratio, unit: '%', text: signed(w.change.ratio) };
  for (const [name, factor] of Object.entries(w.power.factors)) {
    const power = input['measured power'];
    const note = name === 'ISO 1585' && !w.power.inside ? ' (outside its limits)' : '';
    found[`power factor ${name}`] = { si: factor, unit: '', text: `${factor.toFixed(3)}${note}` };
    if (power)
      found[`power by ${name}`] = {
        si: power.si * factor,
        unit: power.unit,
        text: `${formatQuantity(power.si * factor, power.unit, 1)}${note}`,
      };
  }
  return found;
}

export function say(w: Worked): readonly string[] {
  const { air, input } = w;
  return [
    ...kindAsked(w),
    `The air is ${density(air.density).text} (${plusMinus(w.band, 'kg/m³', 3).text}): ${share(air.relative).text} of the standard day.`,
    `Its dry part, which carries the oxygen, is ${share(air.relativeDry).text} of the standard day’s.`,
    `Density altitude is ${altitude(air.densityAltitude).text}.`,
    ...(input['pressure is'] === 'station'
      ? []
      : [
          `At the track the pressure is ${hectopascal(w.pascal).text}: that is what the engine breathes. Write this one down.`,
        ]),
    ...since(w),
    ADVICE[most(w)],
    ...(input['measured power']
      ? [
          'Power by a standard only compares two days. What the engine gave is what was measured.',
          'Caution: a running engine on a stand has hot and turning parts and poisonous exhaust: guards on, hands and sleeves away, air through the room, fire extinguisher within reach.',
        ]
      : []),
  ];
}

/** First, because all the rest hangs on it. */
function kindAsked({ doubt, input }: Worked): readonly string[] {
  if (doubt.kind !== 'doubtful') return [];
  const far = `${hectopascal(Math.abs(doubt.apart)).text} ${doubt.apart > 0 ? 'above' : 'below'}`;
  const ask =
    input['pressure is'] === 'station'
      ? 'Was it really read at the track, not taken from an app or a report?'
      : 'Is it really the sea level figure, and the elevation that of the track?';
  return [`Check the pressure first: it is ${far} the standard for this height. ${ask}`];
}

function since({ change }: Worked): readonly string[] {
  if (!change) return [];
  const { ratio, u } = change;
  const by = formatQuantity(Math.abs(ratio), '%', 1);
  if (!(Math.abs(ratio) > 2 * u))
    return [
      `Cannot tell it from the baseline air: ${signed(ratio)}, known to ± ${formatQuantity(2 * u, '%', 1)}. It may be denser, so leaner: look at the plug as always.`,
    ];
  return ratio > 0
    ? [
        `The air is ${by} denser than at the baseline. On the same jet the engine runs LEANER: it can seize. Go richer before the session: ask carburation.`,
      ]
    : [
        `The air is ${by} thinner than at the baseline. On the same jet the engine runs richer. Going smaller on the jet leans it out, and too far can seize it: ask carburation, one step at most.`,
      ];
}

const ADVICE: Readonly<Record<Part, string>> = {
  thermometer:
    'The thermometer decides most: hang it in the shade, in moving air, at carburettor height, away from asphalt and radiator.',
  barometer: 'The barometer decides most: compare it with a known station and enter what it reads high.',
  hygrometer: 'The humidity decides most: read it on a good hygrometer, in the shade.',
  elevation: 'The elevation decides most: take it from a map, or read a barometer at the track.',
};

export const most = ({ parts }: Worked): Part => PARTS.toSorted((a, b) => parts[b] - parts[a])[0] ?? 'thermometer';

export function notes(w: Worked): readonly string[] {
  const { input, air, humidity } = w;
  const { si: T } = input.temperature;
  const apart = w.kindsApart;
  return [
    ...(T < 273.15 || T > 318.15 || w.pascal < 60e3
      ? ['Outside validity: the density was checked from 0 to 45 °C, 600 to 1100 hPa. Treat it as a rough figure.']
      : T < 288.15 || T > 300.15
        ? [
            'The density formula was made for 15 to 27 °C (memory); from 0 to 45 °C it agrees with two ideal gases within 0.1 %.',
          ]
        : []),
    ...(input['measured power'] && !w.power.inside
      ? ['Outside validity: ISO 1585 allows its factor from 0.93 to 1.07, 15 to 35 °C, 80 to 110 kPa (memory).']
      : []),
    ...(air.humidityAssumed
      ? [
          `Humidity was not given: 50 % was taken, and 0 to 100 % is in the band (± ${formatQuantity(w.parts.hygrometer * Math.sqrt(3), '%', 1)} of the density).`,
        ]
      : []),
    ...(!air.humidityAssumed && humidity > 0.9
      ? ['Above 90 % a hygrometer is at its worst and often reads 1 to 3 % high (read second hand).']
      : []),
    ...assumed(w),
    'Standard day: 15 °C, 1013.25 hPa, 1.2250 kg/m³ (ISO 2533). Some gauges use another; compare like with like.',
    ...(apart === undefined
      ? input.elevation
        ? []
        : ['No elevation was given: nobody checked whether the pressure is really that at the track.']
      : [
          `${input['pressure is'] === 'QNH' ? 'As a weather map’s or app’s figure (sea level)' : 'As an airfield’s figure (QNH)'} it would be ${formatQuantity(apart, 'hPa', 1)} different at the track: the two are reduced another way.`,
        ]),
    ...(input['measured power']
      ? ['No power standard was written for tuned two-strokes, whose pipe changes with heat.']
      : []),
  ];
}

function assumed({ input, parts }: Worked): readonly string[] {
  const taken = [
    ...(input.temperature.half === undefined ? ['temperature ± 1 °C'] : []),
    ...(input.pressure.half === undefined ? ['pressure ± 1 hPa'] : []),
    ...(input.humidity && input.humidity.half === undefined ? ['humidity ± 5 points'] : []),
    ...(parts.elevation > 0 && input.elevation?.half === undefined ? ['elevation ± 10 m'] : []),
  ];
  return taken.length === 0 ? [] : [`Taken, because no limits were given (common practice): ${taken.join(', ')}.`];
}
