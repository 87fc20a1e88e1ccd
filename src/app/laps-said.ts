/** Gates and columns as a person writes them, on every face the same. */
import type { BookGate } from '../book/index.ts';
import { type ChosenColumns, gateFault, ROLES, type Role, unitsFor } from '../laps/index.ts';
import { type Problem, refuse } from './problem.ts';

type Read<T> = { readonly value: T; readonly problems: readonly Problem[] };

/** `45.00093,10.00132,45.00101,10.00140`: latitude and longitude of a point on either side of the track, in degrees. */
export function readGates(texts: readonly string[]): Read<readonly BookGate[]> {
  const read = texts.map(gateOf);
  return { value: read.flatMap(one => one.gate ?? []), problems: read.flatMap(one => one.problem ?? []) };
}

function gateOf(text: string): { readonly gate?: BookGate; readonly problem?: Problem } {
  const numbers = text
    .trim()
    .split(/[\s,;]+/)
    .map(Number);
  const [lat = Number.NaN, lon = Number.NaN, toLat = Number.NaN, toLon = Number.NaN] = numbers;
  const there = (a: number, o: number): boolean => Math.abs(a) <= 90 && Math.abs(o) <= 180;
  const no = (message: string): { readonly problem: Problem } => ({
    problem: refuse(
      'wrong shape',
      'gate',
      message,
      'Give the latitude and longitude of a point on either side of the track: 45.00093,10.00132,45.00101,10.00140.',
    ),
  });
  if (numbers.length !== 4 || !there(lat, lon) || !there(toLat, toLon))
    return no(`Expected two points in degrees, got "${text}".`);
  const gate: BookGate = { left: [lat, lon], right: [toLat, toLon] };
  const fault = gateFault(gate);
  return fault === undefined ? { gate } : no(`Expected ${fault}.`);
}

/** `time=Elapsed`, `speed=v [km/h]`: which column says what, and in which unit. */
export function readColumns(texts: readonly string[]): Read<ChosenColumns> {
  const problems: Problem[] = [];
  const value: { [role in Role]?: { heading: string; unit?: string } } = {};
  for (const text of texts) {
    const [, word = '', heading = '', unit] = /^\s*([a-z]+)\s*=\s*(.*?)(?:\s*\[([^\]]+)\])?\s*$/.exec(text) ?? [];
    const role = ROLES.find(one => one === word);
    if (role === undefined || heading === '')
      problems.push(
        refuse(
          'wrong shape',
          'column',
          `Expected what a column says and its heading, got "${text}".`,
          `Write it like time=Elapsed or "speed=v [km/h]". Columns say ${ROLES.join(', ')}.`,
        ),
      );
    else if (unit !== undefined && !unitsFor(role).includes(unit))
      problems.push(
        refuse(
          'wrong shape',
          'column',
          `Expected a unit of ${role}, got "${unit}".`,
          `Units of ${role}: ${unitsFor(role).join(', ') || 'none'}.`,
        ),
      );
    else value[role] = { heading, ...(unit === undefined ? {} : { unit }) };
  }
  return { value, problems };
}
