/**
 * How good and how fast schedules are, on the public sets of Kolisch and Sprecher where they lie beside the project. One
 * seed for all. J30 in % over the optimum, J60 and J120 over the longest chain, as such figures are published; the excess
 * over the best makespans known compares more fairly. Every schedule is checked again, tick by tick.
 * `npm run bench:planner -- --set j30 --every 8 --schedules 1000` measures a part.
 */
import { parseArgs } from 'node:util';
import { solveSchedule as solve } from '../src/prep/index.ts';
import { type PublicProblem, problemSet } from '../test/problem-sets.ts';
import { faults } from '../test/schedules.ts';
import type { Figure } from './measure.ts';

const SEED = 7;
const SETS = ['j30', 'j60', 'j120'] as const;

export async function planner(): Promise<readonly Figure[]> {
  const whole = process.argv[2] === 'planner';
  const { values } = parseArgs({
    args: process.argv.slice(3),
    options: {
      set: { type: 'string' },
      every: { type: 'string', default: whole ? '1' : '16' },
      schedules: { type: 'string' },
    },
  });
  const sets = SETS.filter(set => values.set === undefined || set === values.set);
  if (sets.length === 0) throw new Error(`bench: --set must be one of ${SETS.join(', ')}, got ${values.set}`);
  const efforts = (values.schedules ?? '1000,5000').split(',').map(Number);
  return sets.flatMap(set => {
    const all = problemSet(set)?.filter((_, i) => i % Number(values.every) === 0);
    if (all === undefined) return [{ what: `${set}: the public set is not beside this project`, value: '' }];
    return efforts.map(schedules => figure(set, all, schedules));
  });
}

function figure(set: string, all: readonly PublicProblem[], schedules: number): Figure {
  const from = performance.now();
  const found = all.map(({ problem }) => solve(problem, { schedules, seed: SEED }));
  const seconds = (performance.now() - from) / 1000;
  const mean = (of: (one: PublicProblem, k: number) => number): number =>
    all.reduce((sum, one, k) => sum + of(one, k), 0) / all.length;
  const over = (k: number, than: number): number => (100 * ((found[k]?.makespan ?? Number.NaN) - than)) / than;
  all.forEach(({ problem, bestBound, bestKnown }, k) => {
    const schedule = found[k];
    const wrong = schedule && faults(problem, schedule);
    if (!schedule || wrong?.length !== 0 || schedule.makespan < bestBound || schedule.bound.ticks > bestKnown)
      throw new Error(`bench: ${problem.id} must be a schedule within the published bounds, got ${wrong?.[0]}`);
  });
  const made = found.reduce((sum, one) => sum + one.schedules, 0);
  const proven = found.filter(one => one.makespan === one.bound.ticks).length;
  const known = found.filter((one, k) => one.makespan <= (all[k]?.bestKnown ?? 0)).length;
  const deviation = mean((one, k) => over(k, set === 'j30' ? one.bestKnown : one.chain));
  const per = set === 'j30' ? 'the optimum' : 'the longest chain';
  return {
    what: `${set}, ${all.length} problems, ${schedules} schedules: over ${per}`,
    value: `${deviation.toFixed(3)} %`,
    ratio: `${mean((one, k) => over(k, one.bestKnown)).toFixed(3)} % over best known, ${known} as good, ${proven} proven, ${Math.round(made / seconds)} schedules/s`,
  };
}
