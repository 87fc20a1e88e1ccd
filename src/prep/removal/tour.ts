/**
 * An order of tasks with few minutes of posture changes: whatever can be done in the posture the kart stands in is done
 * before it changes, and of the changes the most promising few are followed side by side.
 */
import type { Postures } from './postures.ts';
import type { Task } from './tasks.ts';

export type Tour = {
  /** Numbers of tasks in their order, between them postures as -1 - posture. */
  readonly order: readonly number[];
  /** Minutes of the changes alone. */
  readonly minutes: number;
};

type Stand = {
  readonly posture: number;
  readonly minutes: number;
  readonly waits: Uint16Array;
  readonly ready: readonly number[];
  readonly left: number;
  readonly least: number;
  readonly order: Link | undefined;
};
type Link = { readonly here: readonly number[]; readonly before: Link | undefined };

/** Stands followed side by side: many for a small problem, few for a large one. */
const widthFor = (tasks: number): number => Math.max(2, Math.min(40, Math.round(8_000 / (tasks + 1))));

/** Of tasks that have an order. */
export const tour = (tasks: readonly Task[], postures: Postures, start: number, end: number): Tour => {
  const tail = tails(tasks, postures, end);
  const waits = new Uint16Array(tasks.length);
  for (const task of tasks) for (const b of task.next) waits[b] = (waits[b] ?? 0) + 1;
  const ready = [...waits].flatMap((w, i) => (w === 0 ? [i] : []));
  const width = widthFor(tasks.length);
  let best: Stand | undefined;
  const total = (s: Stand): number => s.minutes + (end < 0 ? 0 : postures.minutes(s.posture, end));
  let stands = [work({ posture: start, minutes: 0, waits, ready, left: tasks.length, least: 0, order: undefined })];
  while (stands.length > 0) {
    const next: Stand[] = [];
    for (const s of stands) {
      if (s.left === 0) {
        if (!best || total(s) < total(best)) best = s;
        continue;
      }
      for (const posture of new Set(s.ready.map(i => tasks[i]?.posture ?? -1)))
        next.push(
          work({
            ...s,
            posture,
            minutes: s.minutes + postures.minutes(s.posture, posture),
            order: { here: [-1 - posture], before: s.order },
          }),
        );
    }
    const limit = best ? total(best) : Number.POSITIVE_INFINITY;
    stands = next
      .filter(s => s.least < limit)
      .sort((a, b) => a.least - b.least || a.left - b.left)
      .slice(0, width);
  }
  const pieces: (readonly number[])[] = [];
  for (let link = best?.order; link; link = link.before) pieces.push(link.here);
  return { order: pieces.reverse().flat(), minutes: best ? total(best) : 0 };

  /** Does all that can be done as the kart stands. */
  function work(s: Stand): Stand {
    const waitsNow = s.waits.slice();
    const here: number[] = [];
    const later: number[] = [];
    const queue = [...s.ready];
    for (let at = 0; at < queue.length; at++) {
      const i = queue[at] as number;
      const task = tasks[i];
      if (!task) continue;
      if (task.posture >= 0 && task.posture !== s.posture) {
        later.push(i);
        continue;
      }
      here.push(i);
      for (const b of task.next) {
        const w = (waitsNow[b] ?? 0) - 1;
        waitsNow[b] = w;
        if (w === 0) queue.push(b);
      }
    }
    const least = later.reduce((most, i) => Math.max(most, tail[i]?.[s.posture] ?? 0), 0);
    return {
      ...s,
      waits: waitsNow,
      ready: later,
      left: s.left - here.length,
      least: s.minutes + least,
      order: here.length > 0 ? { here, before: s.order } : s.order,
    };
  }
};

/** No order of these tasks changes posture in fewer minutes: the longest row of them that must follow each other. */
export const leastChanges = (tasks: readonly Task[], postures: Postures, start: number, end: number): number => {
  const set = tasks.reduce((all, t) => (t.posture >= 0 ? all | (1 << t.posture) : all), 0);
  const chain = tails(tasks, postures, end).reduce((most, tail) => Math.max(most, tail[start] ?? 0), 0);
  return Math.max(chain, postures.through(start, set, end));
};

/** For each task and posture the kart stands in before it: the least minutes of changes from then on. */
const tails = (tasks: readonly Task[], postures: Postures, end: number): readonly (readonly number[])[] => {
  const tail: number[][] = tasks.map(() => []);
  for (const i of lastFirst(tasks)) {
    const task = tasks[i];
    if (!task) continue;
    const from = Array.from({ length: postures.count }, (_, posture) => {
      const behind = task.next.reduce((most, b) => Math.max(most, tail[b]?.[posture] ?? 0), 0);
      return Math.max(behind, end < 0 ? 0 : postures.minutes(posture, end));
    });
    tail[i] = from.map((rest, posture) =>
      task.posture < 0 ? rest : postures.minutes(posture, task.posture) + (from[task.posture] ?? 0),
    );
  }
  return tail;
};

/** Each task after all that follow it. */
const lastFirst = (tasks: readonly Task[]): readonly number[] => {
  const order: number[] = [];
  const waits = tasks.map(task => task.next.length);
  const before: number[][] = tasks.map(() => []);
  tasks.forEach((task, i) => {
    for (const b of task.next) before[b]?.push(i);
    if (task.next.length === 0) order.push(i);
  });
  for (const at of order)
    for (const a of before[at] ?? []) {
      const w = (waits[a] ?? 0) - 1;
      waits[a] = w;
      if (w === 0) order.push(a); // an array grows while it is walked
    }
  return order;
};
