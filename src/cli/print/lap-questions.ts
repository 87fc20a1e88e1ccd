/** Two laps compared, and what changes of the set-up did, as plain lines. */
import type { CompareAnswer, HelpedAnswer } from '../../app/index.ts';
import { count, heading, wrap } from './wrap.ts';

const seconds = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(3)} s`;
const kmh = (value: number): string => `${(value * 3.6).toFixed(1).padStart(5)}`;

export function comparedText({ laps, pieces, driven, grip, say }: CompareAnswer): string {
  const widest = Math.max(...pieces.map(({ name }) => name.length));
  const g = (value: number): string => `${(value / 9.80665).toFixed(2)} g`;
  return [
    ...laps.map(({ session, lap, time, spread }, n) =>
      wrap(`${session}, lap ${lap}: ${time.toFixed(3)} s ± ${(1.96 * spread).toFixed(3)}`, `${'ab'[n]}  `),
    ),
    ...say.map(each => wrap(each)),
    heading('along the track: b against a, and speed a, b in km/h'),
    ...pieces.map(
      ({ name, difference, spread, speeds: [a, b] }) =>
        `${name.padEnd(widest)}  ${seconds(difference)} ± ${(1.96 * spread).toFixed(3)}  ${kmh(a)} ${kmh(b)}\n`,
    ),
    ...driven.map(({ best, ideal, middle, spread, laps: of }, n) =>
      wrap(
        `best ${best.time.toFixed(3)} s, middle ${middle.toFixed(3)} ± ${spread.toFixed(3)} s of ${count(of, 'lap')}; all best pieces together ${ideal.toFixed(3)} s, which nobody drove`,
        `${'ab'[n]}  `,
      ),
    ),
    ...(grip.aside && grip.braking && grip.drive
      ? [wrap(`Grip used: ${g(grip.aside)} aside, ${g(grip.braking)} braking, ${g(grip.drive)} driving.`)]
      : []),
    ...laps.flatMap(({ session, jumps }) =>
      jumps === 0 ? [] : [wrap(`${session}: ${count(jumps, 'fix that jumps', 'fixes that jump')} left out.`, 'note: ')],
    ),
  ].join('');
}

export function helpedText({ day, track, runs, say, about }: HelpedAnswer): string {
  return [
    wrap(`${day}${track === null ? '' : `, ${track}`}`),
    ...runs.map(({ session, on, laps }) =>
      wrap(`${session}: ${on.length === 0 ? 'as at first' : on.join(', ')}, ${count(laps, 'lap')}`, '  '),
    ),
    ...say.map(each => wrap(each)),
    ...(about
      ? [
          wrap(
            `Laps differ by ${about.lapSpread.toFixed(2)} s, runs by ${about.runSpread.toFixed(2)} s (${about.basis}); counted ${about.laps.counted}, left out ${about.laps.out} ways out, ${about.laps.marked} marked, ${about.laps.slow} far too slow.`,
          ),
        ]
      : []),
  ].join('');
}
