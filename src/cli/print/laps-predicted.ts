/** A predicted lap as plain lines: beside the driven one, what it rests on, what a change is worth, and the sprockets. */
import type { LapsPredicted } from '../../app/index.ts';
import { heading, wrap } from './wrap.ts';

const seconds = (value: number, digits = 3): string => {
  const size = Math.abs(value).toFixed(digits);
  return `${Number(size) === 0 ? ' ' : value < 0 ? '-' : '+'}${size} s`;
};
const kmh = (value: number): string => (value * 3.6).toFixed(0).padStart(4);
const figure = (value: number): string => String(Number(value.toPrecision(4)));

export function predictedText(answer: LapsPredicted): string {
  const { session, track, lap, driven, figures, lost, slowest, sensitivities, sprockets, say } = answer;
  return [
    wrap(`${session}: predicted ${lap.time.toFixed(2)} s, driven ${driven.time.toFixed(2)} s (lap ${driven.lap}).`),
    wrap(
      `${Math.round(track.length)} m from the middle of ${track.laps} laps; ${(lap.vMin * 3.6).toFixed(0)} to ${(lap.vMax * 3.6).toFixed(0)} km/h, ${lap.upshifts} upshifts.`,
    ),
    ...say.map(each => wrap(each)),
    heading('lost on the prediction by tenths of the lap'),
    ...lost.map(
      ({ from, to, seconds: so }) =>
        `  ${`${Math.round(from)} to ${Math.round(to)} m`.padEnd(16)}  ${seconds(so, 2)}\n`,
    ),
    heading('slowest in each corner, km/h: predicted, driven'),
    ...slowest.map(({ corner, predicted, driven: was }) => `  ${corner.padEnd(16)}  ${kmh(predicted)}  ${kmh(was)}\n`),
    heading('what one step more is worth in a lap'),
    ...sensitivities.map(({ change, by, seconds: so }) => `  ${`${change} +${by}`.padEnd(24)}  ${seconds(so)}\n`),
    ...(sprockets === null ? [] : [heading('sprockets, behind the quickest')]),
    ...(sprockets?.pairs ?? []).map(
      ({ front, rear, behind, within, level }) =>
        `  ${`${front}/${rear}`.padEnd(7)}  ${seconds(behind)}  ± ${within.toFixed(3)}  ${level ? 'level' : ''}`.trimEnd() +
        '\n',
    ),
    heading('reckoned with'),
    ...figures.map(({ what, value, unit, spread, from, why }) =>
      wrap(
        `${figure(value)}${spread === undefined ? '' : ` ± ${Number(spread.toPrecision(2))}`}${unit === '1' ? '' : ` ${unit}`}, ${from}${why ? `: ${why}` : ''}`,
        `  ${what}: `,
      ),
    ),
  ].join('');
}
