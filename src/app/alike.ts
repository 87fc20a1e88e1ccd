/** What else of this kind is on the karts once something has failed, and one word that makes all of it due for a look. */
import type { Fact } from '../book/index.ts';
import type { ItemId } from '../kart/index.ts';
import { type Alike, type AlikeOne, alikeOf, type FailedOn, readRetentions } from '../risk/index.ts';
import type { At } from './asking.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';
import type { OnKart, Recorded, Written } from './record.ts';
import type { RiskTexts } from './weak-links.ts';
import { suggestion } from './words.ts';

/** A fact that says what failed (`failed`, `found`, or a check that failed), or the part or joint itself. */
export type AlikeQuestion = At & { readonly fact?: string; readonly of?: string };
export type AlikeAnswer = Alike & {
  /** 'joining link gone on 2026-05-01'; null where no fact was named. */
  readonly why: string | null;
  readonly fact: string | null;
};

/** Throws `Refusal` for what the book or the kart does not hold. */
export async function whatElse(
  queries: Queries,
  name: string,
  { fact: id, of, ...at }: AlikeQuestion,
  texts: Pick<RiskTexts, 'retentions'>,
): Promise<AlikeAnswer> {
  const fact = id === undefined ? undefined : await factOf(queries, name, id, at);
  const asked = await placeOf(queries, name, of ?? (fact && onWhat(fact)), at);
  const karts = await Promise.all(
    (await queries.karts(at)).map(async ({ name: each }) => ({
      kart: await queries.kart(each, at),
      state: await queries.state(each, at),
    })),
  );
  return {
    ...alikeOf(karts, asked, readRetentions(texts.retentions)),
    why: fact ? `${whatFailed(fact)} on ${fact.at.slice(0, 10)}` : null,
    fact: fact?.id ?? null,
  };
}

async function factOf(queries: Queries, name: string, id: string, at: At): Promise<Fact> {
  const fact = (await queries.facts(name, at)).find(line => line.fact.id === id && line.struck === null)?.fact;
  if (fact && onWhat(fact) !== undefined) return fact;
  throw new Refusal([
    refuse(
      'unknown fact',
      'fact',
      `Expected a fact of kart "${name}" that says what failed or was found, got ${fact ? `"${fact.kind}"` : `"${id}"`}.`,
      'Name one of kind failed or found, or a check that failed; or the part or joint itself.',
    ),
  ]);
}

/** The part, joint or item that a fact says failed. */
const onWhat = (fact: Fact): string | undefined =>
  fact.kind === 'failed'
    ? (fact.joint ?? fact.part)
    : fact.kind === 'found'
      ? (fact.item ?? fact.part)
      : fact.kind === 'checked' && fact.result === 'fail'
        ? fact.item
        : undefined;

const whatFailed = (fact: Fact): string =>
  (fact.kind === 'failed' ? fact.how : fact.kind === 'found' ? fact.defect : 'why' in fact ? fact.why : undefined) ??
  'it failed';

async function placeOf(queries: Queries, name: string, of: string | undefined, at: At): Promise<FailedOn> {
  const kart = await queries.kart(name, at);
  const joint = kart.joints[of ?? ''];
  if (joint) return { kart: name, part: joint.part, joint: joint.id };
  const part = kart.parts[of ?? ''] ?? kart.parts[kart.items[of ?? '']?.part ?? ''];
  if (part) return { kart: name, part: part.id };
  throw new Refusal([
    refuse(
      'unknown part',
      'of',
      `Expected a part or joint of kart "${name}", got ${of === undefined ? 'nothing' : `"${of}"`}.`,
      `Use a name from its kart file.${suggestion(of ?? '', [...Object.keys(kart.parts), ...Object.keys(kart.joints)])}`,
    ),
  ]);
}

export type LooksWanted = Omit<AlikeQuestion, 'at'> &
  Written & {
    /** Every joint with the same retention; left out: parts of the kind, and the same joint on each of them. */
    readonly all?: boolean;
  };
type Book = Queries & { recordAll(wanted: readonly OnKart[], ask: Written): Promise<Recorded> };

/** Makes a look at each of them due, on every kart: one fact a kart, all of them or none. */
export async function askForLooks(
  book: Book,
  name: string,
  { fact, of, all, ...written }: LooksWanted,
  texts: Pick<RiskTexts, 'retentions'>,
): Promise<Recorded> {
  const found = await whatElse(book, name, { ...(fact ? { fact } : {}), ...(of ? { of } : {}) }, texts);
  const what = found.of.joint ?? found.of.part;
  const why = found.why ? `${what} of kart ${name}: ${found.why}` : `as ${what} of kart ${name}`;
  const wanted = [...itemsByKart(found, all === true)].map(([kart, items]) => ({
    kart,
    payloads: [{ kind: 'look asked', items, why, ...(found.fact ? { failed: found.fact } : {}) }],
  }));
  if (wanted.length > 0) return book.recordAll(wanted, written);
  return {
    kind: 'refused',
    problems: [
      refuse(
        'nothing to record',
        'of',
        `Expected something else of this kind that is looked at, and there is none for ${what}.`,
        'Nothing is left to ask for.',
      ),
    ],
  };
}

function itemsByKart({ parts, joints }: Alike, all: boolean): ReadonlyMap<string, readonly ItemId[]> {
  const each: readonly AlikeOne[] = [...parts, ...joints.filter(({ twin }) => all || twin)];
  const items = new Map<string, ItemId[]>();
  for (const { kart, items: own } of each)
    if (own.length > 0) items.set(kart, [...new Set([...(items.get(kart) ?? []), ...own])]);
  return items;
}
