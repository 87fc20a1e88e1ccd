/**
 * Laps predicted: a thousand karts one after another on one track at steps of 1 m, beside additions of square roots in
 * the same process, and one lap beside an independent reference in Python where that lies beside the project and Python
 * is there. How far the lap times are off at 1 m, and how the error falls with the step. Demand: 25 times the square roots.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import rows from '../checks/rows/laps-predict.json' with { type: 'json' };
import { packageRoot } from '../src/host/index.ts';
import { type Element, GENERIC_KART, type LapKart, predictorOf, trackOf } from '../src/laps/index.ts';
import fixture from '../test/fixtures/laps/tracks.json' with { type: 'json' };
import { type Figure, ms, times } from './measure.ts';
import { processor, ROOTS, squareRoots } from './square-roots.ts';

const CASES = 1000;
const tracks = Object.entries(fixture.tracks) as unknown as readonly (readonly [string, readonly Element[]])[];

export async function lapPredictions(): Promise<readonly Figure[]> {
  const roots = processor(5, squareRoots);
  const karts = Array.from({ length: CASES }, (_, n): LapKart => {
    const { gearing, mass } = GENERIC_KART;
    return { ...GENERIC_KART, mass: mass + n / 100, gearing: { ...gearing, rear: 19 + (n % 11) } };
  });
  const predictor = predictorOf(trackOf(fixture.tracks.K3 as unknown as readonly Element[]), { step: 1 });
  const took = processor(5, () => {
    for (const kart of karts) predictor.lap(kart);
  });
  return [
    { what: `${ROOTS} additions of square roots`, value: ms(roots) },
    {
      what: `${CASES} laps of ${Math.round(predictor.length)} m at 1 m`,
      value: ms(took),
      ratio: times(took, roots, 'the square roots'),
    },
    ...besideReference(took / CASES),
    ...tracks.map(([name, elements]) => accuracy(name, elements)),
  ];
}

/** Lap time over the reference at 1 m, and the order in which the error falls from 2 m to 0.25 m. */
function accuracy(name: string, elements: readonly Element[]): Figure {
  const lap = (step: number): number => {
    const found = predictorOf(trackOf(elements), { step }).lap(GENERIC_KART);
    return found.kind === 'lap' ? found.time : Number.NaN;
  };
  const row = rows.find(({ id }) => id === `laps-predict.track.${name}`);
  const { lapTime: reference = Number.NaN } = (row?.expect ?? {}) as { readonly lapTime?: number };
  const exact = lap(0.02);
  const order = Math.log(Math.abs((lap(2) - exact) / (lap(0.25) - exact))) / Math.log(8);
  const off = (lap(1) / reference - 1) * 100;
  return {
    what: `${name} at 1 m, off the reference`,
    value: `${off.toFixed(4)} %`,
    ratio: `order ${order.toFixed(1)}`,
  };
}

function besideReference(ours: number): readonly Figure[] {
  const folder = join(packageRoot(), '..', 'shared', 'reference', 'laps');
  if (!existsSync(join(folder, 'ref_lap.py'))) return [{ what: 'the reference in Python', value: 'not there' }];
  const script = [
    'import json, sys, time',
    'sys.path.insert(0, sys.argv[1])',
    'from ref_lap import *',
    'track = Track("K3", json.load(sys.stdin))',
    'begun = time.process_time()',
    'ref_time_sim(Kart(), track)',
    'print((time.process_time() - begun) * 1000)',
  ].join('\n');
  const ran = spawnSync('python3', ['-B', '-c', script, folder], {
    input: JSON.stringify(fixture.tracks.K3),
    encoding: 'utf8',
  });
  const reference = ran.status === 0 ? Number(ran.stdout) : Number.NaN;
  if (!(reference > 0)) return [{ what: 'the reference in Python', value: 'does not run here' }];
  return [
    { what: 'one lap by the reference in Python', value: ms(reference), ratio: times(reference, ours, 'one of ours') },
  ];
}
