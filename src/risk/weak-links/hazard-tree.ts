/**
 * The fault tree of one function: what it needs, turned round. All of becomes any of, any of becomes all of, k of n
 * becomes n - k + 1 of n. A part fails by its own life, by a joint of it that this function hangs on, or by something
 * it shares with others; a joint with two retentions when both let go, each alone or by what they have in common.
 */
import type { Joint, Kart, KartFunction, Need, Part, PartId } from '../../kart/index.ts';
import type { FaultTree, Gate } from '../fault-tree/index.ts';
import { type Catalogue, pairOf, type SharedAmong } from '../retentions/index.ts';
import type { JointLook } from './joint-look.ts';
import { guessed, likelyOf } from './likely.ts';
import type { Likely, Link } from './model.ts';
import type { PartLook } from './part-look.ts';
import type { RetentionRecord } from './retention-record.ts';

/** An event of the tree: the link it is, and its chance there; of a first or second that it lets go alone. */
export type Event = { readonly link: Link; readonly alone: Range | undefined; readonly own: boolean };
export type Range = { readonly mean: number; readonly low: number; readonly high: number };

export type HazardTree = {
  /** Chances nobody knows are left open. */
  readonly tree: FaultTree;
  readonly events: ReadonlyMap<string, Event>;
};

export type Looks = {
  readonly part: (part: Part) => PartLook;
  readonly joint: (joint: Joint) => JointLook;
  readonly retentions: Catalogue;
  readonly record: RetentionRecord;
};

export function hazardTree(kart: Kart, fn: KartFunction, looks: Looks): HazardTree {
  const gates = new Map<string, Gate>();
  const events = new Map<string, Event>();
  const shared = sharedIn(kart, fn, looks.retentions);
  const gate = (name: string, is: Gate): string => {
    gates.set(name, is);
    return name;
  };
  const event = (link: Link, alone: Range | undefined, own = false): string => {
    events.set(link.id, { link, alone, own });
    return link.id;
  };
  const any = (name: string, inputs: readonly string[]): string =>
    gate(name, { op: 'or', inputs: [...new Set(inputs)] });

  const jointFails = (look: JointLook): string => {
    const part = kart.parts[look.joint.part] as Part;
    const { id } = look.joint;
    if (!look.second) return event(linkOf(part, id, 'joint', look), rangeOf(look.first.likely), look.first.own);
    const alone = aloneOf(look);
    const first = event(linkOf(part, `${id}, first`, 'first', look), alone?.first, look.first.own);
    const second = event(linkOf(part, `${id}, second`, 'second', look), alone?.second, look.second.own);
    const both = gate(`both let go: ${id}`, { op: 'and', inputs: [first, second] });
    return any(`lets go: ${id}`, [
      event(linkOf(part, `${id}, one hand`, 'one hand', look, alone?.both), alone?.both),
      both,
    ]);
  };
  const partFails = (id: PartId): string => {
    const name = `fails: ${id}`;
    const part = kart.parts[id] as Part;
    if (gates.has(name)) return name;
    const look = looks.part(part);
    const joints = part.joints
      .map(joint => kart.joints[joint] as Joint)
      .filter(({ carries }) => carries === undefined || carries.includes(fn.name));
    return any(name, [
      event(partLink(part, look), rangeOf(look.likely), look.own),
      ...joints.map(joint => jointFails(looks.joint(joint))),
      ...shared
        .filter(({ among }) => among.kinds.includes(part.kind))
        .map(({ link }) => event(link, rangeOf(link.likely))),
    ]);
  };
  const fails = (need: Need, path: string): string => {
    if ('part' in need) return partFails(need.part);
    const [members, op] =
      'allOf' in need
        ? [need.allOf, 'or' as const]
        : 'anyOf' in need
          ? [need.anyOf, 'and' as const]
          : [need.of, 'atleast' as const];
    const inputs = members.map((one, n) => {
      const input = fails(one, `${path}.${n + 1}`);
      // The same part named twice counts twice in k of n: each mention is a gate of its own.
      return op === 'atleast' ? any(`${path}.${n + 1} of many`, [input]) : input;
    });
    if ('kOf' in need) return gate(path, { op: 'atleast', k: members.length - need.kOf + 1, inputs });
    return gate(path, { op: op as 'and' | 'or', inputs: [...new Set(inputs)] });
  };

  const top = fails(fn.needs, `without: ${fn.name}`);
  const basics = new Map([...events].map(([id, { alone }]) => [id, alone?.mean] as const));
  return { tree: { top, gates, events: basics }, events };
}

const rangeOf = (likely: Likely | null): Range | undefined =>
  likely ? { mean: likely.chance, low: likely.low, high: likely.high } : undefined;

/** The three events of a pair; undefined where one margin is not known. */
function aloneOf({ first, second }: JointLook): Record<'first' | 'second' | 'both', Range> | undefined {
  if (!first.likely || !second?.likely) return undefined;
  const [p, q] = [rangeOf(first.likely) as Range, rangeOf(second.likely) as Range];
  const of = (end: keyof Range) => pairOf(p[end], q[end], second.share);
  const [mean, low, high] = [of('mean'), of('low'), of('high')];
  const range = (what: 'first' | 'second' | 'both'): Range => ({ mean: mean[what], low: low[what], high: high[what] });
  return { first: range('first'), second: range('second'), both: range('both') };
}

const placed = (part: Part) => ({ part: part.id, system: part.system, corner: part.corner, place: part.place });

const partLink = (part: Part, { likely, unknown }: PartLook): Link => ({
  id: part.id,
  sort: 'part',
  ...placed(part),
  says: part.id,
  likely,
  unknown,
});

function linkOf(
  part: Part,
  id: string,
  sort: 'joint' | 'first' | 'second' | 'one hand',
  { joint, first, second }: JointLook,
  both?: Range,
): Link {
  const which = sort === 'second' ? second : first;
  const hand = sort === 'one hand';
  const says = hand
    ? `${joint.part}, ${joint.name}: ${first.text} and ${second?.text}, ${second?.looked}`
    : `${joint.part}, ${joint.name}: ${which?.text}${sort === 'second' ? `, ${second?.looked}` : ''}`;
  return {
    id,
    sort,
    ...placed(part),
    joint: joint.id,
    says,
    ...(sort === 'second' && second?.latent && { latent: true as const }),
    likely: hand ? (both ? likelyOf(both, first.likely?.basis ?? '') : null) : (which?.likely ?? null),
    unknown: hand ? (both ? null : (first.unknown ?? second?.unknown ?? null)) : (which?.unknown ?? null),
  };
}

type Shared = { readonly among: SharedAmong; readonly link: Link };

/** What several parts that the function needs have in common: one event, however many they are. */
function sharedIn(kart: Kart, fn: KartFunction, retentions: Catalogue): readonly Shared[] {
  const needed = [...new Set(partsOf(fn.needs))].map(id => kart.parts[id] as Part);
  return retentions.shared.flatMap(among => {
    const members = needed.filter(({ kind }) => among.kinds.includes(kind));
    if (members.length < (among.least ?? 1)) return [];
    const basis = `Only our starting guess: ${among.source}.`;
    const likely = guessed(among.chance, retentions['trusted to a factor of'], basis);
    const [first] = members as [Part];
    const link: Link = {
      id: among.name,
      sort: 'shared',
      system: first.system,
      corner: 'whole',
      place: first.place,
      says: `${among.name}: ${among.says}`,
      likely,
      unknown: null,
    };
    return [{ among, link }];
  });
}

/** Every mention of a part. */
export function partsOf(need: Need): readonly PartId[] {
  if ('part' in need) return [need.part];
  return ('allOf' in need ? need.allOf : 'anyOf' in need ? need.anyOf : need.of).flatMap(partsOf);
}
