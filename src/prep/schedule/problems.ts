/** What stands against a problem, all at once: circles, what can never run, numbers that are none. */
import type { InputProblem } from '../../numbers/index.ts';
import type { Activity, AtTheKart, ScheduleProblem } from './model.ts';
import { sort } from './pack.ts';

/** One profile of this many ticks fits in memory everywhere. */
const MOST_TICKS = 2_000_000;
const MOST_ACTIVITIES = 20_000;
const MOST_CAPACITY = 2 ** 30;

export function problemsOf(problem: ScheduleProblem): readonly InputProblem[] {
  const { activities, capacity, kart, order } = problem;
  const n = activities.length;
  if (n > MOST_ACTIVITIES)
    return [wrong('activities', `at most ${MOST_ACTIVITIES}`, `${n}`, 'plan it in parts that wait for each other')];
  const found: InputProblem[] = [];
  capacity.forEach((c, r) => {
    if (!isWhole(c) || c > MOST_CAPACITY)
      found.push(
        wrong(`capacity/${r}`, `a whole number from 0 to ${MOST_CAPACITY}`, `${c}`, 'count how many there are'),
      );
  });
  if (kart !== undefined) found.push(...kartProblems(kart));
  activities.forEach((activity, i) => {
    found.push(...activityProblems(activity, `activities/${i}`, problem));
  });
  if (found.length > 0) return found;
  const sum = activities.reduce((all, a) => all + a.ticks, 0);
  if (sum > MOST_TICKS)
    found.push(wrong('activities', `at most ${MOST_TICKS} ticks in all`, `${sum}`, 'count in a coarser unit of time'));
  found.push(...circleProblems(activities));
  if (order !== undefined && new Set(order.filter(i => isPlace(i, n))).size !== n)
    found.push(wrong('order', 'every activity once', `${order.length} of ${n}`, 'list each, or leave the order out'));
  return found;
}

function activityProblems(a: Activity, path: string, { activities, capacity, kart }: ScheduleProblem): InputProblem[] {
  const found: InputProblem[] = [];
  if (!isWhole(a.ticks))
    found.push(wrong(`${path}/ticks`, 'a whole number, 0 or more', `${a.ticks}`, 'count in a finer unit of time'));
  if (a.needs.length !== capacity.length)
    found.push(
      wrong(
        `${path}/needs`,
        `${capacity.length} numbers, one a resource`,
        `${a.needs.length}`,
        'write 0 where it needs none',
      ),
    );
  a.needs.forEach((x, r) => {
    const c = capacity[r];
    if (!isWhole(x))
      found.push(wrong(`${path}/needs/${r}`, 'a whole number, 0 or more', `${x}`, 'count what it takes'));
    else if (c !== undefined && x > c)
      found.push(
        wrong(`${path}/needs/${r}`, `at most the ${c} there are`, `${x}`, 'it can never run: get more, or need less'),
      );
  });
  for (const i of a.after)
    if (!isPlace(i, activities.length))
      found.push(
        wrong(`${path}/after`, `places from 0 to ${activities.length - 1}`, `${i}`, 'name an activity of the list'),
      );
  if (kart === undefined) return found;
  const crew = a.crew ?? 1;
  if (!isWhole(crew) || crew > kart.people)
    found.push(wrong(`${path}/crew`, `at most the ${kart.people} people there are`, `${crew}`, 'ask someone to help'));
  if (a.postures?.length === 0 || a.postures?.some(p => !isPlace(p, kart.change.length)))
    found.push(
      wrong(`${path}/postures`, 'postures that are known', JSON.stringify(a.postures), 'name one, or leave it out'),
    );
  if (a.looksAt !== undefined && !a.after.includes(a.looksAt))
    found.push(wrong(`${path}/looksAt`, 'an activity that it comes after', `${a.looksAt}`, 'add it to "after"'));
  return found;
}

function kartProblems({ people, change, posture, unknown, windows }: AtTheKart): InputProblem[] {
  const found: InputProblem[] = [];
  if (!(people === 1 || people === 2 || people === 3))
    found.push(wrong('kart/people', '1, 2 or 3', `${people}`, 'say how many work at the kart'));
  if (
    !change.every((row, p) => row.length === change.length && row.every(isWhole) && row[p] === 0) ||
    unknown.length !== change.length ||
    !unknown.every(isWhole)
  )
    found.push(
      wrong('kart/change', 'ticks from each posture to each, 0 to itself', JSON.stringify(change), 'fill the table'),
    );
  if (posture !== -1 && !isPlace(posture, change.length))
    found.push(wrong('kart/posture', 'a posture of the table, or -1', `${posture}`, 'look how it stands'));
  if (windows?.some(w => !isWhole(w)))
    found.push(
      wrong('kart/windows', 'working ticks, 0 or more', JSON.stringify(windows), 'leave out a window that is over'),
    );
  return found;
}

function circleProblems(activities: readonly Activity[]): readonly InputProblem[] {
  const before = activities.map(a => [...new Set(a.after)]);
  const next: number[][] = before.map(() => []);
  before.forEach((list, i) => {
    for (const j of list) next[j]?.push(i);
  });
  const sorted = new Set(sort(before, next));
  if (sorted.size === activities.length) return [];
  const left = activities.flatMap((a, i) => (sorted.has(i) ? [] : [a.id]));
  const names = left.slice(0, 5).join(', ') + (left.length > 5 ? ` and ${left.length - 5} more` : '');
  return [
    wrong('activities', 'an order without a circle', `one among ${names}`, 'take out what makes one wait for itself'),
  ];
}

const wrong = (path: string, expected: string, got: string, remedy: string): InputProblem => ({
  path,
  expected,
  got,
  remedy,
});
const isWhole = (x: number): boolean => Number.isSafeInteger(x) && x >= 0;
const isPlace = (i: number, n: number): boolean => isWhole(i) && i < n;
