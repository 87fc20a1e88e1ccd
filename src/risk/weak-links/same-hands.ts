/**
 * The same step on several parts of a kind by one pair of hands: what was forgotten on one side is forgotten on the other. Where
 * such joints back each other up, none alone enough and all together, they have an event of their own in the tree.
 *   c = min(p) × P(left out too);  p: chance of a joint of the group to let go [1]
 * It comes on top of what each does alone: a guess of a joint by itself does not know of the other. Source of the second factor:
 * NUREG/CR-1278 table 20-17 (memory), as retention-chance.ts; which hands and looks mean which word: data/retentions.yaml.
 */
import type { Pass, State } from '../../book/index.ts';
import type { Joint, JointId, Kart, KartFunction, Need, PartId } from '../../kart/index.ts';
import { type Dependence, leftOutToo } from '../fault-tree/index.ts';
import type { Catalogue } from '../retentions/index.ts';
import { minutesBetween } from './hands.ts';
import type { Range } from './joint-chance.ts';
import type { JointLook } from './joint-look.ts';

export type SameHands = {
  readonly id: string;
  readonly joints: readonly JointId[];
  readonly says: string;
  readonly chance: Range;
};

type Member = {
  readonly joint: Joint;
  readonly look: JointLook;
  readonly chance: Range;
  readonly made: Pass | undefined;
};

/** @param joints that this function hangs on, each with how it stands and its whole chance, where it has one */
export function sameHands(
  kart: Kart,
  fn: KartFunction,
  state: State,
  joints: readonly { readonly look: JointLook; readonly chance: Range | undefined }[],
  { dependence }: Catalogue,
): readonly SameHands[] {
  const steps = new Map<string, Member[]>();
  for (const { look, chance } of joints) {
    const { joint } = look;
    if (chance === undefined || lostBy(fn.needs, new Set([joint.part]))) continue;
    const step = `${kart.parts[joint.part]?.kind}, ${joint.name}`;
    const made = state.joints[joint.id]?.made;
    steps.set(step, [...(steps.get(step) ?? []), { joint, look, chance, made }]);
  }
  return [...steps].flatMap(([step, members]) =>
    [...byPerson(members)].flatMap(([by, of]): SameHands[] => {
      const parts = of.map(({ joint }) => joint.part);
      if (!lostBy(fn.needs, new Set(parts))) return [];
      const apart = longestBetween(of);
      const level = lowest([
        highest(of.map(({ look }) => look.hands.dependence)),
        ...(apart > dependence['at once within'] ? [dependence['same person later']] : []),
      ]);
      const end = (at: keyof Range): number => {
        const least = Math.min(...of.map(({ chance }) => chance[at]));
        return least * leftOutToo(least, level);
      };
      const says = `one pair of hands: ${of[0]?.joint.name} of ${parts.join(' and ')}, ${madeBy(of, apart)}`;
      return [
        {
          id: `one pair of hands: ${step}${by === '' ? '' : `, ${by}`}`,
          joints: of.map(({ joint }) => joint.id),
          says,
          chance: { mean: end('mean'), low: end('low'), high: end('high') },
        },
      ];
    }),
  );
}

/** What nobody wrote down is taken for one person. */
function byPerson(members: readonly Member[]): ReadonlyMap<string, readonly Member[]> {
  const people = new Map<string, Member[]>();
  for (const member of members) {
    const by = member.made?.by.trim().toLowerCase() ?? '';
    people.set(by, [...(people.get(by) ?? []), member]);
  }
  return people;
}

/** Is the function lost when these parts are? */
function lostBy(need: Need, parts: ReadonlySet<PartId>): boolean {
  if ('part' in need) return parts.has(need.part);
  if ('allOf' in need) return need.allOf.some(one => lostBy(one, parts));
  if ('anyOf' in need) return need.anyOf.every(one => lostBy(one, parts));
  return need.of.filter(one => !lostBy(one, parts)).length < need.kOf;
}

const LEVELS: readonly Dependence[] = ['none', 'low', 'moderate', 'high', 'complete'];
const highest = (levels: readonly Dependence[]): Dependence =>
  LEVELS.findLast(level => levels.includes(level)) ?? 'complete';
const lowest = (levels: readonly Dependence[]): Dependence =>
  LEVELS.find(level => levels.includes(level)) ?? 'complete';

function longestBetween(members: readonly Member[]): number {
  const made = members.flatMap(one => one.made ?? []);
  return Math.max(0, ...made.flatMap(a => made.map(b => minutesBetween(a, b))));
}

function madeBy(members: readonly Member[], apart: number): string {
  const by = members[0]?.made?.by;
  if (by === undefined) return 'nobody wrote down who made them';
  const looks = [...new Set(members.map(({ look }) => look.hands.says))].join(' or ');
  return `made by ${by} ${apart < 60 ? `within ${Math.max(1, Math.ceil(apart))} min` : 'at different times'}, ${looks}`;
}
