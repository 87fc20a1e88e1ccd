/**
 * When to replace this very part: after how many more events, and for which reason.
 *
 *   C(T) = E[c_p R(T) + c_f F(T)] / E[∫₀ᵀ R];   chance of event k+1 = 1 - E[R(t + (k+1) dt)] / E[R(t + k dt)]
 *
 * E over the lives that fit record and guess, this part among the record at its age t; dt hours of an event. The only
 * moments there are lie between events. The safety cap and the maker's or rule book's limit stand over the cost, and where
 * its failure can hurt worst (severity 1) the cost has no say at all. Source: Barlow and Proschan 1965, 3 and 4 (memory).
 */
import { expected, lastingOf, type Posterior } from '../posterior/index.ts';
import { meanLife } from '../weibull/index.ts';
import type { Costs } from './by-age.ts';

export type PartAhead = {
  readonly age: number; // now, in the record
  readonly hours: number; // of an event
  readonly costs?: Costs; // a failure with the lost weekend and what it takes with it
  readonly severity?: 1 | 2 | 3 | 4; // of its worst hazard
  readonly cap?: number; // largest chance of failing over an event that is put up with
  readonly limit?: number; // hours at which maker or rule book want it off
  readonly events?: number; // how far to look ahead; 40
  readonly unit?: 'h' | 'laps'; // of ages and hours; h
};

export type Boundary = {
  readonly events: number; // still run before it
  readonly age: number;
  readonly chance: number; // of failing over the next event, having come so far
  readonly rate?: number; // money an hour when each is replaced at this age
};
export type Replacement = {
  readonly kind: 'replace' | 'not foreseen';
  readonly events?: number; // still to run; 0: now
  readonly age?: number;
  readonly because?: 'safety cap' | 'limit' | 'cost';
  readonly never?: number; // money an hour when run until it fails
  /** Share of the lives that fit in which age wears nothing: shape 1 or below. */
  readonly noWear: number;
  readonly boundaries: readonly Boundary[];
  readonly say: readonly string[];
};

const AHEAD = 40;
/** A gain below this is none: the cost curve is flat at its foot. Common practice. */
const WORTH_WHILE = 0.02;

export function replaceThisPart(posterior: Posterior, asked: PartAhead): Replacement {
  const { age, hours, costs, severity, cap, limit } = asked;
  mustBe('hours', hours > 0, 'above 0', hours);
  mustBe('age', age >= 0, '0 or more', age);
  if (cap !== undefined) mustBe('cap', cap > 0 && cap < 1, 'between 0 and 1', cap);
  const boundaries = between(posterior, asked);
  const noWear = expected(posterior, ({ shape }) => (shape <= 1 ? 1 : 0));
  const never = costs && costs.failure / expected(posterior, meanLife);
  const reasons: { readonly events: number; readonly because: NonNullable<Replacement['because']> }[] = [];
  const capped = cap === undefined ? undefined : boundaries.find(({ chance }) => !(chance <= cap));
  if (capped) reasons.push({ events: capped.events, because: 'safety cap' });
  const limited = limit === undefined ? undefined : boundaries.find(at => !(at.age + hours <= limit));
  if (limited) reasons.push({ events: limited.events, because: 'limit' });
  const cheapest = severity === 1 || never === undefined ? undefined : cheapestOf(boundaries, never);
  if (cheapest) reasons.push({ events: cheapest.events, because: 'cost' });
  const first = reasons.reduce<(typeof reasons)[number] | undefined>(
    (soonest, one) => (soonest && soonest.events <= one.events ? soonest : one),
    undefined,
  );
  const at = first && boundaries[first.events];
  return {
    kind: first ? 'replace' : 'not foreseen',
    ...(first && at && { events: first.events, age: at.age, because: first.because }),
    ...(never !== undefined && { never }),
    noWear,
    boundaries,
    say: sayOf(asked, first, at, noWear, cheapest !== undefined),
  };
}

/** The least, where it is a least and worth while: neither the last looked at nor hardly below running until it fails. */
function cheapestOf(boundaries: readonly Boundary[], never: number): Boundary | undefined {
  const priced = boundaries.filter(({ rate }) => rate !== undefined);
  const least = priced.reduce<Boundary | undefined>(
    (best, one) => (best && (best.rate ?? 0) <= (one.rate ?? 0) ? best : one),
    undefined,
  );
  if (least === undefined || least === priced.at(-1)) return undefined;
  return (least.rate ?? never) < (1 - WORTH_WHILE) * never ? least : undefined;
}

function between(posterior: Posterior, { age, hours, costs, events = AHEAD }: PartAhead): readonly Boundary[] {
  const lasting = lastingOf(posterior);
  // Up to today in steps no longer than an event, then event by event; each step by three points (Gauss).
  const before = Math.ceil(age / hours);
  const span = (from: number, wide: number): number =>
    costs ? GAUSS.reduce((sum, [at, weight]) => sum + weight * wide * lasting(from + at * wide), 0) : 0;
  let up = Array.from({ length: before }, (_, n) => span((n * age) / before, age / before)).reduce((a, b) => a + b, 0);
  let reached = lasting(age, age);
  return Array.from({ length: events + 1 }, (_, n): Boundary => {
    const at = age + n * hours;
    if (n > 0) up += span(at - hours, hours);
    const next = lasting(at + hours, age);
    const chance = 1 - next / reached;
    reached = next;
    const gone = 1 - lasting(at);
    const rate = costs && at > 0 ? (costs.planned * (1 - gone) + costs.failure * gone) / up : undefined;
    return { events: n, age: at, chance, ...(rate !== undefined && { rate }) };
  });
}
/** Places and weights of three points in a step of 1. */
const GAUSS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const;

function sayOf(
  { costs, severity, cap, limit, events = AHEAD, unit = 'h' }: PartAhead,
  first: { readonly events: number; readonly because: string } | undefined,
  at: Boundary | undefined,
  noWear: number,
  pays: boolean,
): readonly string[] {
  const when =
    first?.events === 0
      ? 'before it runs again'
      : `after ${first?.events} more ${first?.events === 1 ? 'event' : 'events'}`;
  const why: Readonly<Record<string, string>> = {
    'safety cap': `then the chance of failing over one event passes ${percent(cap ?? 0)}`,
    limit: `one event more would pass the limit of ${limit} ${unit}`,
    cost: 'then running costs least, the lost weekend counted in',
  };
  const wear = `${Math.round(100 * noWear)} in 100 of the lives that fit do not wear with age at all`;
  return [
    first && at
      ? `Replace it ${when}, at ${Number(at.age.toPrecision(3))} ${unit}: ${why[first.because]}.`
      : `Nothing in the next ${events} events asks for a replacement by age.`,
    ...(severity === 1 && costs ? ['Its failure can hurt worst, so cost has no say.'] : []),
    ...(costs && severity !== 1 && !pays
      ? [`By cost, replacing by age is no help: ${wear}. Inspect it, carry a spare.`]
      : []),
    "The maker's limit and the class rules come first; an age is no look at the part.",
  ];
}

const percent = (share: number): string => `${Number((100 * share).toPrecision(2))} %`;

function mustBe(what: string, holds: boolean, condition: string, got: number): void {
  if (!holds) throw new Error(`replaceThisPart: ${what} must be ${condition}, got ${got}`);
}
