/** This kart's own changes of set-up: what ran before, what ran after, what was noted, and what else moved at once. */
import { type Fact, type FactOf, inOrder, outingName, struckFacts } from '../book/index.ts';
import { type Change, changeOf } from './setting-value.ts';

/** One time on the track, as the record names it. */
export type Outing = {
  readonly fact: string;
  readonly at: string;
  readonly label: string; // 'Hollow Lane round 4 › Heat 1'
  readonly minutes: number;
  readonly laps: number | null;
  readonly wet: boolean;
  readonly track: string | null;
  readonly conditions: string | null;
};

/** A change and what the record shows around it. It says nothing of faster or slower: laps are compared elsewhere. */
export type Observed = Change & {
  readonly setting: string;
  readonly was: string;
  readonly now: string;
  readonly at: string;
  readonly person: string;
  readonly fact: string;
  readonly why: string | null;
  readonly before: Outing | null;
  readonly after: Outing | null;
  /** What was written down after it, until something else was changed or ran, and no later than the day it was tried. */
  readonly notes: readonly string[];
  /** Why before and after cannot be laid side by side; empty when nothing in the record speaks against it. */
  readonly doubts: readonly string[];
};

export const outingOf = (fact: FactOf<'ran'>): Outing => ({
  fact: fact.id,
  at: fact.at,
  label: outingName(fact),
  minutes: fact.minutes,
  laps: fact.laps ?? null,
  wet: fact.wet ?? false,
  track: fact.track ?? null,
  conditions: fact.conditions ?? null,
});

/** The facts that count, in the order in which they happened. */
export function counted(facts: readonly Fact[]): readonly Fact[] {
  const ordered = inOrder(facts);
  const struck = struckFacts(ordered);
  return ordered.filter(fact => fact.kind !== 'struck' && !struck.has(fact.id));
}

/** Every change that was written down as a set-up, oldest first. */
export function observed(facts: readonly Fact[]): readonly Observed[] {
  const ordered = counted(facts);
  const last = new Map<string, string>();
  return ordered.flatMap((fact, place) => {
    if (fact.kind !== 'set-up') return [];
    return Object.entries(fact.changes).flatMap(([setting, now]) => {
      const was = last.get(setting);
      last.set(setting, now);
      const change = was === undefined ? undefined : changeOf(was, now);
      if (was === undefined || change === undefined) return [];
      return [{ ...change, setting, was, now, person: fact.by, ...around(ordered, place, setting), ...told(fact) }];
    });
  });
}

const told = (fact: FactOf<'set-up'>) => ({ at: fact.at, fact: fact.id, why: fact.why ?? null });

function around(ordered: readonly Fact[], place: number, setting: string) {
  const ran = (fact: Fact): fact is FactOf<'ran'> => fact.kind === 'ran';
  const start = ordered.findLastIndex((fact, n) => n < place && ran(fact));
  const first = ordered.findIndex((fact, n) => n > place && ran(fact));
  const end = first < 0 ? ordered.length : first;
  const next = ordered.findIndex((fact, n) => n > end && (fact.kind === 'set-up' || ran(fact)));
  const [earlier, later] = [ordered[start], ordered[first]];
  const before = earlier && ran(earlier) ? outingOf(earlier) : null;
  const after = later && ran(later) ? outingOf(later) : null;
  const day = (after ?? ordered[place])?.at.slice(0, 10) ?? '';
  const notes = ordered
    .slice(place + 1, next < 0 ? ordered.length : next)
    .flatMap(fact => (fact.kind === 'note' && fact.at.slice(0, 10) <= day ? [fact.text] : []));
  return { before, after, notes, doubts: doubtsOf(ordered.slice(start + 1, end), setting, before, after) };
}

function doubtsOf(between: readonly Fact[], setting: string, before: Outing | null, after: Outing | null) {
  const doubts: string[] = [];
  if (before === null) doubts.push('nothing ran before it');
  if (after === null) doubts.push('nothing ran after it');
  const others = new Set(
    between.flatMap(fact => (fact.kind === 'set-up' ? Object.keys(fact.changes) : [])).filter(name => name !== setting),
  );
  if (others.size > 0) doubts.push(`changed together with ${[...others].join(', ')}`);
  if (between.some(fact => fact.kind === 'tyres')) doubts.push('other tyres');
  if (before && after) {
    if (before.wet !== after.wet) doubts.push(after.wet ? 'wet after, dry before' : 'dry after, wet before');
    if (before.track !== after.track) doubts.push('another track');
    if (before.at.slice(0, 10) !== after.at.slice(0, 10)) doubts.push('another day');
  }
  return doubts;
}
