/**
 * A log of 40,000 fixes read in pieces of 64 KiB, in each format, and its laps found; beside additions of square
 * roots that tell how quick this machine is just now. Times are those of the processor, which other work on the machine
 * disturbs least. Demands, on a quiet core: CSV 150 ms, NMEA 200 ms, GPX 300 ms.
 */
import { LogImport, lapsOf, motionOf, proposeGate, type Trace } from '../src/laps/index.ts';
import { drive } from '../test/drive.ts';
import { bytesOf, csvOf, gpxOf, nmeaOf } from '../test/drive-files.ts';
import { type Figure, megabytes, ms, times, used } from './measure.ts';
import { processor, ROOTS, squareRoots } from './square-roots.ts';

const FIXES = 40_000;
const PIECE = 65_536;

export async function lapImports(): Promise<readonly Figure[]> {
  const { rows, gates } = drive({ laps: 105, rate: 10 });
  const some = rows.slice(0, FIXES);
  const roots = processor(5, squareRoots);
  const figures: Figure[] = [{ what: `${ROOTS} additions of square roots`, value: ms(roots) }];
  for (const [format, write] of [
    ['CSV', csvOf],
    ['NMEA, RMC and GGA', nmeaOf],
    ['GPX', gpxOf],
  ] as const) {
    const bytes = bytesOf(write(some));
    const took = processor(7, () => read(bytes));
    const what = `${FIXES} fixes as ${format}, ${megabytes(bytes.length)}`;
    figures.push({ what, value: ms(took), ratio: times(took, roots, 'the square roots') });
  }
  const csv = bytesOf(csvOf(some));
  const trace = read(csv);
  const motion = motionOf(trace);
  const finding = processor(7, () => lapsOf(trace, gates));
  const proposing = processor(7, () => proposeGate(motion));
  return [
    ...figures,
    { what: 'heap used on the way, CSV', value: megabytes(used(() => read(csv))) },
    {
      what: `${lapsOf(trace, gates).laps.length} laps found in them`,
      value: ms(finding),
      ratio: times(finding, roots, 'the square roots'),
    },
    { what: 'a gate proposed', value: ms(proposing), ratio: times(proposing, roots, 'the square roots') },
  ];
}

function read(bytes: Uint8Array): Trace {
  const log = new LogImport();
  for (let at = 0; at < bytes.length; at += PIECE) log.push(bytes.subarray(at, at + PIECE));
  const done = log.finish();
  if (done.kind !== 'imported' || done.trace.time.length !== FIXES)
    throw new Error('bench: the log must be read whole');
  return done.trace;
}
