/** Which spares to carry to an event, what to buy, and what else the work that is due takes. */
import { inBox, pileOf, type SparesBox, sparesBox } from '../life/index.ts';
import { given } from './asking.ts';
import { asked, type LifeQuestion, refuseAs } from './life.ts';
import type { Queries } from './queries.ts';

export type SparesQuestion = LifeQuestion & {
  /** Left out: as much as it takes. */
  readonly money?: number;
  readonly kilograms?: number;
  /** Minutes there are between two sessions. */
  readonly minutes?: number;
};
export type SparesAnswer = {
  readonly kart: string;
  readonly event: string | null;
  /** Null where there is no event and no hours were said. */
  readonly box: SparesBox | null;
  readonly unknown: string | null; // why there is none
  /** Parts that work which is due puts on new: they are needed before any spare is. */
  readonly due: readonly {
    readonly part: string;
    readonly item: string;
    readonly why: string;
    readonly pile: string;
    readonly inBox: number;
    readonly price: number | null;
  }[];
  /** What else the work that is due uses up, and for how many items. */
  readonly consumables: readonly { readonly name: string; readonly items: number }[];
};

const NO_HOURS = 'There is no event ahead with its running time, and no hours were said: nothing can be reckoned.';

export async function sparesOf(
  queries: Queries,
  name: string,
  { money, kilograms, minutes, ...question }: SparesQuestion,
  priors: string,
): Promise<SparesAnswer> {
  for (const [what, value] of Object.entries({ money, kilograms, minutes }))
    if (value !== undefined && !(value >= 0))
      refuseAs(what, `Expected ${what} of 0 or more, got ${value}.`, `Leave ${what} out, or give a number.`);
  const { kart, event, hours, record } = await asked(queries, name, question, priors);
  const { due } = await queries.due(name, given({ at: question.at, event: question.event }));
  const box = inBox(kart, record.books.find(book => book.kart.name === kart.name)?.facts ?? []);
  const uses = new Map<string, number>();
  for (const { item } of due)
    for (const one of kart.items[item]?.consumables ?? []) uses.set(one, (uses.get(one) ?? 0) + 1);
  const renewals = due.flatMap(({ item, why, renews, ...on }) => {
    const part = kart.parts[on.part];
    if (!part || !renews) return [];
    const pile = pileOf(kart, part);
    const price = kart.costs?.spares[part.kind]?.price ?? null;
    return [{ part: part.id, item, why, pile, inBox: box.get(pile) ?? 0, price }];
  });
  return {
    kart: name,
    event,
    box:
      hours === undefined
        ? null
        : sparesBox(kart, {
            ...record,
            hours,
            ...given({ money, kilograms, minutes }),
            renewed: new Set(renewals.map(one => one.part)),
          }),
    unknown: hours === undefined ? NO_HOURS : null,
    due: renewals,
    consumables: [...uses].map(([of, items]) => ({ name: of, items })).sort((a, b) => b.items - a.items),
  };
}
