/** What no air can be, or what may have been read as something else: each with what would be right, or the question. */
import { formatQuantity } from '../../quantity/index.ts';
import { mustBe } from '../must-be.ts';
import type { InputProblem } from '../subject.ts';
import { POSSIBLE } from './air-of.ts';
import type { Input } from './input.ts';
import { standardAtGeometric } from './standard-atmosphere.ts';
import { pressureKind, WEATHER_MOST } from './station-pressure.ts';
import { pascalAt } from './work.ts';

export function impossible(input: Input): readonly InputProblem[] {
  const found = [
    ...temperature(input),
    ...pressure(input),
    ...humidity(input),
    ...height(input),
    ...rest(input),
    ...limits(input),
  ];
  return found.length > 0 ? found : wrongKind(input);
}

const some = (...list: readonly (InputProblem | undefined)[]): readonly InputProblem[] =>
  list.filter(problem => problem !== undefined);

function temperature({ temperature: t }: Input): readonly InputProblem[] {
  const [low, high] = POSSIBLE.kelvin;
  const number = Number.parseFloat(t.text.replace(',', '.'));
  const other = t.unit === '°C' ? ((number - 32) * 5) / 9 : t.unit === '°F' ? number * 1.8 + 32 : Number.NaN;
  const remedy =
    t.unit === '°C' && t.si > high && other < 55
      ? `is it °F? ${number} °F would be ${other.toFixed(1)} °C: write the unit the thermometer shows`
      : 'read it in the shade, away from asphalt and radiator, and write the unit the thermometer shows';
  return some(mustBe('temperature', t, '-30 °C to 55 °C', si => si >= low && si <= high, remedy));
}

function pressure({ pressure: p, 'pressure is': kind }: Input): readonly InputProblem[] {
  const [low, high] = POSSIBLE.pascal;
  const least = kind === 'station' ? low : 90e3;
  const remedy =
    p.si < 50e3
      ? 'is it a gauge reading? The engine breathes absolute pressure, near 1000 hPa (29.5 inHg) at the sea: read a barometer, not a tyre gauge'
      : p.si < least
        ? 'is it a station reading? Then write "pressure is": "station"'
        : 'read the barometer again, and write its unit: hPa, mbar, inHg or kPa';
  const expected = `the absolute pressure of the air, ${formatQuantity(least, 'hPa', 0)} to ${formatQuantity(high, 'hPa', 0)}`;
  return some(mustBe('pressure', p, expected, si => si >= least && si <= high, remedy));
}

function humidity({ humidity: h }: Input): readonly InputProblem[] {
  if (h === undefined) return [];
  const expected = '0 % to 100 %, with its sign';
  const number = Number.parseFloat(h.text.replace(',', '.'));
  if (h.unit !== '%' && h.si >= 1)
    return [
      { path: 'humidity', expected, got: h.text, remedy: `write "${number} %" if the hygrometer shows ${number}` },
    ];
  if (h.unit === '%' && h.si > 0 && h.si <= 0.01)
    return [
      {
        path: 'humidity',
        expected,
        got: h.text,
        remedy: `is it a fraction? Then write "${Number((number * 100).toPrecision(6))} %"; no outside air is so dry`,
      },
    ];
  return some(
    mustBe('humidity', h, expected, si => si >= 0 && si <= 1, 'write what the hygrometer shows, such as "60 %"'),
  );
}

function height({ elevation: z, 'pressure is': kind }: Input): readonly InputProblem[] {
  if (z === undefined)
    return kind === 'station'
      ? []
      : [
          {
            path: 'elevation',
            expected: 'the height of the track above the sea: the pressure was reduced to sea level',
            got: 'nothing',
            remedy: 'add it, for example "250 m" or "820 ft", from a map',
          },
        ];
  return some(
    mustBe('elevation', z, '-450 m to 4500 m', si => si >= -450 && si <= 4500, 'look it up on a map; write m or ft'),
  );
}

function rest(input: Input): readonly InputProblem[] {
  const { 'barometer reads high by': offset, 'baseline density': base, 'measured power': power } = input;
  const against =
    offset !== undefined && input['pressure is'] !== 'station'
      ? {
          path: 'barometer reads high by',
          expected: 'a barometer read at the track beside it, "pressure is": "station"',
          got: `"${input['pressure is']}"`,
          remedy: 'take it out: a report has no offset of your barometer',
        }
      : undefined;
  return some(
    against,
    mustBe(
      'barometer reads high by',
      offset,
      'at most 20 hPa',
      si => Math.abs(si) <= 2000,
      'compare again with the station pressure, not the sea level one, of a station at the same height',
    ),
    mustBe(
      'baseline density',
      base,
      '0.5 kg/m³ to 1.6 kg/m³, of air',
      si => si >= 0.5 && si <= 1.6,
      'take the density that was written down with that session; fuel is some 600 times denser',
    ),
    mustBe('measured power', power, 'above 0', si => si > 0, 'write it without a sign'),
  );
}

const LIMITED = ['temperature', 'pressure', 'humidity', 'elevation', 'baseline density'] as const;
const MOST = { temperature: 10, pressure: 3000, humidity: 0.5, elevation: 500, 'baseline density': 0.2 } as const;

function limits(input: Input): readonly InputProblem[] {
  return LIMITED.flatMap(path => {
    const given = input[path];
    return given?.half === undefined || given.half <= MOST[path]
      ? []
      : [
          {
            path,
            expected: 'limits that say how well it was read',
            got: given.text,
            remedy: 'look at the unit of the limits: they are plus or minus, such as "± 1 °C" or "± 1 hPa"',
          },
        ];
  });
}

/** A sea level figure called station, a station figure called sea level, or another place: a question, not an answer. */
function wrongKind(input: Input): readonly InputProblem[] {
  const { elevation, pressure: p, 'pressure is': said } = input;
  if (elevation === undefined) return [];
  const pascal = pascalAt(input);
  const found = pressureKind({ pascal, elevation: elevation.si });
  if (found.kind !== 'wrong' && found.kind !== 'not known') return [];
  const standard = standardAtGeometric(elevation.si).pascal;
  const [low, high] = [standard - WEATHER_MOST, standard + WEATHER_MOST].map(si => formatQuantity(si, 'hPa', 0));
  const sea = said === 'station';
  const asked = sea
    ? 'is it a sea level figure, of an app or a report? Then write "pressure is": "QNH" or "sea level"'
    : 'is it read at the track? Then write "pressure is": "station"';
  return [
    {
      path: 'pressure is',
      expected: `a pressure at the track of ${low} to ${high}, at ${elevation.text} above the sea`,
      got: sea
        ? `${p.text}, called station`
        : `${p.text}, called ${said}, which is ${formatQuantity(pascal, 'hPa', 1)} at the track`,
      remedy: `${asked}; if not, correct the elevation or read the barometer again`,
    },
  ];
}
