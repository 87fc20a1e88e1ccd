/** The season at a glance: hours and laps by event, and the best lap of each track, dry and wet, with the air it was driven in. */
import type { Fact } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { type LapSession, lapSessions, type SessionLap } from '../laps/index.ts';
import { type TrackSession, trackRecord } from '../prep/index.ts';
import type { At } from './asking.ts';
import type { Queries } from './queries.ts';

export type SeasonEvent = {
  readonly event: string; // or the day, where none was named
  readonly at: string; // of its first session
  readonly track: string | null;
  readonly sessions: number;
  readonly minutes: number;
  readonly laps: number;
  readonly best: number | null; // s
};
export type SeasonBest = {
  readonly track: string;
  readonly wet: boolean;
  readonly lap: SessionLap;
  readonly session: string;
  readonly at: string;
  readonly celsius: number | null; // of the air
  readonly trackCelsius: number | null;
  readonly sessions: number; // with laps, there and in the same wet or dry
};
/** New parts put on since the first session, at the prices that the kart file gives now. */
export type SeasonCost = {
  readonly money: number; // the owner's own
  readonly parts: number; // with a price
  readonly unpriced: readonly string[]; // put on new, and nobody said what they cost
};
export type Season = {
  readonly kart: string;
  readonly invented: boolean;
  readonly from: string | null; // the first session
  readonly until: string | null;
  readonly minutes: number;
  readonly laps: number;
  readonly sessions: number;
  readonly events: readonly SeasonEvent[];
  readonly best: readonly SeasonBest[];
  /** Null: the kart file holds no prices, so nothing is known of what it cost. */
  readonly cost: SeasonCost | null;
  readonly say: readonly string[];
};

export async function seasonOf(queries: Queries, name: string, ask: At = {}): Promise<Season> {
  const kart = await queries.kart(name, ask);
  const facts = (await queries.facts(name, ask)).flatMap(({ fact, struck }) => (struck ? [] : [fact]));
  const { sessions } = trackRecord(kart, facts, facts.at(-1)?.at ?? '');
  const laps = lapSessions(facts);
  const cost = costOf(kart, facts, sessions[0]?.outing.at);
  const untimed = sessions.filter(({ outing }) => !laps.some(({ run, best }) => best && run === outing.fact)).length;
  return {
    ...{ kart: name, invented: kart.invented },
    ...{ from: sessions[0]?.outing.at ?? null, until: sessions.at(-1)?.outing.at ?? null },
    minutes: sum(sessions, ({ outing }) => outing.minutes),
    laps: sum(sessions, ({ outing }) => outing.laps ?? 0),
    sessions: sessions.length,
    events: grouped(sessions, eventName).map(([event, of]) => eventLine(event, of, laps)),
    best: bestOf(sessions, laps),
    cost,
    say: [
      ...(untimed === 0
        ? []
        : [`${untimed} of ${sessions.length} sessions have no lap times; they count for hours and laps.`]),
      costSay(cost),
    ],
  };
}

function costOf(kart: Kart, facts: readonly Fact[], from: string | undefined): SeasonCost | null {
  if (kart.costs === undefined) return null;
  const { spares } = kart.costs;
  const fitted = facts.flatMap(fact =>
    fact.kind === 'fitted' && fact.fresh && from !== undefined && fact.at >= from ? [fact.part] : [],
  );
  const priced = fitted.map(part => ({ part, price: spares[kart.parts[part]?.kind ?? '']?.price }));
  const known = priced.flatMap(({ price }) => price ?? []);
  return {
    ...{ money: sum(known, price => price), parts: known.length },
    unpriced: [...new Set(priced.flatMap(({ part, price }) => (price === undefined ? [part] : [])))],
  };
}

function costSay(cost: SeasonCost | null): string {
  if (cost === null) return 'Costs are not known: the kart file holds no prices.';
  const { money, parts, unpriced } = cost;
  const rest = unpriced.length === 0 ? '' : ` Without a price: ${unpriced.join(', ')}.`;
  return `New parts put on: ${parts} for ${money} of your own money, at the prices of the kart file.${rest} Tyres, fuel and entries are not counted.`;
}

const eventName = ({ outing }: TrackSession): string => outing.label.split(' › ')[0] ?? outing.label;

function eventLine(event: string, of: readonly TrackSession[], laps: readonly LapSession[]): SeasonEvent {
  const runs = new Set(of.map(({ outing }) => outing.fact));
  const times = laps.flatMap(({ run, best }) => (best && run !== null && runs.has(run) ? [best.time] : []));
  return {
    ...{
      event,
      at: of[0]?.outing.at ?? '',
      track: of.find(({ outing }) => outing.track !== null)?.outing.track ?? null,
    },
    ...{ sessions: of.length, minutes: sum(of, one => one.outing.minutes), laps: sum(of, one => one.outing.laps ?? 0) },
    best: times.length === 0 ? null : Math.min(...times),
  };
}

function bestOf(sessions: readonly TrackSession[], laps: readonly LapSession[]): readonly SeasonBest[] {
  const timed = sessions.flatMap(one => {
    const lap = laps.find(({ run }) => run === one.outing.fact)?.best;
    return lap && one.outing.track !== null ? [{ ...one, lap, track: one.outing.track }] : [];
  });
  return grouped(timed, ({ track, outing }) => `${track}${outing.wet ? ' wet' : ' dry'}`)
    .map(([, of]): SeasonBest => {
      const top = of.reduce((best, one) => (one.lap.time < best.lap.time ? one : best));
      const { outing, weather, lap, track } = top;
      return {
        ...{ track, wet: outing.wet, lap, session: outing.label, at: outing.at },
        ...{ celsius: weather?.celsius ?? null, trackCelsius: weather?.trackCelsius ?? null, sessions: of.length },
      };
    })
    .toSorted((a, b) => a.track.localeCompare(b.track) || Number(a.wet) - Number(b.wet));
}

const sum = <T>(of: readonly T[], each: (one: T) => number): number =>
  Number(of.reduce((all, one) => all + each(one), 0).toFixed(2));

/** In the order of the first of each. */
function grouped<T>(of: readonly T[], key: (one: T) => string): readonly (readonly [string, readonly [T, ...T[]]])[] {
  const groups = new Map<string, [T, ...T[]]>();
  for (const one of of) {
    const group = groups.get(key(one));
    if (group) group.push(one);
    else groups.set(key(one), [one]);
  }
  return [...groups];
}
