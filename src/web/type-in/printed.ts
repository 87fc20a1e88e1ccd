/** The lists this device printed: which step a number on the paper stood for, for the plan may number otherwise by then. */
import type { Step } from '../../prep/index.ts';
import type { Keep } from '../place.ts';
import type { Numbered } from './lines.ts';

export type PrintedList = { readonly at: string; readonly steps: readonly Numbered[] };

const MOST = 6;
const slot = (kart: string): string => `printed lists ${kart}`;

/** Newest first. */
export function printedLists(keep: Keep, kart: string): readonly PrintedList[] {
  try {
    const kept: unknown = JSON.parse(keep.get(slot(kart)) || '[]');
    return Array.isArray(kept) ? (kept as readonly PrintedList[]) : [];
  } catch {
    return []; // something else wrote there
  }
}

/** Lines as they are kept: the list they are typed from on a line of its own before them, so that neither is without the other. */
export const withList = (text: string, list: PrintedList): string =>
  text === '' ? '' : `${JSON.stringify(list)}\n${text}`;

export function typedFrom(kept: string): { readonly text: string; readonly list?: PrintedList } {
  const [first = '', ...rest] = kept.split('\n');
  if (!first.startsWith('{')) return { text: kept };
  try {
    return { text: rest.join('\n'), list: JSON.parse(first) as PrintedList };
  } catch {
    return { text: kept };
  }
}

export function keepPrinted(keep: Keep, kart: string, steps: readonly Step[], at: string): void {
  const list: PrintedList = { at, steps: numbered(steps) };
  const kept = printedLists(keep, kart).filter(one => one.at.slice(0, 16) !== at.slice(0, 16));
  keep.set(slot(kart), JSON.stringify([list, ...kept].slice(0, MOST)));
}

export const numbered = (steps: readonly Step[]): readonly Numbered[] =>
  steps.filter(s => s.state !== 'done').map(({ n, key }) => ({ n, key }));
