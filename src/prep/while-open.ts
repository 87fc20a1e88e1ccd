/** What lies open in this plan anyway and runs out within the two events after the next. */
import type { State } from '../book/index.ts';
import { type Item, type Kart, type PartId, replacesPart } from '../kart/index.ts';
import { standing } from '../life/index.ts';
import { horizonOver } from './due.ts';
import type { WhileOpen } from './model.ts';
import type { PlanAsk } from './plan.ts';
import { partMinutes, type Work } from './work.ts';

export const whileOpen = (kart: Kart, state: State, work: Work, ask: PlanAsk): WhileOpen[] => {
  if (!ask.event) return [];
  const planned = new Set(work.jobs.flatMap(({ item }) => (item ? [item.id] : [])));
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
