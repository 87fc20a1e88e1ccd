/** How long changing a part takes: what its owner says, else the hands' time in the kart file, what is in the way counted in. */
import type { Kart, Part, PartId } from '../../kart/index.ts';

/** Minutes; of the way that takes least, each part on it once. Making joints and checking is not in it. */
export function changeMinutes(kart: Kart, part: Part): number {
  const said = kart.costs?.spares[part.kind]?.change;
  if (said) return said.si / 60;
  return [...offFor(kart, part.id, new Set())].reduce((sum, id) => sum + handsOn(kart.parts[id]), 0);
}

const handsOn = (part: Part | undefined): number => (part ? part.takeOff.minutes + part.refit.minutes : 0);

/** The part and all that must be off before it. */
function offFor(kart: Kart, id: PartId, above: ReadonlySet<PartId>): ReadonlySet<PartId> {
  const part = kart.parts[id];
  if (!part || above.has(id)) return new Set();
  const within = new Set([...above, id]);
  const ways = part.behind.map(way => new Set(way.flatMap(one => [...offFor(kart, one, within)])));
  const minutes = (way: ReadonlySet<PartId>): number =>
    [...way].reduce((sum, one) => sum + handsOn(kart.parts[one]), 0);
  const [least = new Set<PartId>()] = ways.sort((a, b) => minutes(a) - minutes(b));
  return new Set([id, ...least]);
}
