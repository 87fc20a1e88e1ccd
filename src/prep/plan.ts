/**
 * The plan: due items, all that follows from them, in an order that keeps every rule of work.ts, with what was left out
 * when the window is too short and what lies open anyway. A pure function of kart, state and a moment that is passed in.
 */
import type { KartEvent, State } from '../book/index.ts';
import { GRADES, type Item, type Kart, type PartId, replacesPart } from '../kart/index.ts';
import { standing } from '../life/index.ts';
import { dueList, horizonOver } from './due.ts';
import type { Due, LeftOut, Plan, Step, WhileOpen } from './model.ts';
import { minutesOf, order, type Placed, POSTURE_MINUTES, postureOf } from './order.ts';
import { bareStep, doneSteps, postureStep, stepOf } from './step.ts';
import { type Job, partMinutes, type Work, workFor } from './work.ts';

export type PlanAsk = {
  readonly now: string;
  readonly event?: KartEvent;
  /** Minutes there are. Without it everything due is planned. */
  readonly minutes?: number;
};

export const makePlan = (kart: Kart, state: State, ask: PlanAsk): Plan => {
  const due = dueList(kart, state, ask);
  const chosen = choose(kart, state, due, ask.minutes);
  const { work } = chosen;
  const done = doneSteps(kart, state, ask.now);
  const steps = [...done, ...number(kart, state, chosen, done.length)];
  return {
    kart: kart.name,
    event: ask.event?.event ?? null,
    minutes: chosen.minutes,
    bound: bound(kart, state, work),
    window: ask.minutes ?? null,
    safetyShortBy: chosen.safetyShortBy,
    leftOut: chosen.leftOut,
    whileOpen: whileOpen(kart, state, work, ask),
    steps,
  };
};

type Draft = { readonly work: Work; readonly placed: readonly Placed[]; readonly minutes: number };
type Chosen = Draft & { readonly leftOut: readonly LeftOut[]; readonly safetyShortBy: number | null };

const draft = (kart: Kart, state: State, due: readonly Due[]): Draft => {
  const work = workFor(kart, state, due);
  const placed = order(work, state.posture);
  const minutes = placed.reduce(
    (sum, p) => sum + ('posture' in p ? POSTURE_MINUTES : minutesOf(work.jobs[p.job] as Job)),
    0,
  );
  return { work, placed, minutes };
};

/** All safety work always; then reliability, performance, cosmetics, within each the most items in the minutes left. */
const choose = (kart: Kart, state: State, due: readonly Due[], window: number | undefined): Chosen => {
  const all = draft(kart, state, due);
  if (window === undefined || all.minutes <= window) return { ...all, leftOut: [], safetyShortBy: null };
  let taken = due.filter(d => d.grade === 'safety');
  let current = draft(kart, state, taken);
  const safetyShortBy = current.minutes > window ? current.minutes - window : null;
  const leftOut: LeftOut[] = [];
  const rest = due
    .filter(d => d.grade !== 'safety')
    .sort((a, b) => GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade) || itemMinutes(kart, a) - itemMinutes(kart, b));
  for (const d of rest) {
    const more = draft(kart, state, [...taken, d]);
    if (safetyShortBy === null && more.minutes <= window) {
      taken = [...taken, d];
      current = more;
    } else if (!current.work.jobs.some(j => 'item' in j && j.item.id === d.item))
      leftOut.push({
        item: d.item,
        title: d.title,
        grade: d.grade,
        minutes: more.minutes - current.minutes,
        consequence: consequence(d),
      });
  }
  return { ...current, leftOut, safetyShortBy };
};

const itemMinutes = (kart: Kart, d: Due): number => kart.items[d.item]?.minutes ?? 0;

const consequence = (d: Due): string =>
  d.ahead
    ? `It may run past its life during the event. ${d.why}`
    : `It goes to the event as the record leaves it. ${d.why}`;

const number = (kart: Kart, state: State, { work, placed }: Draft, from: number): Step[] => {
  const numberOf = new Map<number, number>();
  placed.forEach((p, i) => {
    if ('job' in p) numberOf.set(p.job, from + i + 1);
  });
  let lastPosture: number | undefined;
  let wasOnSide = state.posture === 'side';
  let offSide = false; // the last change of posture took the kart off its side, for which all work waits
  return placed.map((p, i) => {
    const n = from + i + 1;
    if ('posture' in p) {
      lastPosture = n;
      offSide = wasOnSide;
      wasOnSide = p.posture === 'side';
      return postureStep(n, p.posture, i === 0);
    }
    const job = work.jobs[p.job] as Job;
    const after = (work.before[p.job] ?? []).flatMap(b => numberOf.get(b) ?? []);
    if (lastPosture !== undefined && (offSide || postureOf(job) !== 'any')) after.push(lastPosture);
    after.sort((a, b) => a - b);
    return stepOf(kart, state, job, { ...bareStep, n, after, state: after.length === 0 ? 'ready' : 'waiting' });
  });
};

/**
 * No plan for this work takes less: the minutes of every item and second look, of every part that no way in can spare,
 * and one change for every posture but one that some job cannot do without.
 */
const bound = (kart: Kart, state: State, work: Work): number => {
  let sum = 0;
  const postures = new Set<string>();
  for (const job of work.jobs) {
    const sure = !('part' in job) || isForced(kart, state, work, job.part.id);
    if (!sure) continue;
    sum += minutesOf(job);
    const posture = postureOf(job);
    if (posture !== 'any' && posture !== state.posture) postures.add(posture);
  }
  return sum + postures.size * POSTURE_MINUTES;
};

/** Must it come off whatever way is taken? It lies off already, or some item or forced part has it in every alternative. */
const isForced = (kart: Kart, state: State, work: Work, id: PartId, seen: ReadonlySet<PartId> = new Set()): boolean => {
  if (state.parts[id]?.on === false) return true;
  if (seen.has(id)) return false;
  const within = new Set([...seen, id]);
  const inEvery = (ways: readonly (readonly PartId[])[]): boolean => ways.length > 0 && ways.every(w => w.includes(id));
  return (
    work.jobs.some(j => j.is === 'item' && inEvery(j.item.needsOff)) ||
    [...work.off].some(p => inEvery(kart.parts[p]?.behind ?? []) && isForced(kart, state, work, p, within))
  );
};

/** What lies open in this plan anyway and runs out within the two events after the next. */
const whileOpen = (kart: Kart, state: State, work: Work, ask: PlanAsk): WhileOpen[] => {
  if (!ask.event) return [];
  const planned = new Set(work.jobs.flatMap(j => ('item' in j ? [j.item.id] : [])));
  const ahead = horizonOver(ask.now, ask.event, 3);
  return Object.values(kart.items).flatMap(item => {
    const way = openWay(item, work.off);
    if (planned.has(item.id) || !way || (replacesPart(item) && !work.off.has(item.part))) return [];
    const s = standing(kart, state, item, ahead);
    if (s.holds || !s.ahead) return [];
    const saves = way.reduce((sum, p) => sum + partMinutes(kart, p), 0);
    return [{ item: item.id, title: item.title, grade: item.grade, minutes: item.minutes, saves, why: s.why }];
  });
};

const openWay = (item: Item, off: ReadonlySet<PartId>): readonly PartId[] | undefined =>
  item.needsOff.find(way => way.length > 0 && way.every(p => off.has(p)));
