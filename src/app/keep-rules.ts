/** Which of the backups stay: the newest of each of the last days, weeks and months that have one (UTC, weeks from Monday, ISO 8601). */
export type KeepRules = { readonly daily: number; readonly weekly: number; readonly monthly: number };

/** A week to notice a mistake of yesterday, a month for one of a week, a year for the season. Common practice. */
export const KEEP: KeepRules = { daily: 7, weekly: 4, monthly: 12 };

const DAY_MS = 86_400_000;
const PERIODS: Readonly<Record<keyof KeepRules, (instant: string) => string | number>> = {
  daily: instant => instant.slice(0, 10),
  weekly: mondayOf,
  monthly: instant => instant.slice(0, 7),
};

/** @param instants RFC 3339 in UTC. The newest is always kept. */
export function noLongerKept(instants: readonly string[], rules: KeepRules): readonly string[] {
  const newestFirst = [...new Set(instants)].sort().reverse();
  const kept = new Set(newestFirst.slice(0, 1));
  for (const period of ['daily', 'weekly', 'monthly'] as const) {
    const seen = new Set<string | number>();
    for (const instant of newestFirst) {
      const name = PERIODS[period](instant);
      if (seen.has(name) || seen.size >= rules[period]) continue;
      seen.add(name);
      kept.add(instant);
    }
  }
  return newestFirst.filter(instant => !kept.has(instant));
}

/** "7 daily, 4 weekly, 12 monthly"; what is not named is 0. Undefined when it says anything else. */
export function keepRulesIn(text: string): KeepRules | undefined {
  const rules: Record<keyof KeepRules, number> = { daily: 0, weekly: 0, monthly: 0 };
  for (const one of text.split(',')) {
    const [, count, period] = /^\s*(\d{1,4}) (daily|weekly|monthly)\s*$/.exec(one) ?? [];
    if (count === undefined || period === undefined) return undefined;
    rules[period as keyof KeepRules] = Number(count);
  }
  return rules;
}

/** Days since 1970-01-01, a Thursday, of the Monday on or before. */
function mondayOf(instant: string): number {
  const day = Math.floor(Date.parse(instant) / DAY_MS);
  return day - ((((day + 3) % 7) + 7) % 7);
}
