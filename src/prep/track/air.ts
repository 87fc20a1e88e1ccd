/** Weather as it was read, as a question about the air, and the air it was. */
import type { Payload } from '../../book/index.ts';
import { type Answer, air, SEA_LEVEL } from '../../numbers/index.ts';

type Read = Extract<Payload, { kind: 'weather' }>;

/** Question for the number `air`, or null while temperature, pressure or which pressure it is are unknown. */
export function airQuestion(read: Read): Readonly<Record<string, string>> | null {
  const { celsius, pascal, pressureIs, elevation, humidity, within = {} } = read;
  if (celsius === undefined || pascal === undefined || pressureIs === undefined) return null;
  return {
    temperature: limited(`${celsius} °C`, within.celsius, '°C'),
    pressure: limited(`${pascal / 100} hPa`, within.pascal && within.pascal / 100, 'hPa'),
    'pressure is': pressureIs,
    ...(humidity !== undefined && {
      humidity: limited(`${percent(humidity)} %`, within.humidity && percent(within.humidity), '%'),
    }),
    ...(elevation !== undefined && { elevation: `${elevation} m` }),
  };
}

const percent = (share: number): number => Number((share * 100).toPrecision(12));
const limited = (text: string, half: number | undefined, unit: string): string =>
  half === undefined || half === 0 ? text : `${text} ± ${half} ${unit}`;

/** The air of one reading: density and its band [kg/m³], its dry part, the pressure where the kart stands [Pa]. */
export type AirRead = {
  readonly answer: Answer;
  readonly question: Readonly<Record<string, string>>;
  readonly density: number;
  readonly band: number;
  readonly dryDensity: number;
  readonly pascal: number;
};

/** Undefined where the reading does not say enough, or is none of outside air: unknown, never guessed. */
export function airRead(read: Read | undefined): AirRead | undefined {
  const question = read && airQuestion(read);
  if (!question) return undefined;
  const answer = air.ask(question);
  if (answer.kind !== 'answer') return undefined;
  const figure = (name: string): number => answer.figures[name]?.si ?? Number.NaN;
  return {
    answer,
    question,
    density: figure('density'),
    band: figure('density known to'),
    dryDensity: figure('relative dry-air density') * SEA_LEVEL.density,
    pascal: figure('pressure at the track'),
  };
}
