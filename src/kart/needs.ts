/** What the functions of a kart hang on. */
import type { Kart, KartFunction, Need, PartId } from './model.ts';

/** Every mention of a part. */
export function partsOf(need: Need): readonly PartId[] {
  if ('part' in need) return [need.part];
  return ('allOf' in need ? need.allOf : 'anyOf' in need ? need.anyOf : need.of).flatMap(partsOf);
}

/** The functions that need a part, alone or beside another, the worst first. */
export const functionsNeeding = (kart: Kart, part: PartId): readonly KartFunction[] =>
  Object.values(kart.functions)
    .filter(({ needs }) => partsOf(needs).includes(part))
    .sort((a, b) => a.severity - b.severity);
