/** What would hurt us: every function of a kart, what ends it alone, what together, and how likely over the event to come. */
import type { KartEvent, State } from '../../book/index.ts';
import type { Joint, Kart, KartFunction } from '../../kart/index.ts';
import type { KartBook, Priors } from '../../life/index.ts';
import { type Analysis, analyse } from '../fault-tree/index.ts';
import { additionsFor, type Catalogue } from '../retentions/index.ts';
import { type Event, type HazardTree, hazardTree, type Looks } from './hazard-tree.ts';
import { type JointLook, lookAt } from './joint-look.ts';
import { fromTo, likelyOf } from './likely.ts';
import {
  type Hazard,
  type Likely,
  type Link,
  type LinkPair,
  NOTE,
  type SinglePoint,
  type WeakLinks,
  type Worth,
} from './model.ts';
import { partLooks } from './part-look.ts';
import { retentionRecord } from './retention-record.ts';
import { sentenceOf } from './words.ts';

export type WeakLinksAsk = {
  readonly now: string;
  /** The event it would run at; without one parts have no hours to fail in, and no number. */
  readonly event?: KartEvent;
  readonly retentions: Catalogue;
  readonly priors: Priors;
  /** Of all karts of the owner, this one among them; left out, no part has a record. */
  readonly books?: readonly KartBook[];
  /** Of the same kart, state and question, where they were made for another question before. */
  readonly looks?: Looks;
};

/** Changes nothing and decides nothing: fitness is judged without it. */
export function weakLinks(kart: Kart, state: State, ask: WeakLinksAsk): WeakLinks {
  const looks = ask.looks ?? looksOf(kart, state, ask);
  const hazards = Object.values(kart.functions)
    .map(fn => hazardOf(kart, fn, looks))
    .sort((a, b) => a.severity - b.severity);
  return { kart: kart.name, at: ask.now, event: ask.event?.event ?? null, hazards, note: NOTE };
}

/** How every part and joint of the kart stands; each is looked at once. */
export function looksOf(kart: Kart, state: State, { now, event, retentions, priors, books = [] }: WeakLinksAsk): Looks {
  const hours = event === undefined ? undefined : event.runMinutes / 60;
  const joints = new Map<string, JointLook>();
  const record = retentionRecord(books, retentions);
  const at = { now, retentions, record, ...(event === undefined ? {} : { event: event.event }) };
  return {
    state,
    retentions,
    record,
    part: once(partLooks(kart, { books, priors, state, hours })),
    joint: (joint: Joint) => {
      const look = joints.get(joint.id) ?? lookAt(kart, state, joint, at);
      joints.set(joint.id, look);
      return look;
    },
  };
}

function once<K, V>(look: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return key => {
    const value = known.get(key) ?? look(key);
    known.set(key, value);
    return value;
  };
}

/** A tree of which what nobody knows is taken as never happening: at least so likely. */
export const knownOf = ({ tree }: HazardTree): HazardTree['tree'] => ({
  ...tree,
  events: new Map([...tree.events].map(([id, chance]) => [id, chance ?? 0] as const)),
});

function hazardOf(kart: Kart, fn: KartFunction, looks: Looks): Hazard {
  const made = hazardTree(kart, fn, looks);
  const { events } = made;
  const all = [...events.values()];
  const analysis = analyse(knownOf(made));
  const hazard = fn.hazard ?? `"${fn.name}" lost`;
  const base = { function: fn.name, hazard, severity: fn.severity };
  const unknown = all.filter(({ alone }) => alone === undefined).map(({ link }) => link);
  if (analysis.kind === 'too large')
    return { ...base, singlePoints: [], cutSets: null, pairs: [], top: null, atLeast: null, unknown, links: [] };
  const { cutSets } = analysis;
  const likely = topOf(analysis, events);
  return {
    ...base,
    singlePoints: singlePointsOf(kart, hazard, analysis, made, looks),
    cutSets: { count: Number(cutSets.count), byOrder: cutSets.byOrder.map(Number) },
    pairs: pairsOf(analysis, events),
    top: unknown.length === 0 ? likely : null,
    atLeast: likely,
    unknown,
    links: worths(analysis, all),
  };
}

/** Every life and guess at its low end, and at its high end, all together: wider than nine times of ten. */
function topOf(analysis: Analysis, events: ReadonlyMap<string, Event>): Likely | null {
  const known = [...events.values()].filter(({ alone }) => alone !== undefined);
  if (known.length === 0 || analysis.top === undefined) return null;
  const at = (end: 'low' | 'high'): number =>
    analysis.topWith(new Map(known.map(({ link, alone }) => [link.id, alone?.[end] ?? 0]))) ?? analysis.top ?? 0;
  return likelyOf({ mean: analysis.top, low: at('low'), high: at('high') }, basisOf(known));
}

function basisOf(known: readonly Event[]): string {
  const own = known.filter(event => event.own).length;
  const of = known.length === 1 ? '1 link' : `${known.length} links`;
  if (own === 0) return `Only our starting guess, for ${of}.`;
  if (own === known.length) return `From your own record, for ${of}.`;
  const most = own * 2 < known.length ? 'Mostly our starting guess: ' : '';
  return `${most}${own} of ${of} from your own record, the rest our starting guess.`;
}

const PAIRS = 12;

function pairsOf({ cutSets }: Analysis, events: ReadonlyMap<string, Event>): readonly LinkPair[] {
  const both = [...cutSets.list({ order: 2 })].filter(({ length }) => length === 2);
  return both
    .map((ids): LinkPair => {
      const [a, b] = ids.map(id => events.get(id)) as [Event, Event];
      const of = (end: 'mean' | 'low' | 'high'): number => (a.alone?.[end] ?? 0) * (b.alone?.[end] ?? 0);
      const known = a.alone !== undefined && b.alone !== undefined;
      const { chance, words } = likelyOf({ mean: of('mean'), low: of('low'), high: of('high') }, '');
      return {
        ids: [a.link.id, b.link.id],
        says: [a.link.says, b.link.says],
        likely: known ? { chance, words } : null,
      };
    })
    .sort((a, b) => (b.likely?.chance ?? -1) - (a.likely?.chance ?? -1))
    .slice(0, PAIRS);
}

const SORTS: readonly Link['sort'][] = ['joint', 'one hand', 'shared', 'part', 'first', 'second'];

function singlePointsOf(
  kart: Kart,
  hazard: string,
  analysis: Analysis,
  { events }: HazardTree,
  looks: Looks,
): readonly SinglePoint[] {
  return analysis.singlePoints
    .map((id): SinglePoint => {
      const { link } = events.get(id) as Event;
      const joint = link.joint === undefined ? undefined : kart.joints[link.joint];
      const look = joint && looks.joint(joint);
      const couldAdd =
        joint && link.sort === 'joint' && !look?.inWork
          ? additionsFor(joint, looks.retentions).map(({ retention }) => retention.name)
          : [];
      return { ...link, sentence: sentenceOf(link, look, hazard), couldAdd };
    })
    .sort((a, b) => SORTS.indexOf(a.sort) - SORTS.indexOf(b.sort));
}

function worths(analysis: Analysis, all: readonly Event[]): readonly Worth[] {
  const q = analysis.top ?? 0;
  if (!(q > 0)) return [];
  const topIf = (id: string, chance: number): number => analysis.topWith(new Map([[id, chance]])) ?? q;
  return all
    .filter(({ alone }) => alone !== undefined)
    .map(({ link }): Worth => {
      const [ifPerfect, ifForgotten] = [topIf(link.id, 0), topIf(link.id, 1)];
      return {
        ...link,
        ifPerfect,
        ifForgotten,
        buys: `${fromTo(q, ifPerfect)} if it never let go`,
        costs: `${fromTo(q, ifForgotten)} if it has let go or was forgotten`,
      };
    })
    .sort((a, b) => a.ifPerfect - b.ifPerfect);
}
