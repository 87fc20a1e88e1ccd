/** The series of laps that `calc helped` is asked with: one row a lap, put together to runs. */
import { z } from 'zod';
import type { TestRun } from '../laps/index.ts';
import type { InputProblem } from '../numbers/index.ts';

const row = z.strictObject({
  run: z.union([z.number(), z.string()]).describe('laps with the same run were driven without a stop'),
  setup: z
    .union([z.string(), z.array(z.string())])
    .describe('name of the set-up, or the changes it has against the base'),
  time: z.number().positive().describe('s'),
  note: z.string().optional().describe('why the lap is not compared: traffic, a mistake; "" is none'),
});
export const lapsAsked = z.array(row).max(100_000).describe('in the order driven');
type Rows = z.infer<typeof lapsAsked>;
type Setups = Readonly<Record<string, readonly string[]>> | undefined;

/** The set-up of the first lap is what the others are changes of. */
export const baseOf = (laps: Rows): Rows[number]['setup'] | undefined => laps[0]?.setup;

export function runsIn(
  laps: Rows,
  {
    setups,
    base,
    outLaps,
  }: { readonly setups: Setups; readonly base: Rows[number]['setup'] | undefined; readonly outLaps: boolean },
): readonly TestRun[] {
  const runs = new Map<string, { readonly on: readonly string[]; readonly laps: TestRun['laps'][number][] }>();
  for (const { run, setup, time, note = '' } of laps) {
    const key = String(run);
    const on = typeof setup !== 'string' ? setup : (setups?.[setup] ?? (setup === base ? [] : [setup]));
    const found = runs.get(key) ?? { on, laps: [] };
    runs.set(key, found);
    found.laps.push({ time, out: outLaps && found.laps.length === 0, marked: note.trim() !== '' });
  }
  return [...runs.values()];
}

export function seriesProblems(laps: Rows, setups: Setups, path: string): readonly InputProblem[] {
  const seen = new Map<string, Rows[number]['setup']>();
  return laps.flatMap(({ run, setup }, n): readonly InputProblem[] => {
    const first = seen.get(String(run)) ?? setup;
    seen.set(String(run), first);
    const wrong: InputProblem[] = [];
    if (JSON.stringify(first) !== JSON.stringify(setup))
      wrong.push({
        path: `${path}/${n}/setup`,
        expected: `one set-up in run ${run}, ${JSON.stringify(first)}`,
        got: JSON.stringify(setup),
        remedy: 'a change needs a stop: give the laps after it a run of their own',
      });
    if (typeof setup === 'string' && setups && !Object.hasOwn(setups, setup))
      wrong.push({
        path: `${path}/${n}/setup`,
        expected: `a set-up of "setups": ${Object.keys(setups).join(', ')}`,
        got: JSON.stringify(setup),
        remedy: 'say in "setups" which changes it has',
      });
    return wrong;
  });
}
