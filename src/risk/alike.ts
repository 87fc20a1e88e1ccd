/**
 * What else of this kind is on the karts of one owner: parts of the kind that failed, joints held by the retention that let go,
 * each with what it has run and when somebody last looked.
 */
import { type Mark, partAge, type State } from '../book/index.ts';
import type { Corner, ItemId, Joint, JointId, Kart, Part, PartId } from '../kart/index.ts';
import { type Catalogue, namedBy } from './retentions/index.ts';

/** The part that failed, or the joint of it that let go. */
export type FailedOn = { readonly kart: string; readonly part: PartId; readonly joint?: JointId };
export type KartNow = { readonly kart: Kart; readonly state: State };

export type AlikeOne = {
  readonly kart: string;
  readonly part: PartId;
  readonly corner: Corner;
  readonly on: boolean; // it may lie beside the kart
  readonly hours: number; // run-hours of the part, as far as they are on record
  readonly lastLook: { readonly at: string; readonly by: string } | null;
  /** What a look at it passes; empty: its kind names none. */
  readonly items: readonly ItemId[];
};
export type AlikeJoint = AlikeOne & {
  readonly joint: JointId;
  readonly retention: string; // as the kart file says it
  /** The same joint on a part of the same kind, such as the one on the other side. */
  readonly twin: boolean;
};
export type Alike = {
  readonly of: FailedOn;
  readonly kind: string;
  readonly retention: string | null; // of the joint that let go
  /** Of the same kind, the one that failed left out; longest not looked at first. */
  readonly parts: readonly AlikeOne[];
  /** Held alike; twins first, then longest not looked at. */
  readonly joints: readonly AlikeJoint[];
};

/** @param karts of one owner, the one it failed on among them; throws where that has no such part or joint */
export function alikeOf(karts: readonly KartNow[], of: FailedOn, retentions: Catalogue): Alike {
  const there = karts.find(({ kart }) => kart.name === of.kart)?.kart;
  const part = there?.parts[of.part];
  const joint = of.joint === undefined ? undefined : there?.joints[of.joint];
  if (!there || !part || (of.joint !== undefined && !joint))
    throw new Error(`alikeOf: of must name a part and joint of a kart among them, got ${JSON.stringify(of)}`);
  return {
    of,
    kind: part.kind,
    retention: joint?.retention ?? null,
    parts: karts
      .flatMap(({ kart, state }) =>
        Object.values(kart.parts)
          .filter(one => one.kind === part.kind && !(kart.name === of.kart && one.id === of.part))
          .map(one => partNow(kart, state, one)),
      )
      .sort(longestAgo),
    joints: joint
      ? jointsHeldAs(karts, { joint, part, retentions }).filter(one => one.kart !== of.kart || one.joint !== joint.id)
      : [],
  };
}

function partNow(kart: Kart, state: State, part: Part): AlikeOne {
  const items = Object.values(kart.items).filter(
    item => item.part === part.id && !item.joint && LOOKS.has(item.action),
  );
  return {
    ...now(kart, state, part),
    ...looked(
      state,
      items.map(({ id }) => id),
    ),
  };
}
/** What a hand does that would see a part going. */
const LOOKS: ReadonlySet<string> = new Set(['look', 'measure', 'function-test']);

type Held = { readonly joint: Joint; readonly part: Part; readonly retentions: Catalogue };

function jointsHeldAs(karts: readonly KartNow[], { joint, part, retentions }: Held): readonly AlikeJoint[] {
  const way = nameOf(joint.retention, 'first', retentions);
  return karts
    .flatMap(({ kart, state }) =>
      Object.values(kart.joints).flatMap((one): AlikeJoint[] => {
        const own = kart.parts[one.part];
        const held = [one.retention, ...(one.second === undefined ? [] : [one.second])].find(
          (text, n) => nameOf(text, n === 0 ? 'first' : 'second', retentions) === way,
        );
        if (!own || held === undefined) return [];
        const twin = own.kind === part.kind && one.name === joint.name;
        return [{ ...now(kart, state, own), ...looked(state, [one.item]), joint: one.id, retention: held, twin }];
      }),
    )
    .sort((a, b) => Number(b.twin) - Number(a.twin) || longestAgo(a, b));
}

/** As the catalogue calls it; what it does not know is alike only where it is called the same. */
function nameOf(text: string, role: 'first' | 'second', retentions: Catalogue): string {
  const named = namedBy(text, role, retentions);
  return named.is === 'holds' ? named.retention.name : text;
}

const now = (kart: Kart, state: State, { id, corner }: Part) => ({
  kart: kart.name,
  part: id,
  corner,
  on: state.parts[id]?.on !== false,
  hours: partAge(state, id).minutes / 60,
});

function looked(state: State, items: readonly ItemId[]): Pick<AlikeOne, 'lastLook' | 'items'> {
  let last: Mark | undefined;
  for (const id of items) {
    const pass = state.items[id]?.pass;
    const mark = pass?.secondLook ?? pass;
    if (mark && (!last || mark.pos > last.pos)) last = mark;
  }
  return { lastLook: last ? { at: last.at, by: last.by } : null, items };
}

/** Never looked at comes first. */
const longestAgo = (a: AlikeOne, b: AlikeOne): number => {
  const [x, y] = [a.lastLook?.at ?? '', b.lastLook?.at ?? ''];
  return x < y ? -1 : x > y ? 1 : 0;
};
