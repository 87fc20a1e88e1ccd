/** For the tests of removal: random small work, a walk through every state of the kart, and steps taken one by one. */
import fc from 'fast-check';
import type { Work, WorkJob, WorkStep } from '../src/prep/removal/bare-work.ts';
import type { Access } from '../src/prep/removal/least.ts';

export const POSTURES = ['stand', 'ground', 'scales'];

/** Work of a few parts and jobs with all that a problem may say, circles included. */
export const randomWork = (parts = 4, jobs = 4): fc.Arbitrary<Work> => {
  const part = fc.nat(parts - 1).map(n => `p${n}`);
  const some = (of: fc.Arbitrary<string>, most: number) => fc.uniqueArray(of, { maxLength: most });
  const seldom = <T>(of: fc.Arbitrary<T>, else_: T) => fc.oneof({ weight: 4, arbitrary: fc.constant(else_) }, of);
  const ways: fc.Arbitrary<Access> = fc.array(fc.uniqueArray(part, { minLength: 1, maxLength: 2 }), { maxLength: 2 });
  const posture = fc.constantFrom('any', ...POSTURES);
  const minutes = fc.integer({ min: 0, max: 9 });
  return fc.record({
    parts: fc.tuple(
      ...Array.from({ length: parts }, (_, n) =>
        fc.record({
          id: fc.constant(`p${n}`),
          access: ways.map(list => (n % 2 === 0 ? list.filter(way => way.every(p => p < `p${n}`)) : list)),
          removeMin: minutes,
          refitMin: minutes,
          verifyMin: minutes,
          posture,
        }),
      ),
    ),
    jobs: fc.tuple(
      ...Array.from({ length: jobs }, (_, n) =>
        fc.record({
          id: fc.constant(`j${n}`),
          minutes,
          posture,
          tier: fc.nat(2),
          value: fc.integer({ min: 1, max: 4 }),
          severity: fc.option(fc.integer({ min: 1, max: 2 }), { nil: undefined }),
          needsRemoved: ways,
          needsOn: seldom(some(part, 2), []),
          after: seldom(
            some(
              fc.nat(jobs - 1).map(k => `j${k}`),
              1,
            ).map(list => list.filter(k => k < `j${n}`)),
            [],
          ),
          needsComplete: seldom(fc.boolean(), false),
          keepAfter: some(part, 2),
          invalidatedBy: seldom(some(part, 2), []),
        }),
      ),
    ),
    postures: fc.constant(POSTURES),
    change: fc
      .array(minutes, { minLength: 9, maxLength: 9 })
      .map(list =>
        Object.fromEntries(
          POSTURES.map((a, i) => [
            a,
            Object.fromEntries(POSTURES.map((b, k) => [b, i === k ? 0 : (list[3 * i + k] ?? 0)])),
          ]),
        ),
      ),
    start: fc.record({
      posture: fc.constantFrom(...POSTURES),
      off: seldom(some(part, 2), []),
      done: seldom(fc.constant<string[]>(['j0']), []),
    }),
    end: posture,
  });
};

type Kart = { readonly off: ReadonlySet<string>; readonly done: ReadonlySet<string>; readonly posture: string };

const open = (access: Access, off: ReadonlySet<string>): boolean =>
  access.length === 0 || access.some(way => way.every(p => off.has(p)));

/** The kart after a step, undefined when the step may not be done. The rules as they are told, not as they are solved. */
const afterStep = (work: Work, kart: Kart, step: WorkStep): Kart | undefined => {
  const fits = (posture: string) => posture === 'any' || posture === kart.posture;
  if (step.step === 'posture') return { ...kart, posture: step.posture };
  if (step.step === 'job') {
    const job = work.jobs.find(j => j.id === step.job);
    if (!job || kart.done.has(job.id) || !fits(job.posture) || !open(job.needsRemoved, kart.off)) return undefined;
    if (job.needsComplete && kart.off.size > 0) return undefined;
    if (job.needsOn.some(p => kart.off.has(p)) || job.after.some(k => !kart.done.has(k))) return undefined;
    return { ...kart, done: new Set([...kart.done, job.id]) };
  }
  const part = work.parts.find(p => p.id === step.part);
  if (!part || !fits(part.posture)) return undefined;
  const others = new Set([...kart.off].filter(p => p !== part.id));
  if (!open(part.access, others)) return undefined;
  if (step.step === 'refit and verify') return kart.off.has(part.id) ? { ...kart, off: others } : undefined;
  const spoils = (j: WorkJob) => (j.needsComplete ? !j.keepAfter.includes(part.id) : j.invalidatedBy.includes(part.id));
  if (kart.off.has(part.id) || work.jobs.some(j => kart.done.has(j.id) && spoils(j))) return undefined;
  return { ...kart, off: new Set([...kart.off, part.id]) };
};

const startOf = (work: Work): Kart => ({
  off: new Set(work.start.off),
  done: new Set(work.start.done),
  posture: work.start.posture,
});

/** What is wrong with these steps: undefined when they can be taken one by one and end closed with `wanted` done. */
export const wrongWith = (work: Work, wanted: readonly string[], taken: readonly WorkStep[]): string | undefined => {
  let kart: Kart | undefined = startOf(work);
  for (const step of taken) {
    const before: Kart = kart;
    kart = afterStep(work, before, step);
    if (!kart) return `cannot ${JSON.stringify(step)} with ${[...before.off]} off and ${[...before.done]} done`;
  }
  if (kart.off.size > 0) return `left off: ${[...kart.off]}`;
  if (work.end !== 'any' && kart.posture !== work.end) return `left on the ${kart.posture}`;
  const missing = wanted.filter(id => !kart?.done.has(id));
  return missing.length > 0 ? `not done: ${missing}` : undefined;
};

/** Least minutes of every set of jobs that can be closed up after, by walking through every state (Dijkstra's way). */
export const everySet = (work: Work): ReadonlyMap<string, number> => {
  const steps: WorkStep[] = [
    ...work.parts.map(p => ({ step: 'remove', part: p.id, minutes: p.removeMin }) as const),
    ...work.parts.map(p => ({ step: 'refit and verify', part: p.id, minutes: p.refitMin + p.verifyMin }) as const),
    ...work.jobs.map(j => ({ step: 'job', job: j.id, minutes: j.minutes }) as const),
    ...work.postures.map(posture => ({ step: 'posture', posture, minutes: 0 }) as const),
  ];
  const key = (k: Kart) => `${[...k.off].sort()}|${[...k.done].sort()}|${k.posture}`;
  const kept = new Map<string, number>();
  const byMinutes: Kart[][] = [[startOf(work)]];
  const sets = new Map<string, number>();
  for (let minutes = 0; minutes < byMinutes.length; minutes++)
    for (const kart of byMinutes[minutes] ?? []) {
      if (kept.has(key(kart))) continue;
      kept.set(key(kart), minutes);
      if (kart.off.size === 0 && (work.end === 'any' || work.end === kart.posture)) {
        const set = [...kart.done].sort().join(' ');
        if (!sets.has(set)) sets.set(set, minutes);
      }
      for (const step of steps) {
        const next = afterStep(work, kart, step);
        if (!next) continue;
        const takes = step.step === 'posture' ? (work.change[kart.posture]?.[step.posture] ?? 0) : step.minutes;
        const list = byMinutes[minutes + takes] ?? [];
        byMinutes[minutes + takes] = list;
        list.push(next);
      }
    }
  return sets;
};
