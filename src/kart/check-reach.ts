/** What cannot be reached, what goes round in a circle, and what one taking-off would undo for ever. */
import type { Item, ItemId, Kart, PartId } from './model.ts';
import type { Place, Report } from './problem.ts';
import { mayBeOff, rounds, type Ways } from './ways.ts';

type Parts = Kart['parts'];
type Places = ReadonlyMap<string, Place>;

/** Every part that can be taken off must have a way in, alternatives considered. */
export function checkReach(parts: Parts, places: Places, report: Report): void {
  const round = rounds(parts);
  const told = new Set<string>();
  for (const part of Object.values(parts)) {
    if (!part.removable || round.has(part.id)) continue;
    const way = pursue(part.id, parts, round);
    const last = way.at(-1) ?? part.id;
    const fixed = parts[last]?.removable === false;
    const circle = fixed ? way.slice(-2) : way.slice(way.indexOf(last));
    const key = [...new Set(circle)].sort().join('|');
    if (told.has(key)) continue;
    told.add(key);
    const [first = part.id] = circle;
    report(at(places, [first], 'behind'), {
      expected: 'a way to take it off',
      got: fixed
        ? `${first} behind ${last}, which is never taken off`
        : `a circle: ${circle.join(', which is behind ')}`,
      remedy: fixed
        ? `take "${last}" out of its "behind:", or name another way`
        : 'take one "behind:" of the circle out, or give another way with "behind one of:"',
    });
  }
}

/** From a part that is stuck to the part that holds it, and on, until one comes twice or is never taken off. */
function pursue(start: PartId, parts: Parts, round: ReadonlyMap<PartId, number>): PartId[] {
  const way = [start];
  for (let id: PartId | undefined = start; id !== undefined; ) {
    const next: PartId | undefined = parts[id]?.behind.flatMap(w => w.filter(p => !round.has(p)))[0];
    if (next === undefined) return way;
    const again = way.includes(next);
    way.push(next);
    if (again || !parts[next]?.removable) return way;
    id = next;
  }
  return way;
}

/** Setting a disturbs b, b disturbs c ... must end. */
export function checkDisturbs(items: Kart['items'], places: Places, report: Report): void {
  const done = new Set<ItemId>();
  const way: ItemId[] = [];
  const visit = (id: ItemId): void => {
    if (done.has(id)) return;
    const before = way.indexOf(id);
    if (before >= 0) {
      const circle = [...way.slice(before), id];
      report(at(places, circle, 'disturbs'), {
        expected: 'disturbances that come to an end',
        got: `a circle: ${circle.join(' disturbs ')}`,
        remedy: 'keep the order in which these are set in practice, and take out the "disturbs:" that runs against it',
      });
      return;
    }
    way.push(id);
    for (const next of items[id]?.disturbs ?? []) visit(next);
    way.pop();
    done.add(id);
  };
  for (const id of Object.keys(items)) visit(id);
}

/** What an item needs off must be able to come off. */
export function checkAccess(kart: Pick<Kart, 'parts' | 'items'>, places: Places, report: Report): void {
  for (const item of Object.values(kart.items)) {
    if (item.needsOff.length === 0) continue;
    const stuck = item.needsOff.map(way => way.find(p => !kart.parts[p]?.removable));
    const [first] = stuck;
    if (first !== undefined && stuck.every(p => p !== undefined))
      report(at(places, [item.id], 'needs off'), {
        expected: 'parts that can come off',
        got: `"${first}", which is never taken off`,
        remedy: 'name another part, or say "removable: true" for this one',
      });
  }
}

/**
 * An item that a part disturbs cannot need that part off: putting the part back would undo it each time. Ways into the
 * item that would are left out; when none is left, that is an error. Returns the items with the ways that remain.
 */
export function dropUndoneWays(
  kart: Pick<Kart, 'parts' | 'items'>,
  places: Places,
  report: Report,
): Readonly<Record<ItemId, Item>> {
  const items: Record<ItemId, Item> = { ...kart.items };
  for (const part of Object.values(kart.parts)) {
    if (!part.removable) continue;
    for (const id of part.disturbs) {
      const item = items[id];
      if (item === undefined || item.needsOff.length === 0) continue;
      const left: Ways = item.needsOff.filter(way => !mayBeOff(kart, way).has(part.id));
      if (left.length > 0) items[id] = { ...item, needsOff: left };
      else
        report(at(places, [part.id, id], 'disturbs'), {
          expected: 'an item that holds once everything is back on',
          got: `${id} disturbed by ${part.id}, which must be off to do it`,
          remedy: `take "${item.key}" out of the "disturbs:" of ${part.id}, or "${part.id}" out of its "needs off:"`,
        });
    }
  }
  return items;
}

/** Of several places that one error is about, the one in the kart file, if any is: that is the one to mend. */
export const at = (places: Places, ids: readonly string[], key: string): Place => {
  const known = ids.flatMap(id => places.get(id) ?? []);
  const place = known.find(p => p.file === undefined) ?? known[0] ?? { file: undefined, line: 1, column: 1, path: ids };
  return { ...place, path: [...place.path, key] };
};
