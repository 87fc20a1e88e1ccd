/** What is not as it was when the kart last ran: air, settings, tyres, fuel, and what was opened or changed on it. */
import { type Fact, fold } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { counted } from '../setup-history.ts';
import { setupSheet } from '../setup-sheet.ts';
import { airRead } from './air.ts';
import type { Since } from './model.ts';
import type { TrackRecord } from './session.ts';
import { ratioOf } from './settings.ts';

export function sinceLast(kart: Kart, facts: readonly Fact[], { sessions, coming }: TrackRecord): readonly Since[] {
  const last = sessions.at(-1);
  if (last === undefined) return [];
  const { label, at } = last.outing;
  const { differences } = setupSheet(kart, facts, { against: { label, at } });
  return [
    ...airSince(airRead(last.weather)?.density, airRead(coming.weather)?.density),
    ...differences.flatMap(({ name, was, now }) => (now === null ? [] : [{ what: name, was, now }])),
    ...changed('tyres', last.tyres?.set, coming.tyres?.set),
    ...changed('fuel, petrol to oil', ratioOf(last.mixed), ratioOf(coming.mixed)),
    ...workSince(facts, at),
  ];
}

function airSince(was: number | undefined, now: number | undefined): readonly Since[] {
  if (was === undefined || now === undefined) return [];
  const share = 100 * (now / was - 1);
  const text = `${Math.abs(share).toFixed(1)} % ${share >= 0 ? 'denser' : 'thinner'}`;
  return [{ what: 'air', was: `${was.toFixed(3)} kg/m³`, now: `${now.toFixed(3)} kg/m³, ${text}` }];
}

const changed = (what: string, was: string | undefined, now: string | undefined): readonly Since[] =>
  now === undefined || was === now ? [] : [{ what, was: was ?? null, now }];

/** Parts put on afresh, parts that came off and on again, joints made: said once each, newest state. */
function workSince(facts: readonly Fact[], at: string): readonly Since[] {
  const later = counted(facts).filter(fact => fact.at > at);
  const state = fold(facts);
  const parts = new Map<string, Since>();
  for (const fact of later) {
    if (fact.kind === 'fitted')
      parts.set(fact.part, { what: fact.part, was: null, now: fact.fresh ? 'another one fitted' : 'off and on again' });
    if (fact.kind === 'taken off' && state.parts[fact.part]?.on === false)
      parts.set(fact.part, { what: fact.part, was: null, now: 'off' });
    if (fact.kind === 'found')
      parts.set(`${fact.part} find`, { what: fact.part, was: null, now: `found: ${fact.defect}` });
  }
  return [...parts.values()];
}
