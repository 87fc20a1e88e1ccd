/** Logs whose lap times are known: ours, which lie in test/fixtures, and the rest of them beside the project where it is. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Gate, Place } from '../src/laps/index.ts';
import truth from './fixtures/laps/truth.json' with { type: 'json' };

export type KnownLog = {
  readonly file: string;
  readonly rate: number;
  readonly clockAhead: number; // s, of this file before that of the laps
  readonly gates: readonly [Gate, ...Gate[]];
  readonly laps: readonly { readonly start: number; readonly time: number; readonly sectors: readonly number[] }[];
  readonly bytes: Uint8Array;
};

const RADIANS = Math.PI / 180;
const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const PLACES = ['fixtures/laps', '../../shared/reference/laps'];

/** Those that are there, and the names of those that lie beside the project and are not. */
export function knownLogs(): { readonly logs: readonly KnownLog[]; readonly absent: readonly string[] } {
  const logs: KnownLog[] = [];
  const absent: string[] = [];
  for (const { file, track, rate, clockAhead = 0 } of truth.files) {
    const path = PLACES.map(place => at(`${place}/${file}`)).find(existsSync);
    const { gates, laps } = truth.tracks[track as keyof typeof truth.tracks];
    const [first, ...more] = gates.map(({ left, right }) => ({ left: placeOf(left), right: placeOf(right) }));
    if (path === undefined || first === undefined) absent.push(file);
    else logs.push({ file, rate, clockAhead, gates: [first, ...more], laps, bytes: readFileSync(path) });
  }
  return { logs, absent };
}

const placeOf = ([lat = Number.NaN, lon = Number.NaN]: readonly number[]): Place => ({
  lat: lat * RADIANS,
  lon: lon * RADIANS,
});
