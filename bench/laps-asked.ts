/**
 * A day of eight hours at 25 fixes a second smoothed, laid on one line and compared; and whether a change helped, on all series
 * with known effects, with how often the interval holds the truth. Times of the processor, beside additions of square roots.
 */
import {
  comparedOn,
  curvatureOf,
  LogImport,
  lapsOf,
  layOn,
  medianLine,
  motionOf,
  piecesOf,
  smooth,
} from '../src/laps/index.ts';
import { drive } from '../test/drive.ts';
import { bytesOf, csvOf } from '../test/drive-files.ts';
import { figuresOf, type Judged, judged, knownSeries } from '../test/lap-series.ts';
import { type Figure, ms, times } from './measure.ts';

const HOURS = 8;
const RATE = 25;
const LAP = 38; // s, about; of the invented drive

export async function lapsAsked(): Promise<readonly Figure[]> {
  const roots = took(() => {
    let sum = 0;
    for (let n = 0; n < 20_000_000; n++) sum += Math.sqrt(n);
    return sum;
  });
  return [...day(roots.took), ...series(roots.took)];
}

function day(roots: number): readonly Figure[] {
  const { rows, gates } = drive({ laps: Math.round((HOURS * 3600) / LAP), rate: RATE });
  const log = new LogImport();
  log.push(bytesOf(csvOf(rows)));
  const read = log.finish();
  if (read.kind !== 'imported') throw new Error('bench: the day must be read');
  const motion = motionOf(read.trace);
  const { laps, receiver } = lapsOf(read.trace, gates, { motion });
  const smoothed = took(() => smooth(motion, { receiver, doppler: true }));
  const line = took(() => medianLine(smoothed.value, laps));
  const laid = took(() => laps.map(lap => layOn(smoothed.value, lap, line.value)));
  const curvature = took(() => curvatureOf(laid.value, line.value));
  const [a, b] = laid.value;
  if (!a || !b) throw new Error('bench: two laps must be there');
  const pieces = piecesOf(curvature.value);
  const compared = took(() => comparedOn(line.value, [a, b], { pieces, receiver }));
  const figure = (what: string, one: number): Figure => ({
    what,
    value: ms(one),
    ratio: times(one, roots, 'the square roots'),
  });
  return [
    figure(`${rows.length} fixes smoothed (${HOURS} h at ${RATE} a second)`, smoothed.took),
    figure(`the middle line of ${laps.length} laps`, line.took),
    figure('all of them laid on it', laid.took),
    figure('curvature, the middle of all', curvature.took),
    figure('two of them compared', compared.took),
  ];
}

function series(roots: number): readonly Figure[] {
  const all = took(() => judged(knownSeries()));
  const line = (what: string, some: readonly Judged[]): Figure => {
    const { coverage, falseAlarms, power } = figuresOf(some);
    const share = (of: number): string => `${(100 * of).toFixed(1)} %`;
    return {
      what,
      value: share(coverage),
      ratio: `false alarms ${share(falseAlarms)}, power at 0.25 s ${share(power)}`,
    };
  };
  const designs = [...new Set(all.value.map(one => one.series.design))];
  return [
    {
      what: `did it help, ${all.value.length} series`,
      value: ms(all.took),
      ratio: times(all.took, roots, 'the square roots'),
    },
    ...designs.map(design =>
      line(
        `intervals that hold the truth, ${design}`,
        all.value.filter(one => one.series.design === design),
      ),
    ),
    line('all of them', all.value),
    line(
      'those that go back, which may get a verdict',
      all.value.filter(one => one.series.design !== 'AB'),
    ),
  ];
}

function took<T>(work: () => T): { readonly value: T; readonly took: number } {
  const from = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(from);
  return { value, took: (user + system) / 1000 };
}
