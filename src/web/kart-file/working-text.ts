/** The text of a kart file under work, kept over a reload, with the filed one it began from. */
import type { Keep } from '../place.ts';
import type { Snapshot } from '../session.ts';

export type Filed = { readonly fact: string; readonly text: string; readonly by: string; readonly at: string };
export type WorkingText = { readonly from: string; readonly text: string };

const slotOf = (kart: string): string => `kart-file ${kart}`;

/** The file in force. */
export function filedIn({ facts, state }: Pick<Snapshot, 'facts' | 'state'>): Filed | undefined {
  const fact = facts.find(line => line.fact.id === state.filed?.fact)?.fact;
  return fact?.kind === 'kart filed' ? { fact: fact.id, text: fact.text, by: fact.by, at: fact.at } : undefined;
}

export function keptText(keep: Keep, kart: string): WorkingText | undefined {
  try {
    const kept = JSON.parse(keep.get(slotOf(kart)) || 'null') as Partial<WorkingText> | null;
    return typeof kept?.text === 'string' && typeof kept.from === 'string'
      ? { from: kept.from, text: kept.text }
      : undefined;
  } catch {
    return undefined; // something else wrote there
  }
}

export const keepText = (keep: Keep, kart: string, working: WorkingText | undefined): void =>
  keep.set(slotOf(kart), working === undefined ? '' : JSON.stringify(working));
