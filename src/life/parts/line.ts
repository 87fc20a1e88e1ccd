/** Every part of a kart at its age over the event to come, the most likely to fail first. */
import { functionsNeeding, type Kart, type Part } from '../../kart/index.ts';
import { ended } from '../life.ts';
import type { Outlook } from '../outlook.ts';
import type { NotKnown } from '../posterior/index.ts';
import { type KindRecord, kindRecords, lifeNow, type PartLife, type RecordAsk } from '../record/index.ts';
import type { LifeLine } from './model.ts';

/** `hours` of the event, practice counted in; undefined where there is none. */
export type LifeAsk = RecordAsk & { readonly hours?: number };

/** Those that have failed first, then by chance, then those of which nothing is known. */
export function lifeLines(kart: Kart, ask: LifeAsk): readonly LifeLine[] {
  const ofKind = kindRecords(kart, ask);
  const rank = ({ fate, chance }: LifeLine): number => (fate === 'failed' ? 2 : (chance?.mean ?? -1));
  return Object.values(kart.parts)
    .map(part => lineOf(kart, part, ofKind(part.kind), ask.hours))
    .sort((a, b) => rank(b) - rank(a));
}

const NO_HOURS = 'No event ahead with its running time, so there are no hours to reckon over.';

export function lineOf(kart: Kart, part: Part, record: KindRecord, hours: number | undefined): LifeLine {
  const now = lifeNow(kart, record, part);
  const outlook = outlookNow(now, record, hours);
  const known = outlook.kind === 'outlook' ? outlook : undefined;
  const { mean, low, high } = known?.chance ?? { mean: 0, low: 0, high: 0 };
  return {
    part: part.id,
    kind: part.kind,
    system: part.system,
    age: now?.age ?? null,
    fate: now && ended(now) ? 'failed' : 'running',
    severity: functionsNeeding(kart, part.id)[0]?.severity ?? null,
    chance: known ? { mean, low, high } : null,
    words: known ? { short: known.words.short, long: known.words.long } : null,
    basis: known?.words.basis ?? null,
    mostlyGuess: known !== undefined && known.posterior.basis !== 'own record',
    unknown: outlook.kind === 'unknown' ? outlook.why : null,
  };
}

function outlookNow(now: PartLife | undefined, record: KindRecord, hours: number | undefined): Outlook | NotKnown {
  if (now === undefined) return { kind: 'unknown', why: 'The record does not hold this part.' };
  if (hours === undefined || !(hours > 0)) return { kind: 'unknown', why: NO_HOURS };
  return record.outlook(now, hours);
}
