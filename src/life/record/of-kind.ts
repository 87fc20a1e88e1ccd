/** What is known of a kind on one kart: the lives that count for it, and what is guessed. Each kind is gathered and weighed once. */
import type { State } from '../../book/index.ts';
import type { Kart, Part } from '../../kart/index.ts';
import { type Outlook, outlookFrom } from '../outlook.ts';
import { type NotKnown, type Posterior, type Prior, pool, posteriorOf } from '../posterior/index.ts';
import { guessOf } from './guess.ts';
import { type KartBook, livesOf, type PartLife } from './part-lives.ts';
import type { Priors } from './priors.ts';

export type KindRecord = {
  readonly lives: readonly PartLife[];
  readonly prior: Prior | undefined;
  /** Both weighed together; worked out when it is first asked for. */
  readonly posterior: () => Posterior | NotKnown;
  /** @param now one of the lives */
  readonly outlook: (now: PartLife, hours: number) => Outlook | NotKnown;
};

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
    const record = weighed(alike(livesOf(books, kind), kart.name, prior), prior);
    known.set(kind, record);
    return record;
  };
}

function weighed(lives: readonly PartLife[], prior: Prior | undefined): KindRecord {
  let made: Posterior | NotKnown | undefined;
  const posterior = (): Posterior | NotKnown => {
    made ??= posteriorOf(prior, lives);
    return made;
  };
  const outlooks = new Map<string, Outlook | NotKnown>(); // four wheels that are as old have one
  return {
    lives,
    prior,
    posterior,
    outlook(now, hours) {
      const key = `${now.fate} ${now.age} ${hours}`;
      const outlook = outlooks.get(key) ?? outlookFrom(posterior, now, hours);
      outlooks.set(key, outlook);
      return outlook;
    },
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
