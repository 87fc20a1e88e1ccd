/**
 * The work of one choice of ways: every part of it comes off once and goes back once, every job is done once, each with
 * what it waits for. With the parts and ways that no plan can spare, the same gives what every plan must keep to.
 */
import type { Work, WorkJob, WorkPart, WorkStep } from './bare-work.ts';
import type { Postures } from './postures.ts';

export type Task = {
  readonly step: WorkStep;
  readonly posture: number; // -1 for any
  readonly next: readonly number[];
};

export type Choice = {
  readonly off: readonly WorkPart[];
  readonly jobs: readonly WorkJob[];
  readonly wayOf: (kind: 'part' | 'wish', id: string) => readonly string[];
  /** Only what holds for every plan is wanted: of two orders that both may do, none is chosen. */
  readonly sureOnly: boolean;
};

/** undefined when no order of taking each part off once serves: then something would have to come off twice. */
export const tasksOf = (work: Work, postures: Postures, choice: Choice): readonly Task[] | undefined => {
  const beside = new Set(work.start.off);
  const steps: { readonly step: WorkStep; readonly posture: number }[] = [];
  const index = new Map<string, number>();
  const add = (key: string, step: WorkStep, posture: string): void => {
    index.set(key, steps.length);
    steps.push({ step, posture: postures.of(posture) });
  };
  for (const p of choice.off) {
    if (!beside.has(p.id)) add(`off ${p.id}`, { step: 'remove', part: p.id, minutes: p.removeMin }, p.posture);
    add(`back ${p.id}`, { step: 'refit and verify', part: p.id, minutes: p.refitMin + p.verifyMin }, p.posture);
  }
  for (const j of choice.jobs) add(`job ${j.id}`, { step: 'job', job: j.id, minutes: j.minutes }, j.posture);

  const then = steps.map(() => new Set<number>());
  const edge = (first: string, next: string): void => {
    const a = index.get(first);
    const b = index.get(next);
    if (a !== undefined && b !== undefined) then[a]?.add(b);
  };
  for (const p of choice.off) {
    edge(`off ${p.id}`, `back ${p.id}`);
    for (const q of choice.wayOf('part', p.id)) {
      edge(`off ${q}`, `off ${p.id}`);
      edge(`off ${q}`, `back ${p.id}`); // it may lie off while what is in its way is on
      edge(`back ${p.id}`, `back ${q}`);
    }
  }
  for (const j of choice.jobs) {
    const job = `job ${j.id}`;
    for (const p of choice.wayOf('wish', j.id)) {
      edge(`off ${p}`, job);
      edge(job, `back ${p}`);
    }
    for (const other of j.after) edge(`job ${other}`, job);
    for (const p of j.invalidatedBy) edge(`off ${p}`, job);
    if (!j.needsComplete) continue;
    const kept = new Set(j.keepAfter);
    for (const p of choice.off) if (!kept.has(p.id)) edge(`back ${p.id}`, job);
  }
  if (!choice.sureOnly) placeWholes(choice, index, then, edge);
  return inOrder(then) ? steps.map((s, i) => ({ ...s, next: [...(then[i] ?? [])] })) : undefined;
};

/** A job that wants a part on is done after it is back; or before it comes off, where the part goes back later anyway. */
const placeWholes = (
  choice: Choice,
  index: ReadonlyMap<string, number>,
  then: readonly ReadonlySet<number>[],
  edge: (first: string, next: string) => void,
): void => {
  const off = new Set(choice.off.map(p => p.id));
  for (const j of choice.jobs)
    for (const p of new Set([...j.needsOn, ...(j.needsComplete ? j.keepAfter : [])])) {
      if (!off.has(p)) continue;
      const from = index.get(`job ${j.id}`) ?? -1;
      const later = index.has(`off ${p}`) && leads(then, from, index.get(`back ${p}`) ?? -1);
      if (later) edge(`job ${j.id}`, `off ${p}`);
      else edge(`back ${p}`, `job ${j.id}`);
    }
};

const leads = (then: readonly ReadonlySet<number>[], from: number, to: number): boolean => {
  const seen = new Set([from]);
  for (const at of seen) for (const next of then[at] ?? []) seen.add(next); // a set grows while it is walked
  return seen.has(to);
};

const inOrder = (then: readonly ReadonlySet<number>[]): boolean => {
  const waits = then.map(() => 0);
  for (const list of then) for (const b of list) waits[b] = (waits[b] ?? 0) + 1;
  const ready = waits.flatMap((w, i) => (w === 0 ? [i] : []));
  let placed = 0;
  for (let at = ready.pop(); at !== undefined; at = ready.pop()) {
    placed++;
    for (const b of then[at] ?? []) {
      waits[b] = (waits[b] ?? 0) - 1;
      if (waits[b] === 0) ready.push(b);
    }
  }
  return placed === then.length;
};
