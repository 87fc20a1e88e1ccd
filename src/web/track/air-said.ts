/** The air as it was read before a session: from what was typed to a weather fact, and what the last one there says. */
import type { FactLine } from '../../app/index.ts';
import type { FactOf } from '../../book/index.ts';
import { own } from '../choice/choice.ts';
import { trackWords } from '../words/track.tsx';
import type { Draft } from '../written.ts';
import { isProblem, type Measured, numberSaid, problemAt, type Said, said, type Typed } from './said.ts';

export const AIR: Readonly<Record<'celsius' | 'pascal' | 'elevation' | 'humidity' | 'trackCelsius', Measured>> = {
  celsius: { key: 'celsius', label: trackWords.temperatureInShade, unit: '°C', dimension: 'temperature' },
  pascal: { key: 'pascal', label: trackWords.pressure, unit: 'hPa', dimension: 'pressure-absolute' },
  elevation: { key: 'elevation', label: trackWords.heightOfTrackAboveSea, unit: 'm', dimension: 'length' },
  humidity: { key: 'humidity', label: trackWords.humidity, unit: '%', dimension: 'ratio' },
  trackCelsius: { key: 'trackCelsius', label: trackWords.surfaceOfTrack, unit: '°C', dimension: 'temperature' },
};

/** Which pressure that is: value, what it is called, how to know it. */
export const PRESSURES = [
  ['station', trackWords.readAtTrack, trackWords.barometerHereNotSet],
  ['QNH', trackWords.airfieldQnh, trackWords.asAirfieldGives],
  ['sea level', trackWords.weatherMapOrApp, trackWords.broughtDownToSea],
] as const;

/** What a pressure was brought down to the sea from is needed to bring it back. */
export const asksElevation = (typed: Typed): boolean => typed.pressureIs === 'QNH' || typed.pressureIs === 'sea level';

/** @param track name of the track, where an event says it */
export function weatherSaid(typed: Typed, track: string | undefined): Said<Draft> {
  const read = {
    celsius: numberSaid(typed, AIR.celsius),
    pascal: numberSaid(typed, AIR.pascal),
    elevation: asksElevation(typed) ? numberSaid(typed, AIR.elevation) : undefined,
    humidity: numberSaid(typed, AIR.humidity),
    trackCelsius: numberSaid(typed, AIR.trackCelsius),
  };
  const problems = Object.values(read).filter(isProblem);
  if (problems.length === 0 && Object.values(read).every(value => value === undefined))
    problems.push(problemAt('celsius', AIR.celsius.label, 'nothing', trackWords.readOneOfThem));
  if (read.pascal !== undefined && !typed.pressureIs)
    problems.push(problemAt('pressureIs', trackWords.whichPressureThis, 'nothing', trackWords.takenForWrongOne));
  if (problems.length > 0) return { ok: false, problems };
  const { celsius, pascal, elevation, humidity, trackCelsius } = read as Readonly<Record<keyof typeof read, number>>;
  return {
    ok: true,
    value: {
      kind: 'weather',
      ...said({
        celsius,
        pascal: pascal === undefined ? undefined : pascal * 100,
        pressureIs: pascal === undefined ? undefined : typed.pressureIs,
        elevation,
        humidity: humidity === undefined ? undefined : humidity / 100,
        trackCelsius,
        track,
      }),
    },
  };
}

/**
 * Kind of pressure and elevation as they were written last at this track; everything else is read anew.
 * @param facts newest first
 */
export function lastAirAt(facts: readonly FactLine[], track: string | undefined): Typed {
  const last = facts.find(
    ({ fact, struck }) => struck === null && fact.kind === 'weather' && fact.pressureIs && fact.track === track,
  )?.fact as FactOf<'weather'> | undefined;
  return {
    ...(last?.pressureIs && { pressureIs: last.pressureIs }),
    ...(last?.elevation !== undefined && { elevation: own(`${last.elevation} m`).replace(/ .*/, '') }),
  };
}
