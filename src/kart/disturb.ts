/**
 * Who disturbs what: the reverse of the `disturbs` and `opens` lists of a kart, worked out once a kart.
 * Rules: taking a part off or putting it on disturbs its `disturbs`, and every item of its own that lapses when
 * `disturbed` and can be done with the part on; one that can only be done with the part off is due once it came off.
 * Setting an item, or doing one that is work in itself (clean, replace, set, lubricate), disturbs its `disturbs` and
 * opens its `opens`.
 */
import type { Item, ItemId, JointId, Kart, PartId } from './model.ts';

const WORK_IN_ITSELF: ReadonlySet<Item['action']> = new Set(['clean', 'replace', 'set', 'lubricate', 'mend']);

/** Does doing this item change the kart, so that what it names is disturbed? A look or a reading does not. */
export const changesKart = (item: Item): boolean => WORK_IN_ITSELF.has(item.action);

export type Disturbers = {
  readonly parts: ReadonlyMap<ItemId, readonly PartId[]>;
  readonly items: ReadonlyMap<ItemId, readonly ItemId[]>;
  readonly openers: ReadonlyMap<JointId, readonly ItemId[]>;
  /** Items of a part that lapse when it is disturbed and can only be done while it is off: the seat of a hub. */
  readonly whileOff: ReadonlyMap<PartId, readonly ItemId[]>;
  /** Every part that might have to be off for the item, over all its alternatives and all ways in. */
  readonly mayNeedOff: (item: ItemId) => ReadonlySet<PartId>;
};

const known = new WeakMap<Kart, Disturbers>();

export const disturbersOf = (kart: Kart): Disturbers => {
  const before = known.get(kart);
  if (before) return before;
  const made = workOut(kart);
  known.set(kart, made);
  return made;
};

const workOut = (kart: Kart): Disturbers => {
  const closure = new Map<PartId, ReadonlySet<PartId>>();
  const partsBehind = (id: PartId): ReadonlySet<PartId> => {
    const ready = closure.get(id);
    if (ready) return ready;
    const all = new Set<PartId>();
    const walk = (p: PartId): void => {
      for (const way of kart.parts[p]?.behind ?? [])
        for (const q of way)
          if (!all.has(q)) {
            all.add(q);
            walk(q);
          }
    };
    walk(id);
    closure.set(id, all);
    return all;
  };
  const offFor = new Map<ItemId, ReadonlySet<PartId>>();
  const mayNeedOff = (id: ItemId): ReadonlySet<PartId> => {
    const ready = offFor.get(id);
    if (ready) return ready;
    const all = new Set<PartId>();
    for (const way of kart.items[id]?.needsOff ?? [])
      for (const p of way) {
        all.add(p);
        for (const q of partsBehind(p)) all.add(q);
      }
    offFor.set(id, all);
    return all;
  };

  const parts = new Map<ItemId, PartId[]>();
  const items = new Map<ItemId, ItemId[]>();
  const openers = new Map<JointId, ItemId[]>();
  const whileOff = new Map<PartId, ItemId[]>();
  const put = <K, V>(map: Map<K, V[]>, key: K, value: V): void => {
    const list = map.get(key);
    if (!list) map.set(key, [value]);
    else if (!list.includes(value)) list.push(value);
  };
  for (const part of Object.values(kart.parts)) for (const id of part.disturbs) put(parts, id, part.id);
  for (const item of Object.values(kart.items)) {
    for (const id of item.disturbs) put(items, id, item.id);
    for (const id of item.opens) put(openers, id, item.id);
    if (!kart.parts[item.part]?.removable || !item.when.some(w => w.on === 'disturbed')) continue;
    if (!mayNeedOff(item.id).has(item.part)) put(parts, item.id, item.part);
    else if (!replacesPart(item) && item.needsOff.every(way => way.includes(item.part)))
      put(whileOff, item.part, item.id);
  }
  return { parts, items, openers, whileOff, mayNeedOff };
};

/** Replacing with its own part off, or because it failed, is replacing that part: another one goes back on. */
export const replacesPart = (item: Item): boolean =>
  item.action === 'replace' &&
  (item.mends !== undefined || (item.needsOff.length > 0 && item.needsOff.every(way => way.includes(item.part))));
