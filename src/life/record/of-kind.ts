/** What is known of a kind on one kart: the lives that count for it, and what is guessed. Each kind is gathered once. */
import type { State } from '../../book/index.ts';
import type { Kart, Part } from '../../kart/index.ts';
import { type Prior, pool } from '../posterior/index.ts';
import { guessOf } from './guess.ts';
import { type KartBook, livesOf, type PartLife } from './part-lives.ts';
import type { Priors } from './priors.ts';

export type KindRecord = { readonly lives: readonly PartLife[]; readonly prior: Prior | undefined };

export type RecordAsk = {
  /** Of one owner; the kart asked about among them. None: no record. */
  readonly books: readonly KartBook[];
  readonly priors: Priors;
  /** Of the kart asked about: what was written down of lives to expect. */
  readonly state?: Pick<State, 'expected'>;
};

export function kindRecords(kart: Kart, { books, priors, state }: RecordAsk): (kind: string) => KindRecord {
  const known = new Map<string, KindRecord>();
  return kind => {
    const before = known.get(kind);
    if (before) return before;
    const prior = guessOf(kart, state, kind, priors);
    const record = { lives: alike(livesOf(books, kind), kart.name, prior), prior };
    known.set(kind, record);
    return record;
  };
}

/** The life of the part that is in its place today. */
export const lifeNow = (kart: Kart, { lives }: KindRecord, part: Part): PartLife | undefined =>
  lives.find(life => life.now && life.part === part.id && life.kart === kart.name);

/** One record of all karts of the owner; of this kart alone where the karts show that they wear these differently. */
function alike(all: readonly PartLife[], kart: string, prior: Prior | undefined): readonly PartLife[] {
  const names = [...new Set(all.map(life => life.kart))];
  if (names.length < 2) return all;
  const together = pool(
    prior,
    names.map(name => all.filter(life => life.kart === name)),
  );
  return together.kind === 'apart' ? all.filter(life => life.kart === kart) : all;
}
