/**
 * When closing up must begin. After each row the kart stands open so far: what lies off must go back, and what was opened
 * or disturbed must be made and checked. What that takes is counted as if nothing else were begun any more.
 */
import { disturbersOf, type Kart, postureMinutes } from '../kart/index.ts';
import type { Draft } from './draft.ts';
import { postureOf } from './order.ts';
import type { Job, Work } from './work.ts';

/** Minutes in which one person leaves the kart whole, after each row, by place: several are not reckoned to be quicker. */
export function closingAfter(kart: Kart, { work, table }: Draft): readonly number[] {
  const minutes = work.jobs.map(() => 0);
  for (const { placed, start, end } of table.rows) if ('job' in placed) minutes[placed.job] = end - start;
  const owedBy = owing(kart, work);
  const owed = new Set<number>(owedBy.flatMap((causes, n) => (causes === 'from the start' ? [n] : [])));
  const brings = work.jobs.map((): number[] => []);
  owedBy.forEach((causes, n) => {
    if (causes !== 'from the start') for (const cause of causes) brings[cause]?.push(n);
  });
  return table.rows.map(({ placed }) => {
    if ('job' in placed) {
      for (const n of brings[placed.job] ?? []) owed.add(n);
      owed.delete(placed.job);
    }
    // One turn of the kart for every posture that is still asked for, from wherever it takes longest.
    const postures = new Set([...owed].map(n => postureOf(work.jobs[n] as Job)).filter(one => one !== 'any'));
    const turns = [...postures].reduce((sum, one) => sum + postureMinutes(kart, undefined, one), 0);
    return [...owed].reduce((sum, n) => sum + (minutes[n] ?? 0), turns);
  });
}

/** For each job the jobs that, once done, make it part of closing up. */
function owing(kart: Kart, { jobs }: Work): readonly (readonly number[] | 'from the start')[] {
  const who = disturbersOf(kart);
  const index = new Map(jobs.map((job, n) => [job.key, n]));
  const at = (key: string): readonly number[] => {
    const n = index.get(key);
    return n === undefined ? [] : [n];
  };
  const changedBy = new Map<string, number[]>();
  jobs.forEach((job, n) => {
    if (job.is === 'item')
      for (const id of new Set([...job.item.disturbs, ...job.item.opens]))
        changedBy.set(id, [...(changedBy.get(id) ?? []), n]);
  });
  const causesOf = (item: Extract<Job, { item: unknown }>['item']): readonly number[] => [
    ...[...(who.parts.get(item.id) ?? [])].flatMap(part => at(`take-off ${part}`)),
    ...(item.joint === undefined ? [] : at(`take-off ${kart.joints[item.joint]?.part ?? ''}`)),
    ...(changedBy.get(item.id) ?? []),
  ];
  const ofItem = new Map(jobs.flatMap(job => ('item' in job ? [[job.item.id, causesOf(job.item)] as const] : [])));
  return jobs.map(job => {
    if ('item' in job) return ofItem.get(job.item.id) ?? [];
    if (job.is === 'take-off') return [];
    const off = at(`take-off ${job.part.id}`);
    return off.length === 0 ? 'from the start' : off;
  });
}
