/** How likely each part fails over the event by its own life: its age, the record of its kind, what its owner expects. */
import type { Kart, Part } from '../../kart/index.ts';
import {
  INTERVAL_SHARE,
  type KartBook,
  livesOf,
  outlookOf,
  type PartLife,
  type Prior,
  type Priors,
  pool,
  priorOfAnswers,
  priorOfKind,
  withAnswer,
} from '../../life/index.ts';
import { likelyOf } from './likely.ts';
import type { Likely } from './model.ts';

export type PartLook = { readonly likely: Likely | null; readonly unknown: string | null; readonly own: boolean };

export type Record_ = {
  /** Of one owner; the kart asked about among them. None: no record. */
  readonly books: readonly KartBook[];
  readonly priors: Priors;
  readonly hours: number | undefined; // of the event, practice counted in
};

/** A spread for kinds in no list of shapes: any class of failure. Common practice. */
const ANY_SHAPE = 0.5;

export function partLooks(kart: Kart, { books, priors, hours }: Record_): (part: Part) => PartLook {
  const lives = new Map<string, readonly PartLife[]>();
  const ofKind = (kind: string): readonly PartLife[] => {
    const known = lives.get(kind) ?? livesOf(books, kind);
    lives.set(kind, known);
    return known;
  };
  return part => {
    const unknown = (why: string): PartLook => ({ likely: null, unknown: why, own: false });
    if (hours === undefined || !(hours > 0))
      return unknown('No event ahead with its running time, so there are no hours to reckon over.');
    const all = ofKind(part.kind);
    const now = all.find(life => life.now && life.part === part.id && life.kart === kart.name);
    if (now === undefined) return unknown('The record does not hold this part.');
    const prior = priorFor(kart, part.kind, priors);
    const outlook = outlookOf({ part: now, lives: alike(all, kart.name, prior), prior, hours });
    if (outlook.kind === 'unknown') return unknown(outlook.why);
    return {
      likely: likelyOf(outlook.chance, outlook.words.basis),
      unknown: null,
      own: outlook.posterior.basis === 'own record',
    };
  };
}

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

/** What is guessed of a kind: its shape from the list, its life from the kart file. */
function priorFor(kart: Kart, kind: string, priors: Priors): Prior | undefined {
  const listed = priorOfKind(priors, kind);
  const said = kart.lives?.[kind];
  if (said === undefined) return listed;
  const hours = (of: { readonly si: number }): number => of.si / 3600;
  const { tenthGoneBy: tenth, halfGoneBy: half, source } = said;
  const spread = listed?.shape.spread ?? ANY_SHAPE;
  if (tenth && half)
    return priorOfAnswers({ share: INTERVAL_SHARE, by: hours(tenth) }, { share: 0.5, by: hours(half) }, spread, source);
  if (listed === undefined) return undefined; // one answer says no shape
  const one = tenth ? { share: INTERVAL_SHARE, by: hours(tenth) } : half && { share: 0.5, by: hours(half) };
  return one ? withAnswer(listed, one, source) : listed;
}
