/**
 * Which spares to carry, for the kart as it stands. The weekend is finished when none of the parts that its functions need
 * fails more often than there are spares for it; one that another backs up counts too, for nobody goes out with it broken.
 * Bands of kinds that are independent are put together as roots of sums of squares on ln (MOVER; Zou and Donner 2008, memory).
 */
import { functionsNeeding, type Kart, type Part, type PartId } from '../../kart/index.ts';
import { basisWords, chanceShort, type Posterior } from '../posterior/index.ts';
import { type KindRecord, kindRecords, lifeNow, type RecordAsk } from '../record/index.ts';
import { changeMinutes } from './change-time.ts';
import { type Choice, chooseSpares } from './choose.ts';
import { type Enough, enoughSpares } from './failures.ts';
import { inBox, pileOf } from './in-box.ts';
import type { Pile, Purchase, SparesBox, Told } from './model.ts';

export type SparesAsk = RecordAsk & {
  readonly hours: number; // of the event, above 0
  /** Left out: as much as it takes. */
  readonly money?: number;
  readonly kilograms?: number;
  /** There are between two sessions: what takes longer to change is no help from the box. */
  readonly minutes?: number;
  /** Parts that work which is due puts on new before it runs. */
  readonly renewed?: ReadonlySet<PartId>;
};

const MORE = 20;
/** A spare that would be used in fewer weekends than 1 of 10,000 is not looked at. Common practice. */
const WORTH_CARRYING = 1e-4;
const [FEW, MOST] = [2, 9];
const NOTE =
  'Only failures of parts by age and chance are counted, as far as they are known: no crash, no joint that lets go, no driver. A spare makes no part fit; it is checked like any other once it is on.';

export function sparesBox(kart: Kart, ask: SparesAsk): SparesBox {
  const { hours, money, kilograms, minutes } = ask;
  for (const [name, value] of Object.entries({ money, kilograms, minutes }))
    if (value !== undefined && !(value >= 0)) throw new Error(`sparesBox: ${name} must be 0 or more, got ${value}`);
  const { piles, unknown } = pilesOf(kart, ask);
  const open = piles.map(pile => choicesOf(pile, ask));
  const within = (budget: number | undefined): readonly number[] => {
    const limits = { money: budget ?? Number.POSITIVE_INFINITY, kilograms: kilograms ?? Number.POSITIVE_INFINITY };
    const { taken } = chooseSpares(
      open.map(({ choices }) => choices.map(({ choice }) => choice)),
      limits,
    );
    const chosen = taken.map((n, k) => open[k]?.choices[n]?.spares ?? 0);
    // What is there anyway and need not be weighed goes along.
    return kilograms === undefined ? chosen.map((n, k) => Math.max(n, piles[k]?.have ?? 0)) : chosen;
  };
  const carried = within(money);
  const purchase = (carry: readonly number[]) => purchasesOf(piles, carry);
  const buy = purchase(carried);
  const longer = money === undefined ? carried : within(money + MORE);
  const finish = (carry: readonly number[]): Told => finishOf(piles, carry);
  return {
    hours,
    budget: { money: money ?? null, kilograms: kilograms ?? null, minutes: minutes ?? null },
    finish: { none: finish(piles.map(() => 0)), box: finish(piles.map(({ have }) => have)), chosen: finish(carried) },
    piles: piles
      .map((pile, k) => told(pile, carried[k] ?? 0, open[k]?.why ?? null))
      .sort((a, b) => b.fails.chance - a.fails.chance),
    buy,
    money: spent(buy),
    kilograms: piles.reduce((sum, { kilograms: each }, k) => sum + (each ?? 0) * (carried[k] ?? 0), 0),
    more: longer.join() === carried.join() ? null : { money: MORE, finish: finish(longer), buy: purchase(longer) },
    frontier: frontierOf(within, spent(purchase(within(undefined)))).map(carry => ({
      money: spent(purchase(carry)),
      finish: finish(carry),
    })),
    unknown,
    note: NOTE,
  };
}

type Known = {
  readonly name: string;
  readonly parts: readonly Part[];
  readonly enough: readonly Enough[]; // with 0, 1, 2 … spares
  readonly posterior: Posterior;
  readonly have: number;
  readonly counted: boolean;
  readonly price: number | null;
  readonly kilograms: number | null;
  readonly changeMinutes: number;
};

function pilesOf(
  kart: Kart,
  ask: SparesAsk,
): { readonly piles: readonly Known[]; readonly unknown: SparesBox['unknown'] } {
  const ofKind = kindRecords(kart, ask);
  const unknown: { part: string; why: string }[] = [];
  const gathered = new Map<string, { part: Part; posterior: Posterior; age: number }[]>();
  for (const part of Object.values(kart.parts)) {
    if (functionsNeeding(kart, part.id).length === 0) continue;
    const found = posteriorNow(kart, part, ofKind(part.kind), ask);
    if (typeof found === 'string') unknown.push({ part: part.id, why: found });
    else gathered.set(pileOf(kart, part), [...(gathered.get(pileOf(kart, part)) ?? []), { part, ...found }]);
  }
  const box = inBox(kart, ask.books.find(book => book.kart.name === kart.name)?.facts ?? []);
  const piles = [...gathered].map(([name, members]): Known => {
    const [{ part, posterior }] = members as [(typeof members)[number]];
    const cost = kart.costs?.spares[part.kind];
    const exposed = { ages: members.map(({ age }) => age), hours: ask.hours };
    const few = enoughSpares(posterior, { ...exposed, most: FEW });
    const rare = 1 - (few.at(-1)?.mean ?? 0) < WORTH_CARRYING;
    return {
      name,
      parts: members.map(one => one.part),
      enough: rare ? few : enoughSpares(posterior, { ...exposed, most: MOST }),
      posterior,
      have: box.get(name) ?? 0,
      counted: box.has(name),
      price: cost?.price ?? null,
      kilograms: cost?.mass?.si ?? null,
      changeMinutes: Math.max(...members.map(one => changeMinutes(kart, one.part))),
    };
  });
  return { piles, unknown };
}

/** Or why there is none. */
function posteriorNow(
  kart: Kart,
  part: Part,
  record: KindRecord,
  { hours, renewed }: SparesAsk,
): { readonly posterior: Posterior; readonly age: number } | string {
  const now = lifeNow(kart, record, part);
  if (now === undefined) return 'The record does not hold this part.';
  const outlook = record.outlook(now, hours);
  return outlook.kind === 'unknown'
    ? outlook.why
    : { posterior: outlook.posterior, age: renewed?.has(part.id) ? 0 : now.age };
}

type Open = {
  readonly choices: readonly { readonly spares: number; readonly choice: Choice }[];
  readonly why: string | null;
};

/** How many of a pile may be carried, and what more is worth; none of it unless it is worth more than fewer. */
function choicesOf({ enough, have, price, kilograms, changeMinutes: change }: Known, ask: SparesAsk): Open {
  const choices: Open['choices'][number][] = [];
  const slow = ask.minutes !== undefined && change > ask.minutes;
  const unweighed = ask.kilograms !== undefined && kilograms === null;
  for (const [spares, { mean }] of enough.entries()) {
    const value = Math.log(Math.max(mean, 1e-300));
    const before = choices.at(-1)?.choice.value ?? Number.NEGATIVE_INFINITY;
    if (spares > 0 && (1 - (enough[spares - 1]?.mean ?? 0) < WORTH_CARRYING || !(value > before + 1e-12))) continue;
    if (spares > 0 && (slow || unweighed || (spares > have && price === null))) continue;
    const choice = { value, money: (price ?? 0) * Math.max(0, spares - have), mass: (kilograms ?? 0) * spares };
    choices.push({ spares, choice });
  }
  const useful = 1 - (enough[Math.min(have, enough.length - 1)]?.mean ?? 1) >= WORTH_CARRYING;
  const why = !useful
    ? null
    : slow
      ? `Changing it takes ${Math.round(change)} min, longer than there is between two sessions.`
      : unweighed
        ? 'Its mass is not known: say it under costs in the kart file.'
        : price === null
          ? 'Its price is not known: say it under costs in the kart file.'
          : null;
  return { choices, why };
}

const enoughWith = ({ enough }: Known, spares: number): Enough =>
  enough[Math.min(spares, enough.length - 1)] ?? { mean: 0, low: 0, high: 1 };

const toldOf = ({ mean, low, high }: Enough): Told => ({
  chance: mean,
  low,
  high,
  words: chanceShort({ mean, low, high }),
});

const not = ({ mean, low, high }: Enough): Enough => ({ mean: 1 - mean, low: 1 - high, high: 1 - low });

function finishOf(piles: readonly Known[], carry: readonly number[]): Told {
  const each = piles.map((pile, k) => enoughWith(pile, carry[k] ?? 0));
  const mean = each.reduce((product, one) => product * one.mean, 1);
  const off = (end: 'low' | 'high'): number =>
    Math.sqrt(each.reduce((sum, one) => sum + Math.log(Math.max(one[end], 1e-300) / one.mean) ** 2, 0));
  return toldOf({ mean, low: mean * Math.exp(-off('low')), high: Math.min(1, mean * Math.exp(off('high'))) });
}

function told(pile: Known, carry: number, why: string | null): Pile {
  const { name, parts, posterior, have, counted, price, kilograms } = pile;
  const [first] = parts as [Part];
  return {
    name,
    kind: first.kind,
    system: first.system,
    parts: parts.map(({ id }) => id),
    fails: toldOf(not(enoughWith(pile, 0))),
    held: toldOf(enoughWith(pile, carry)),
    basis: basisWords(posterior),
    have,
    counted,
    carry,
    buy: Math.max(0, carry - have),
    price,
    kilograms,
    changeMinutes: pile.changeMinutes,
    why,
  };
}

const purchasesOf = (piles: readonly Known[], carry: readonly number[]): readonly Purchase[] =>
  piles.flatMap(({ name, have, price }, k) => {
    const count = Math.max(0, (carry[k] ?? 0) - have);
    return count === 0 || price === null ? [] : [{ name, count, price, money: count * price }];
  });

const spent = (buy: readonly Purchase[]): number => buy.reduce((sum, { money }) => sum + money, 0);

/** The best for each of some ten round sums of money, up to all that would be bought; only where more buys something else. */
function frontierOf(within: (money: number) => readonly number[], all: number): readonly (readonly number[])[] {
  const step = roundUp(all / 10);
  const points: (readonly number[])[] = [];
  for (let money = 0; ; money += step) {
    const carry = within(money);
    if (carry.join() !== points.at(-1)?.join()) points.push(carry);
    if (money >= all) return points;
  }
}

/** The next of 1, 2, 5, 10, 20 … */
function roundUp(x: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(x, 1)));
  return [1, 2, 5, 10].map(digit => digit * power).find(one => one >= x) ?? 10 * power;
}
