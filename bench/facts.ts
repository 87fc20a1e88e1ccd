/** A long invented book for one kart: seasons of events, each prepared, run and worked on. The same seed, the same book. */
import { CHAIN_START, type Draft, type Fact, type Payload, sealAll } from '../src/book/index.ts';
import type { Kart } from '../src/kart/index.ts';
import { type Random, seeded } from './random.ts';

const START = Date.UTC(2020, 0, 4, 8);
const MINUTE = 60_000;
/** Facts come in events of about this many; between two events lies a week. */
const FACTS_AN_EVENT = 200;

/** `count` facts of the kart, chained and sealed, oldest first, under `name`. The last event lies ahead of the last fact. */
export function inventBook(kart: Kart, count: number, seed = 41, name = kart.name): readonly Fact[] {
  const random = seeded(seed);
  const drafts: Draft[] = [];
  for (let n = 0; n < count; n++) {
    const week = Math.floor(n / FACTS_AN_EVENT);
    const at = new Date(START + week * 7 * 24 * 60 * MINUTE + (n % FACTS_AN_EVENT) * 3 * MINUTE).toISOString();
    drafts.push({
      ...payloadAt(kart, random, n, week),
      id: `${name}-${n}`,
      kart: name,
      at,
      recorded: at,
      by: random.pick(['A. Bench', 'B. Bench']),
      device: name,
    } as Draft);
  }
  return sealAll(CHAIN_START, drafts);
}

/** When the next event of such a book is prepared: an hour after its last fact. */
export const dayAfter = (facts: readonly Fact[]): string =>
  new Date(Date.parse(facts.at(-1)?.at ?? new Date(START).toISOString()) + 60 * MINUTE).toISOString();

function payloadAt(kart: Kart, random: Random, n: number, week: number): Payload {
  const place = n % FACTS_AN_EVENT;
  if (place === 0) {
    const from = new Date(START + (week * 7 + 6) * 24 * 60 * MINUTE).toISOString();
    return { kind: 'event', event: `event ${week}`, from, minutes: 90, laps: 80 };
  }
  if (place > FACTS_AN_EVENT - 8) {
    return {
      kind: 'ran',
      event: `event ${week}`,
      minutes: 10 + random.below(5),
      laps: 10 + random.below(3),
      wet: random.below(6) === 0,
    };
  }
  const part = random.pick(removable(kart));
  const die = random.below(20);
  if (die === 0) return { kind: 'taken off', part };
  if (die === 1) return { kind: 'fitted', part, fresh: random.below(4) === 0 };
  if (die < 6) return { kind: 'made', joint: random.pick(jointIds(kart)), second: 'in place' };
  const item = random.pick(itemIds(kart));
  if (die === 6) return { kind: 'checked', item, result: 'fail', why: 'worn past its limit' };
  return { kind: 'checked', item, result: 'pass' };
}

const once = <T>(of: (kart: Kart) => T): ((kart: Kart) => T) => {
  const kept = new WeakMap<Kart, T>();
  return kart => {
    const known = kept.get(kart);
    if (known !== undefined) return known;
    const made = of(kart);
    kept.set(kart, made);
    return made;
  };
};
const removable = once(kart =>
  Object.values(kart.parts)
    .filter(part => part.removable)
    .map(part => part.id),
);
const jointIds = once(kart => Object.keys(kart.joints));
const itemIds = once(kart => Object.keys(kart.items));
