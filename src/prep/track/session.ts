/**
 * The record by session: what was set and read before each run, and what was read after it. What is learnt at the track
 * is learnt from these. Plug, treads, fuel and hot pressures belong to the run before them (SPEC B25), cold pressures to
 * the run after.
 */
import { type Fact, type FactOf, type Reading, TYRES, type Tyre } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { counted, type Outing, outingOf } from '../setup-history.ts';

export type Pressures = Readonly<Partial<Record<Tyre, Reading>>>; // gauge

export type TrackSession = {
  readonly outing: Outing;
  readonly settings: Readonly<Record<string, string>>; // as they stood at its start, names in lower case
  readonly tyres: FactOf<'tyres'> | undefined; // the set it ran on
  readonly weather: FactOf<'weather'> | undefined; // the last reading before it, no older than half a day
  readonly mixed: FactOf<'fuel mixed'> | undefined;
  readonly cold: Pressures; // set since the run before
  readonly hot: Pressures;
  readonly plug: FactOf<'plug read'> | undefined;
  readonly treads: FactOf<'treads probed'> | undefined;
  readonly fuel: FactOf<'fuel used'> | undefined;
};

/** What stands now, for the session to come. */
export type Coming = Pick<TrackSession, 'settings' | 'tyres' | 'weather' | 'mixed' | 'cold'>;
export type TrackRecord = { readonly sessions: readonly TrackSession[]; readonly coming: Coming };

/** @param facts of this kart alone, up to the moment asked about; struck ones may be among them */
export function trackRecord(kart: Kart, facts: readonly Fact[], now: string): TrackRecord {
  const sessions: TrackSession[] = [];
  let coming: Coming = { settings: {}, tyres: undefined, weather: undefined, mixed: undefined, cold: {} };
  const after = (found: Partial<TrackSession>): void => {
    const last = sessions.pop();
    if (last) sessions.push({ ...last, ...found });
  };
  for (const fact of counted(facts)) {
    switch (fact.kind) {
      case 'ran':
        sessions.push({ ...AFTER, ...coming, weather: fresh(coming.weather, fact.at), outing: outingOf(fact) });
        coming = { ...coming, cold: {} };
        break;
      case 'checked': {
        const read = pressureIn(kart, fact);
        if (read?.key === 'cold pressure') coming = { ...coming, cold: { ...coming.cold, [read.tyre]: read.reading } };
        if (read?.key === 'hot pressure') after({ hot: { ...sessions.at(-1)?.hot, [read.tyre]: read.reading } });
        break;
      }
      case 'set-up':
        coming = { ...coming, settings: { ...coming.settings, ...lowered(fact.changes) } };
        break;
      case 'tyres':
        coming = { ...coming, tyres: fact };
        break;
      case 'weather':
        coming = { ...coming, weather: fact };
        break;
      case 'fuel mixed':
        coming = { ...coming, mixed: fact };
        break;
      case 'plug read':
        after({ plug: fact });
        break;
      case 'treads probed':
        after({ treads: fact });
        break;
      case 'fuel used':
        after({ fuel: fact });
        break;
      default:
        break;
    }
  }
  return { sessions, coming: { ...coming, weather: fresh(coming.weather, now) } };
}

const AFTER = { hot: {}, plug: undefined, treads: undefined, fuel: undefined };

function pressureIn(kart: Kart, { item, reading }: FactOf<'checked'>) {
  const key = item.slice(item.lastIndexOf('/') + 1);
  const tyre = TYRES.find(one => one === kart.parts[kart.items[item]?.part ?? '']?.corner);
  return tyre && reading ? { key, tyre, reading } : undefined;
}

const lowered = (changes: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(changes).map(([name, value]) => [name.trim().toLowerCase(), value.trim()]));

const HALF_DAY_MS = 12 * 3_600_000;
/** A race day may cross midnight UTC; what was read the day before says nothing of now. */
const fresh = (fact: FactOf<'weather'> | undefined, at: string): FactOf<'weather'> | undefined =>
  fact && Date.parse(at) - Date.parse(fact.at) <= HALF_DAY_MS ? fact : undefined;
