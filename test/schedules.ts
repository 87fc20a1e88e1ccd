/** What the tests of schedules share: a checker that shares no thought with the search, and problems at random. */
import fc from 'fast-check';
import type { Activity, Schedule, ScheduleProblem } from '../src/prep/schedule/index.ts';

export const EFFORT = { schedules: 120, seed: 7 };

/** All that is wrong with a schedule, found tick by tick and pair by pair, not as the search does it. */
export function faults(problem: ScheduleProblem, { start, makespan, bound, kart }: Schedule): string[] {
  const { activities, capacity } = problem;
  const found: string[] = [];
  const say = (is: boolean, what: string): void => void (is && found.push(what));
  const end = (i: number): number => (start[i] ?? Number.NaN) + (activities[i]?.ticks ?? Number.NaN);
  const runs = (i: number, t: number): boolean => (start[i] ?? Number.NaN) <= t && t < end(i);
  say(start.length !== activities.length, 'not every activity has a start');
  say(makespan !== Math.max(0, ...activities.map((_, i) => end(i))), 'the makespan is not the last end');
  say(bound.ticks > makespan, 'the bound is above the makespan');
  activities.forEach((a, i) => {
    say(!((start[i] ?? -1) >= 0), `${a.id} starts before the start`);
    for (const j of a.after) say(end(j) > (start[i] ?? -1), `${a.id} starts before ${activities[j]?.id} ends`);
  });
  for (let t = 0; t < makespan; t++)
    for (const [r, c] of capacity.entries()) {
      const used = activities.reduce((sum, a, i) => sum + (runs(i, t) ? (a.needs[r] ?? 0) : 0), 0);
      say(used > c, `resource ${r} is used ${used} of ${c} at ${t}`);
    }
  if (!problem.kart || !kart) return [...found, ...(problem.kart || kart ? ['the kart is missing on one side'] : [])];

  const people = (i: number): readonly number[] => kart.people[i] ?? [];
  let posture = problem.kart.posture;
  const stands: number[] = []; // posture at each tick, -2 while it changes
  for (let t = 0; t <= makespan; t++) {
    const change = kart.changes.find(c => c.at <= t && t < c.at + c.ticks);
    for (const c of kart.changes) if (c.at + c.ticks === t) posture = c.to;
    stands[t] = change ? -2 : posture;
  }
  const ends = (problem.kart.windows ?? [])
    .slice(0, -1)
    .map((_, k, all) => all.slice(0, k + 1).reduce((x, y) => x + y, 0));
  activities.forEach((a, i) => {
    say(people(i).length !== (a.crew ?? 1), `${a.id} has ${people(i).length} people`);
    say(new Set(people(i)).size !== people(i).length, `${a.id} has someone twice`);
    say(
      people(i).some(p => p >= (problem.kart?.people ?? 0)),
      `${a.id} is done by someone who is not there`,
    );
    for (let t = start[i] ?? 0; t < end(i); t++)
      say(
        stands[t] === -2 || (a.postures !== undefined && !a.postures.includes(stands[t] ?? -2)),
        `${a.id} at ${t} in ${stands[t]}`,
      );
    say(
      ends.some(e => (start[i] ?? 0) < e && e < end(i)),
      `${a.id} goes over the end of a window`,
    );
    activities.forEach((b, j) => {
      const beside = j < i && a.ticks > 0 && b.ticks > 0 && (start[i] ?? 0) < end(j) && (start[j] ?? 0) < end(i);
      say(beside && people(i).some(p => people(j).includes(p)), `${a.id} and ${b.id} share a person`);
    });
    const first = a.looksAt;
    if (first === undefined || kart.tooSoon.includes(i)) return;
    const same = people(i).some(p => people(first).includes(p));
    const between = activities.some(
      (_, j) => j !== i && j !== first && (start[j] ?? 0) >= end(first) && end(j) <= (start[i] ?? 0),
    );
    say(same && !between, `${a.id} follows its first look by the same hand`);
    say(same && (problem.kart?.people ?? 1) - people(first).length >= (a.crew ?? 1), `${a.id} could be someone else's`);
  });
  return found;
}

/** The shortest makespan of all orders, each activity as early as it can: some order gives the best there is. */
export function shortest({ activities, capacity }: ScheduleProblem): number {
  let best = Number.POSITIVE_INFINITY;
  const go = (starts: ReadonlyMap<number, number>, last: number): void => {
    if (last >= best) return;
    if (starts.size === activities.length) {
      best = last;
      return;
    }
    activities.forEach((a, i) => {
      if (starts.has(i) || a.after.some(j => !starts.has(j))) return;
      let t = Math.max(0, ...a.after.map(j => (starts.get(j) ?? 0) + (activities[j]?.ticks ?? 0)));
      const fits = (at: number): boolean =>
        capacity.every((c, r) => {
          let most = 0;
          for (let q = at; q < at + a.ticks; q++) {
            let used = a.needs[r] ?? 0;
            for (const [j, s] of starts) {
              const b = activities[j] as Activity;
              if (s <= q && q < s + b.ticks) used += b.needs[r] ?? 0;
            }
            most = Math.max(most, used);
          }
          return most <= c;
        });
      while (!fits(t)) t++;
      go(new Map([...starts, [i, t]]), Math.max(last, t + a.ticks));
    });
  };
  go(new Map(), 0);
  return best;
}

export const plainProblems = (most: number): fc.Arbitrary<ScheduleProblem> =>
  fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 5 }).chain(capacity =>
    fc
      .array(
        fc.record({
          ticks: fc.integer({ min: 0, max: 9 }),
          needs: fc.tuple(...capacity.map(c => fc.integer({ min: 0, max: c }))),
          links: fc.array(fc.nat({ max: 30 }), { maxLength: 3 }),
        }),
        { minLength: 1, maxLength: most },
      )
      .map(all => ({
        capacity,
        activities: all.map(({ ticks, needs, links }, i) => ({
          id: `a${i}`,
          ticks,
          needs,
          after: i === 0 ? [] : [...new Set(links.map(l => l % i))],
        })),
      })),
  );

export const kartProblems: fc.Arbitrary<ScheduleProblem> = fc
  .record({
    rows: fc.array(
      fc.record({
        ticks: fc.integer({ min: 0, max: 12 }),
        tool: fc.boolean(),
        crew: fc.integer({ min: 1, max: 2 }),
        postures: fc.constantFrom(undefined, undefined, [0], [1], [2], [0, 1]),
        links: fc.array(fc.nat({ max: 30 }), { maxLength: 2 }),
        looks: fc.boolean(),
      }),
      { minLength: 1, maxLength: 14 },
    ),
    people: fc.integer({ min: 1, max: 3 }),
    posture: fc.integer({ min: -1, max: 2 }),
    windows: fc.option(fc.array(fc.integer({ min: 5, max: 40 }), { minLength: 1, maxLength: 3 }), { nil: undefined }),
  })
  .map(({ rows, people, posture, windows }) => ({
    capacity: [1],
    activities: rows.map(({ ticks, tool, crew, postures, links, looks }, i) => {
      const after = i === 0 ? [] : [...new Set(links.map(l => l % i))];
      return {
        id: `row ${i}`,
        ticks,
        needs: [tool ? 1 : 0],
        after,
        crew: Math.min(crew, people),
        ...(postures === undefined ? {} : { postures }),
        ...(looks && after[0] !== undefined ? { looksAt: after[0] } : {}),
      };
    }),
    kart: {
      people,
      posture,
      unknown: [3, 4, 5],
      change: [
        [0, 3, 4],
        [3, 0, 5],
        [4, 5, 0],
      ],
      ...(windows ? { windows } : {}),
    },
  }));
