/** Air as it was asked: two densities, or the readings they come from, each refused as the subject `air` refuses it. */
import { air } from '../air/index.ts';
import type { InputProblem } from '../subject.ts';
import type { AirInput } from './input.ts';
import { moistureDoubt } from './jet-air.ts';
import { incomplete, mustGive, outside, wrong } from './said.ts';
import type { JetAir } from './theory.ts';

export type Told = JetAir & { readonly u: number; readonly notes: readonly string[] }; // u standard, over the density [1]
export type AirTold = { readonly told: Told } | { readonly problems: readonly InputProblem[] };

/** Standard uncertainty over the density where only a figure was given: half a per cent either way; common practice. */
const PLAIN = 0.005 / Math.sqrt(3);
const POSSIBLE = [0.5, 1.6] as const; // kg/m³

export function airTold(path: string, input: AirInput): AirTold {
  const { density, 'dry-air density': dry, ...read } = input;
  const readings = Object.values(read).some(each => each !== undefined);
  if (density && readings)
    return refused(wrong(`${path}/density`, 'a density, or temperature and pressure', 'both', 'take one of them out'));
  if (density) return fromDensity(path, input);
  if (dry) return refused(mustGive(`${path}/density`, 'the density of all the air beside its dry part', '1.180 kg/m³'));
  if (!readings)
    return refused(
      wrong(
        path,
        'temperature and pressure, or a density',
        'nothing',
        'add "temperature", "pressure" and "pressure is"',
      ),
    );
  return fromReadings(path, read);
}

const refused = (...problems: readonly InputProblem[]): AirTold => ({ problems });

function fromDensity(path: string, { density, 'dry-air density': dry }: AirInput): AirTold {
  if (!density) return refused();
  const problems = [
    ...outside(`${path}/density`, density, POSSIBLE, 'write the density of air, such as "1.180 kg/m³"'),
    ...(dry && !(dry.si <= density.si && dry.si > 0.9 * density.si)
      ? [
          wrong(
            `${path}/dry-air density`,
            `at most the density, ${density.text}, and more than 90 % of it`,
            dry.text,
            'exchange the two, or leave it out',
          ),
        ]
      : []),
  ];
  if (problems.length > 0) return { problems };
  const u = density.half === undefined ? PLAIN : density.half / (Math.sqrt(3) * density.si);
  const notes = dry ? [] : ['Without its dry part, moisture counts as density only.'];
  return { told: { density: density.si, ...(dry ? { dry: dry.si } : {}), u, notes } };
}

function fromReadings(path: string, read: Omit<AirInput, 'density' | 'dry-air density'>): AirTold {
  const missing = incomplete(path, read);
  if (missing.length > 0) return { problems: missing };
  const question = Object.fromEntries(
    Object.entries(read).flatMap(([key, value]) =>
      value === undefined ? [] : [[key, typeof value === 'string' ? value : value.text]],
    ),
  );
  const answer = air.ask(question);
  if (answer.kind === 'problems')
    return { problems: answer.problems.map(each => ({ ...each, path: `${path}/${each.path}` })) };
  const si = (name: string): number => answer.figures[name]?.si ?? Number.NaN;
  const density = si('density');
  return {
    told: {
      density,
      dry: (density * si('relative dry-air density')) / si('relative density'),
      u: Math.hypot(si('standard uncertainty of density'), moisture(read, si('pressure at the track'))),
      notes: answer.notes,
    },
  };
}

const moisture = ({ temperature, humidity }: AirInput, pascal: number): number =>
  moistureDoubt({
    kelvin: temperature?.si ?? Number.NaN,
    pascal,
    ...(humidity ? { humidity: humidity.si } : {}),
    ...(humidity?.half === undefined ? {} : { half: humidity.half }),
  });
