/**
 * The fault tree of one function: what it needs, turned round. All of becomes any of, any of becomes all of, k of n
 * becomes n - k + 1 of n. A part fails by its own life, by a joint of it that this function hangs on, or by something
 * it shares with others; a joint with two retentions when both let go, each alone or by what they have in common. One pair
 * of hands that does the same step on joints which back each other up has an event of its own.
 */
import type { State } from '../../book/index.ts';
import {
  type Joint,
  type JointId,
  type Kart,
  type KartFunction,
  type Need,
  type Part,
  type PartId,
  partsOf,
} from '../../kart/index.ts';
import type { FaultTree, Gate } from '../fault-tree/index.ts';
import type { Catalogue, SharedAmong } from '../retentions/index.ts';
import { aloneOf, jointChance, type Range, rangeOf } from './joint-chance.ts';
import type { JointLook } from './joint-look.ts';
import { guessed, likelyOf } from './likely.ts';
import type { Link } from './model.ts';
import type { PartLook } from './part-look.ts';
import type { RetentionRecord } from './retention-record.ts';
import { type SameHands, sameHands } from './same-hands.ts';

/** An event of the tree: the link it is, and its chance there; of a first or second that it lets go alone. */
export type Event = { readonly link: Link; readonly alone: Range | undefined; readonly own: boolean };

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
  readonly state: State;
};

export function hazardTree(kart: Kart, fn: KartFunction, looks: Looks): HazardTree {
  const gates = new Map<string, Gate>();
  const events = new Map<string, Event>();
  const shared = sharedIn(kart, fn, looks.retentions);
  const hands = handsIn(kart, fn, looks);
  const gate = (name: string, is: Gate): string => {
    gates.set(name, is);
    return name;
  };
  const event = (link: Link, alone: Range | undefined, own = false): string => {
    events.set(link.id, { link, alone, own });
    return link.id;
  };
  const any = (name: string, inputs: readonly string[]): string => gate(name, { op: 'or', inputs });

  const jointFails = (look: JointLook): string => {
    const { id } = look.joint;
    const also = (hands.get(id) ?? []).map(({ link, chance }) => event(link, chance));
    return any(`lets go: ${id}`, [...retentionsFail(look), ...also]);
  };
  const retentionsFail = (look: JointLook): readonly string[] => {
    const part = kart.parts[look.joint.part] as Part;
    const { id } = look.joint;
    if (!look.second) return [event(linkOf(part, id, 'joint', look), rangeOf(look.first.likely), look.first.own)];
    const alone = aloneOf(look);
    const first = event(linkOf(part, `${id}, first`, 'first', look), alone?.first, look.first.own);
    const second = event(linkOf(part, `${id}, second`, 'second', look), alone?.second, look.second.own);
    const both = gate(`both let go: ${id}`, { op: 'and', inputs: [first, second] });
    return [event(linkOf(part, `${id}, one hand`, 'one hand', look, alone?.both), alone?.both), both];
  };
  const partFails = (id: PartId): string => {
    const name = `fails: ${id}`;
    const part = kart.parts[id] as Part;
    if (gates.has(name)) return name;
    const look = looks.part(part);
    return any(name, [
      event(partLink(part, look), rangeOf(look.likely), look.own),
      ...jointsOf(kart, fn, part).map(joint => jointFails(looks.joint(joint))),
      ...shared
        .filter(({ among }) => among.kinds.includes(part.kind))
        .map(({ link }) => event(link, rangeOf(link.likely))),
    ]);
  };
  const fails = (need: Need, path: string): string => {
    if ('part' in need) return partFails(need.part);
    const of = (members: readonly Need[]) => members.map((one, n) => fails(one, `${path}.${n + 1}`));
    if ('allOf' in need) return any(path, of(need.allOf));
    if ('anyOf' in need) return gate(path, { op: 'and', inputs: of(need.anyOf) });
    // A part named twice counts twice.
    return gate(path, { op: 'atleast', k: need.of.length - need.kOf + 1, inputs: of(need.of) });
  };

  const top = fails(fn.needs, `without: ${fn.name}`);
  const basics = new Map([...events].map(([id, { alone }]) => [id, alone?.mean] as const));
  return { tree: { top, gates, events: basics }, events };
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

/** Those that this function hangs on. */
const jointsOf = (kart: Kart, fn: KartFunction, part: Part): readonly Joint[] =>
  part.joints
    .map(joint => kart.joints[joint] as Joint)
    .filter(({ carries }) => carries === undefined || carries.includes(fn.name));

type Hands = { readonly link: Link; readonly chance: Range };

function handsIn(kart: Kart, fn: KartFunction, looks: Looks): ReadonlyMap<JointId, readonly Hands[]> {
  const needed = [...new Set(partsOf(fn.needs))].map(id => kart.parts[id] as Part);
  const joints = needed
    .flatMap(part => jointsOf(kart, fn, part))
    .map(joint => looks.joint(joint))
    .map(look => ({ look, chance: jointChance(look) }));
  const of = new Map<JointId, Hands[]>();
  for (const group of sameHands(kart, fn, looks.state, joints, looks.retentions))
    for (const id of group.joints)
      of.set(id, [...(of.get(id) ?? []), { link: handsLink(kart, group, looks), chance: group.chance }]);
  return of;
}

function handsLink(kart: Kart, { id, joints, says, chance }: SameHands, { retentions }: Looks): Link {
  const first = kart.parts[kart.joints[joints[0] ?? '']?.part ?? ''] as Part;
  const basis = `Only our starting guess: ${retentions.dependence.source}.`;
  const { system, place } = first;
  return { id, sort: 'shared', system, corner: 'whole', place, says, likely: likelyOf(chance, basis), unknown: null };
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
