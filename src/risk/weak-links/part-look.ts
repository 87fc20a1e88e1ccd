/** How likely each part fails over the event by its own life: its age, the record of its kind, what its owner expects. */
import type { Kart, Part } from '../../kart/index.ts';
import { kindRecords, lifeNow, type RecordAsk } from '../../life/index.ts';
import { likelyOf } from './likely.ts';
import type { Likely } from './model.ts';

export type PartLook = { readonly likely: Likely | null; readonly unknown: string | null; readonly own: boolean };

/** @param ask `hours` of the event, practice counted in */
export function partLooks(
  kart: Kart,
  { hours = 0, ...record }: RecordAsk & { readonly hours: number | undefined },
): (part: Part) => PartLook {
  const ofKind = kindRecords(kart, record);
  return part => {
    const unknown = (why: string): PartLook => ({ likely: null, unknown: why, own: false });
    if (!(hours > 0)) return unknown('No event ahead with its running time, so there are no hours to reckon over.');
    const known = ofKind(part.kind);
    const now = lifeNow(kart, known, part);
    if (now === undefined) return unknown('The record does not hold this part.');
    const outlook = known.outlook(now, hours);
    if (outlook.kind === 'unknown') return unknown(outlook.why);
    return {
      likely: likelyOf(outlook.chance, outlook.words.basis),
      unknown: null,
      own: outlook.posterior.basis === 'own record',
    };
  };
}
