/** What was settled once and holds again: the gates of a track, and how a log's columns are to be read (SPEC B31). */
import type { BookGate, Fact, FactOf } from '../../book/index.ts';
import type { CsvLayout, LayoutChoice, Role } from '../import/index.ts';
import { counted } from './sessions.ts';

export type ChosenColumns = { readonly [role in Role]?: { readonly heading: string; readonly unit?: string } };

/** Gates by track, those of the newest laps; the track driven last comes first. */
export function gatesByTrack(facts: readonly Fact[]): ReadonlyMap<string, readonly BookGate[]> {
  const gates = new Map<string, readonly BookGate[]>();
  for (const fact of newestFirst(facts))
    if (fact.track !== undefined && fact.gates && fact.gates.length > 0 && !gates.has(fact.track))
      gates.set(fact.track, fact.gates);
  return gates;
}

/** The proposal, with the columns chosen last for the same header laid over it, and over those what is chosen now. */
export function choiceFrom(facts: readonly Fact[], now: ChosenColumns = {}): LayoutChoice {
  const before = newestFirst(facts).flatMap(fact => fact.columns ?? []);
  return (proposed: CsvLayout): CsvLayout => {
    const known = before.find(({ signature }) => signature === proposed.signature)?.roles as ChosenColumns | undefined;
    return { ...proposed, columns: { ...proposed.columns, ...known, ...now } };
  };
}

const newestFirst = (facts: readonly Fact[]): readonly FactOf<'laps'>[] =>
  counted(facts)
    .filter((fact): fact is FactOf<'laps'> => fact.kind === 'laps')
    .toReversed();
