/**
 * What a name in a file means. A bare item key: the own part first, else the parts at the same corner, else those on
 * the same side, else all of the kart. `mate KIND`: the same order among the parts of that kind, without the own part.
 */
import type { LayeredKart, LayeredPart, Ref } from './layers.ts';
import { type ItemId, type JointId, type PartId, WORK_ACTIONS } from './model.ts';
import type { Report } from './problem.ts';
import { didYouMean } from './suggest.ts';

export type Names = {
  parts(own: LayeredPart, ref: Ref): readonly PartId[];
  items(own: LayeredPart, ref: Ref): readonly ItemId[];
  joints(own: LayeredPart, ref: Ref): readonly JointId[];
  /** The items that open a joint: an item key, with or without the verb before it (`set rear track`). */
  openers(own: LayeredPart, ref: Ref): readonly ItemId[];
};

export function namesOf(kart: LayeredKart, report: Report): Names {
  const byKind = new Map<string, LayeredPart[]>();
  const byKey = new Map<string, LayeredPart[]>();
  const jointNames = new Set<string>();
  for (const part of kart.parts.values()) {
    push(byKind, part.kind, part);
    for (const key of part.items.keys()) push(byKey, key, part);
    for (const key of part.joints.keys()) {
      push(byKey, key, part); // a joint's check is an item too
      jointNames.add(key);
    }
  }
  const missing = (ref: Ref, what: string, text: string, among: Iterable<string>): readonly [] => {
    report(ref.place, {
      expected: `${what} of this kart`,
      got: `"${ref.text}", which is not there`,
      remedy: didYouMean(text, among, `correct the name, or describe what is meant`),
    });
    return [];
  };

  const mates = (own: LayeredPart, kind: string, ref: Ref): readonly LayeredPart[] => {
    const found = nearest(
      own,
      (byKind.get(kind) ?? []).filter(p => p !== own),
    );
    if (found.length === 0 && !kart.gone.kinds.has(kind)) missing(ref, 'a part of that kind', kind, byKind.keys());
    return found;
  };

  const parts = (own: LayeredPart, ref: Ref): readonly PartId[] => {
    if (ref.text === 'self') return [own.name];
    if (ref.text.startsWith('mate ')) return mates(own, ref.text.slice(5).trim(), ref).map(p => p.name);
    if (kart.parts.has(ref.text)) return [ref.text];
    return kart.gone.parts.has(ref.text) ? [] : missing(ref, 'a part', ref.text, kart.parts.keys());
  };

  /** 'part/key' or 'mate KIND/key': the parts before the slash and the key behind it. */
  const apart = (own: LayeredPart, ref: Ref): { readonly parts: readonly LayeredPart[]; readonly key: string } => {
    const slash = ref.text.indexOf('/');
    const named = parts(own, { ...ref, text: ref.text.slice(0, slash).trim() });
    return { parts: named.flatMap(n => kart.parts.get(n) ?? []), key: ref.text.slice(slash + 1).trim() };
  };
  const within = (
    ref: Ref,
    found: readonly LayeredPart[],
    key: string,
    has: (p: LayeredPart) => Iterable<string>,
    what: string,
  ) =>
    found.flatMap(part => {
      const id = `${part.name}/${key}`;
      const all = [...has(part)];
      return all.includes(key) ? [id] : kart.gone.ids.has(id) ? [] : missing(ref, what, key, all);
    });
  const keysOf = (part: LayeredPart) => [...part.items.keys(), ...part.joints.keys()];

  const lookUp = (own: LayeredPart, key: string): readonly ItemId[] => {
    const found = byKey.get(key) ?? [];
    return (found.includes(own) ? [own] : nearest(own, found)).map(part => `${part.name}/${key}`);
  };
  const items = (own: LayeredPart, ref: Ref): readonly ItemId[] => {
    if (ref.text.includes('/')) {
      const { parts: found, key } = apart(own, ref);
      return within(ref, found, key, keysOf, 'an item');
    }
    const found = lookUp(own, ref.text);
    return found.length > 0 || kart.gone.keys.has(ref.text) ? found : missing(ref, 'an item', ref.text, byKey.keys());
  };

  return {
    parts,
    items,
    joints(own, ref) {
      if (ref.text.includes('/')) {
        const { parts: found, key } = apart(own, ref);
        return within(ref, found, key, p => p.joints.keys(), 'a joint');
      }
      const id = `${own.name}/${ref.text}`;
      if (own.joints.has(ref.text)) return [id];
      return kart.gone.ids.has(id) ? [] : missing(ref, 'a joint', ref.text, jointNames);
    },
    openers(own, ref) {
      const [verb = '', ...rest] = ref.text.split(' ');
      const known = !ref.text.includes('/') && lookUp(own, ref.text).length > 0;
      const isVerb = (WORK_ACTIONS as readonly string[]).includes(verb) && rest.length > 0;
      return items(own, !known && isVerb ? { ...ref, text: rest.join(' ') } : ref);
    },
  };
}

/** Of these parts, those at the same corner; else those on the same side; else all. */
function nearest(own: LayeredPart, parts: readonly LayeredPart[]): readonly LayeredPart[] {
  const corner = own.own.corner ?? 'whole';
  if (corner === 'whole') return parts;
  const same = parts.filter(p => p.own.corner === corner);
  if (same.length > 0) return same;
  const side = corner.split(' ')[1] ?? '';
  const beside = parts.filter(p => p.own.corner?.endsWith(side));
  return beside.length > 0 ? beside : parts;
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
