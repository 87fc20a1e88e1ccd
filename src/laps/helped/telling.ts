/** What no method can tell from these runs, and why. */

import type { Placed } from './columns.ts';
import type { NotTold } from './helped.ts';

/** How often the change came or went from one run that counts to the next. */
export function switchesOf(laps: readonly Pick<Placed, 'run' | 'on'>[], change: string): number {
  const has = [...new Map(laps.map(({ run, on }) => [run, on.includes(change)])).values()];
  return has.filter((is, n) => n > 0 && is !== has[n - 1]).length;
}

export function againstTelling(laps: readonly Placed[], changes: readonly string[]): NotTold | undefined {
  const not = (why: NotTold['why'], say: string): NotTold => ({ kind: 'not told', why, say });
  if (changes.length === 0) return not('no change', 'Every run has the same set-up: there is no change to judge.');
  for (const change of changes) {
    const withIt = laps.filter(({ on }) => on.includes(change)).length;
    if (withIt === 0) return not('too few laps', `No lap that counts was driven with ${change}.`);
    if (withIt === laps.length)
      return not('never without', `Every lap that counts was driven with ${change}: drive some without it.`);
  }
  const together = dependent(laps, changes);
  if (together)
    return not(
      'always together',
      `${listed(together)} came and went together, so that no lap tells one from the other. Drive a run with one of them alone.`,
    );
  if (laps.length < changes.length + 4)
    return not('too few laps', `${laps.length} laps count; ${changes.length + 4} are the least for this.`);
  return undefined;
}

/** The first change whose column is made of others, with those; the base is a column without a name. */
function dependent(laps: readonly Placed[], changes: readonly string[]): readonly string[] | undefined {
  const names = ['', ...changes];
  const kept: { readonly rest: readonly number[]; readonly made: readonly number[] }[] = [];
  for (const [n, name] of names.entries()) {
    const full = laps.map(({ on }) => (name === '' || on.includes(name) ? 1 : 0));
    let rest: readonly number[] = full;
    let made: readonly number[] = names.map((_, k) => (k === n ? 1 : 0));
    for (const { rest: base, made: of } of kept) {
      const share = dot(rest, base) / dot(base, base);
      rest = rest.map((each, k) => each - share * (base[k] as number));
      made = made.map((each, k) => each - share * (of[k] as number));
    }
    if (dot(rest, rest) < 1e-9 * dot(full, full))
      return names.filter((each, k) => each !== '' && Math.abs(made[k] as number) > 1e-6);
    kept.push({ rest, made });
  }
  return undefined;
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, each, n) => sum + each * (b[n] as number), 0);

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
