/**
 * How long work took, from when it was written down: the time between one tick and the one before it by the same person.
 * Several ticks at once share the time before them; a gap far over what was planned was a break, and teaches nothing.
 */
import { type Fact, inOrder, struckFacts } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { secondLookMinutes } from '../order.ts';

/** One piece of work that was timed. `key` is that of the step in a plan. */
export type Timed = { readonly key: string; readonly planned: number; readonly took: number; readonly at: string }; // minutes

/** Ticks closer than this [min] were written down together. */
const TOGETHER = 0.5;
/** More than so many at once say nothing of the single one. */
const MOST_TOGETHER = 4;
/** A gap over four times the plan and twenty minutes was a break; all three common practice. */
const isBreak = (took: number, planned: number): boolean => took > Math.max(4 * planned, planned + 20);

type Tick = { readonly key: string; readonly planned: number; readonly minute: number; readonly at: string };

/** @param facts of this kart alone; struck ones teach nothing */
export function timed(kart: Kart, facts: readonly Fact[]): readonly Timed[] {
  const ordered = inOrder(facts);
  const struck = struckFacts(ordered);
  const people = new Map<string, Tick[]>();
  for (const fact of ordered) {
    if (struck.has(fact.id) || fact.kind === 'struck') continue;
    const tick = tickOf(kart, fact);
    if (tick === undefined) continue;
    const own = people.get(fact.by);
    if (own) own.push(tick);
    else people.set(fact.by, [tick]);
  }
  return [...people.values()].flatMap(ticks => between(ticks));
}

function between(ticks: readonly Tick[]): readonly Timed[] {
  const found: Timed[] = [];
  let before: number | undefined;
  for (let i = 0; i < ticks.length; ) {
    let end = i + 1;
    while (end < ticks.length && minuteOf(ticks, end) - minuteOf(ticks, end - 1) < TOGETHER) end++;
    const group = ticks.slice(i, end);
    const planned = group.reduce((sum, tick) => sum + tick.planned, 0);
    const took = before === undefined ? Number.NaN : minuteOf(ticks, i) - before;
    if (took >= TOGETHER && group.length <= MOST_TOGETHER && planned > 0 && !isBreak(took, planned))
      for (const tick of group)
        found.push({ key: tick.key, planned: tick.planned, took: (took * tick.planned) / planned, at: tick.at });
    before = minuteOf(ticks, end - 1);
    i = end;
  }
  return found;
}

const minuteOf = (ticks: readonly Tick[], i: number): number => ticks[i]?.minute ?? Number.NaN;

function tickOf(kart: Kart, fact: Fact): Tick | undefined {
  const work = workOf(kart, fact);
  // Spelt out: a copy by spreading takes four times as long, and a book has thousands.
  return work && { key: work.key, planned: work.planned, minute: Date.parse(fact.at) / 60_000, at: fact.at };
}

/** The step that writes this fact, as `passOf` writes it. */
function workOf(kart: Kart, fact: Fact): { readonly key: string; readonly planned: number } | undefined {
  if (fact.kind === 'taken off' || fact.kind === 'fitted') {
    const part = kart.parts[fact.part];
    const off = fact.kind === 'taken off';
    return (
      part && { key: `${off ? 'take-off' : 'refit'} ${part.id}`, planned: (off ? part.takeOff : part.refit).minutes }
    );
  }
  const id = fact.kind === 'checked' ? fact.item : fact.kind === 'made' ? fact.joint : undefined;
  const item = id === undefined ? undefined : kart.items[id];
  if (!item || (fact.kind !== 'checked' && fact.kind !== 'made')) return undefined;
  return fact.secondLook
    ? { key: `second-look ${item.id}`, planned: secondLookMinutes(item.minutes) }
    : { key: `${item.action} ${item.id}`, planned: item.minutes };
}
