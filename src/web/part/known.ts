/** Everything the record and the kart file say of one part, for whoever has it in the hand. */
import { type Age, type Defect, type Mark, partAge, type State } from '../../book/index.ts';
import type { Item, Joint, Kart, Part } from '../../kart/index.ts';
import { openedBy } from '../../life/index.ts';
import type { Due } from '../../prep/index.ts';

export type JointKnown = { readonly joint: Joint; readonly made: Mark | undefined; readonly opened: Mark | undefined };
export type ItemKnown = { readonly item: Item; readonly pass: Mark | undefined; readonly due: Due | undefined };
export type PartKnown = {
  readonly part: Part;
  readonly on: boolean;
  /** When it last came off, or went on; undefined: no fact says. */
  readonly since: Mark | undefined;
  readonly fresh: Mark | undefined;
  readonly serial: string | undefined;
  readonly age: Age;
  readonly due: readonly Due[];
  /** Items of its joints stand with the joints. */
  readonly items: readonly ItemKnown[];
  readonly joints: readonly JointKnown[];
  readonly finds: readonly Defect[];
};

export function partKnown(kart: Kart, state: State, due: readonly Due[], id: string): PartKnown | undefined {
  const part = kart.parts[id];
  if (part === undefined) return undefined;
  const seen = state.parts[id];
  const on = seen?.on !== false;
  return {
    part,
    on,
    since: on ? seen?.back : seen?.off,
    fresh: seen?.fresh,
    serial: seen?.serial,
    age: partAge(state, id),
    due: due.filter(one => one.part === id),
    items: Object.values(kart.items)
      .filter(item => item.part === id && item.joint === undefined)
      .map(item => ({
        item,
        pass: state.items[item.id]?.pass,
        due: due.find(one => one.item === item.id),
      })),
    joints: part.joints.flatMap(jointId => {
      const joint = kart.joints[jointId];
      if (joint === undefined) return [];
      return [{ joint, made: state.joints[jointId]?.made, opened: openedBy(kart, state, jointId) }];
    }),
    finds: state.defects.filter(find => find.part === id && find.mended === undefined),
  };
}

/** '41/rear hub left' of a label: the kart it belongs to and the part, for a kart's name may hold a stroke too. */
export function readAbout(about: string, karts: readonly string[]): { readonly kart: string; readonly name: string } {
  const kart = karts
    .filter(name => about.startsWith(`${name}/`))
    .sort((a, b) => b.length - a.length)
    .at(0);
  if (kart !== undefined) return { kart, name: about.slice(kart.length + 1) };
  const at = about.indexOf('/');
  return { kart: about.slice(0, Math.max(at, 0)), name: about.slice(at + 1) };
}
