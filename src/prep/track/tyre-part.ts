/** Cold pressures for the session to come, from this kart's own rises. */
import { type Reading, TYRES, type Tyre } from '../../book/index.ts';
import type { Item, Kart } from '../../kart/index.ts';
import { tyres as subject, tyreGasTemperature } from '../../numbers/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { airRead } from './air.ts';
import { NO_WEATHER } from './air-part.ts';
import type { Missing, TrackPart } from './model.ts';
import { asked, known, notAsked } from './part.ts';
import type { TrackRecord, TrackSession } from './session.ts';

type Conditions = { readonly laps: number | null; readonly wet: boolean };

export function tyrePart(kart: Kart, { sessions, coming }: TrackRecord, { laps, wet }: Conditions): TrackPart {
  const air = airRead(coming.weather);
  const track = coming.weather?.trackCelsius;
  const wanted = TYRES.flatMap(tyre => {
    const hot = wheelItem(kart, tyre, 'hot pressure')?.measure?.target;
    return hot === undefined ? [] : [{ tyre, hot: hot.text }];
  });
  const treads = Object.entries(sessions.at(-1)?.treads?.celsius ?? {}).map(([tyre, tread]) => ({
    tyre,
    inside: `${tread.inside} °C`,
    middle: `${tread.middle} °C`,
    outside: `${tread.outside} °C`,
  }));
  const missing: readonly Missing[] = [
    ...(coming.weather?.celsius === undefined || !air ? [NO_WEATHER] : []),
    ...(track === undefined
      ? [{ what: 'The surface of the track was not read.', how: 'A probe or an infrared thermometer on the line.' }]
      : []),
    ...(laps === null
      ? [{ what: 'How many laps the session has is not known.', how: 'Say it with the question.' }]
      : []),
    ...(wanted.length === 0
      ? [
          {
            what: 'No hot pressure is wanted.',
            how: 'Give item "hot pressure" of the wheels a target in the kart file.',
          },
        ]
      : []),
  ];
  if (!air || coming.weather?.celsius === undefined || track === undefined || laps === null || wanted.length === 0)
    return notAsked(subject, missing);
  const runs = sessions.flatMap(runsOf);
  const record = runs.map(({ gas: _, ...run }) => run);
  const gas = usualGas(runs, wet);
  return asked(subject, {
    question: {
      'ambient pressure': pascals(air.pascal),
      'cold temperature': `${coming.weather.celsius} °C`,
      'track temperature': `${track} °C`,
      surface: wet ? 'wet' : 'dry',
      laps: String(laps),
      wanted,
      ...(record.length > 0 && { record }),
      ...(gas !== undefined && { 'hot temperature': `${gas.toFixed(1)} °C` }),
      ...(treads.length > 0 && { treads }),
      ...setOf(coming.tyres, sessions),
      ...known({
        'track height': coming.weather.elevation === undefined ? undefined : `${coming.weather.elevation} m`,
      }),
    },
    from: [
      'Tyres in the shade, as warm as the air when they are set.',
      `${record.length === 0 ? 'No' : record.length} rises of single tyres are in the record.`,
    ],
    missing: [],
    lead: answer =>
      wanted.flatMap(({ tyre }) => {
        const text = answer.figures[`cold ${tyre}`]?.text;
        return text === undefined ? [] : [{ label: `${tyre}, cold`, text }];
      }),
  });
}

/** Item of a wheel by its corner. */
export const wheelItem = (kart: Kart, tyre: Tyre, key: string): Item | undefined =>
  Object.values(kart.items).find(item => item.key === key && kart.parts[item.part]?.corner === tyre);

/** Tyres of one session of which cold, hot, air, surface and laps are all known. */
function runsOf({ outing, cold, hot, weather }: TrackSession) {
  const air = airRead(weather);
  if (!air || weather?.celsius === undefined || weather.trackCelsius === undefined || outing.laps === null) return [];
  const { celsius, trackCelsius } = weather;
  return TYRES.flatMap(tyre => {
    const [set, ended] = [cold[tyre], hot[tyre]];
    if (!set || !ended || !(ended.si > set.si)) return [];
    return [
      {
        tyre,
        surface: outing.wet ? 'wet' : 'dry',
        cold: said(set),
        'cold temperature': `${celsius} °C`,
        hot: said(ended),
        'track temperature': `${trackCelsius} °C`,
        laps: String(outing.laps),
        'ambient pressure': pascals(air.pascal),
        gas: tyreGasTemperature({ cold: set.si, hot: ended.si, ambient: air.pascal, from: celsius + 273.15 }) - 273.15,
      },
    ];
  });
}

/** How hot the air in the tyres got in all runs on such a surface [°C]: what the gas law falls back on on a day like none before. */
function usualGas(runs: readonly { readonly surface: string; readonly gas: number }[], wet: boolean) {
  const alike = runs.filter(({ surface }) => surface === (wet ? 'wet' : 'dry'));
  return alike.length === 0 ? undefined : alike.reduce((sum, { gas }) => sum + gas, 0) / alike.length;
}

const said = ({ si, unit }: Reading): string => formatQuantity(si, unit, undefined, 'pressure-gauge');
const pascals = (si: number): string => formatQuantity(si, 'hPa', 1);

/** Heat cycles of the set in use: those said when it was put on, and one for each run since. */
function setOf(set: TrackSession['tyres'], sessions: readonly TrackSession[]) {
  if (set?.cycles === undefined) return {};
  const since = sessions.filter(({ tyres }) => tyres?.id === set.id).length;
  return { set: { 'heat cycles': String(set.cycles + since) } };
}
