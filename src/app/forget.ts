/**
 * Takes a person out of the book (SPEC B35 to B39): the name wherever it stands, the photos and logs of what they wrote down, and, when
 * asked, the words that nothing about the kart rests on. What was done to the kart stays. It cannot be undone.
 */
import {
  BARRED,
  bonesOf,
  canonical,
  type Fact,
  inOrder,
  provable,
  type Redaction,
  redact,
  stillSays,
} from '../book/index.ts';
import { type Named, named } from './person.ts';
import { type Problem, refuse } from './problem.ts';
import { filesOf } from './proof.ts';
import { type OnKart, recordAll, type Writer } from './record.ts';

export type ForgetAsk = {
  readonly person: string;
  /** Who takes them out. */
  readonly by: string;
  /** Their words too: notes, conditions, statements; not what was found on the kart. */
  readonly words?: boolean;
  /** Only say what would go. */
  readonly dryRun?: boolean;
};

export type Forgot =
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | {
      readonly kind: 'forgotten';
      /** The name that stands there from now on. */
      readonly as: string;
      /** Facts that they wrote or signed, and others that named them. */
      readonly theirs: number;
      readonly naming: number;
      readonly files: readonly string[];
      /** Where the name still stands, because the kart would not be the same without it. */
      readonly left: readonly string[];
      readonly done: boolean;
    };

/** So many facts are named in one redaction. */
const ENTRIES = 500;
const WORDS = ['note', 'conditions', 'statement', 'wouldHaveHeld'] as const;

export async function forget(writer: Writer, ask: ForgetAsk): Promise<Forgot> {
  const person = named(ask.person);
  if (person === undefined)
    return refused(
      refuse('wrong shape', 'person', 'Expected the name of a person, got none.', 'Give it as it stands in the book.'),
    );
  const { shelf } = writer;
  await shelf.refresh();
  const found: Found = { theirs: 0, naming: 0, left: [] };
  const karts = new Map<string, { readonly fact: Fact; readonly entry: Redaction }[]>();
  const [theirFiles, others] = [new Set<string>(), new Set<string>()];
  const mine: Fact[] = [];
  for (const kart of shelf.names()) {
    const entries: { readonly fact: Fact; readonly entry: Redaction }[] = [];
    for (const fact of await shelf.facts(kart)) {
      for (const file of filesOf(fact)) (person.is(fact.by) ? theirFiles : others).add(file);
      const entry = await entryFor(fact, person, ask.words === true, writer);
      if (entry) entries.push({ fact, entry });
      if (entry) mine.push(fact);
      count(found, fact, entry, person);
    }
    if (entries.length > 0) karts.set(kart, entries);
  }
  const [first] = inOrder(mine);
  if (first === undefined)
    return refused(
      refuse(
        'nothing to record',
        'person',
        `Expected a person who stands in the book, got "${ask.person}".`,
        'Give the name as it stands there: kartwright facts.',
      ),
    );
  // The same wherever the same facts lie, and nothing of the name is in it.
  const as = `somebody ${first.hash.slice(0, 6)}`;
  const files = [...theirFiles].filter(file => !others.has(file));
  const answer = { kind: 'forgotten' as const, as, ...found, files };
  if (ask.dryRun) return { ...answer, done: false };
  const done = await recordAll(writer, wantedOf(karts, as, files), { by: person.is(ask.by) ? as : ask.by });
  if (done.kind === 'refused') return done;
  await shelf.refresh(); // no snapshot of before stays
  return { ...answer, done: true };
}

type Found = { theirs: number; naming: number; readonly left: string[] };

function count(found: Found, fact: Fact, entry: Redaction | undefined, person: Named): void {
  if (entry?.names) found.theirs++;
  else if (entry) found.naming++;
  const after = entry ? redact(fact, [{ ...entry, as: '-' }]) : fact;
  if (person.places(canonical(after)).length > 0) found.left.push(`kart ${fact.kart}, fact ${fact.id} (${fact.kind})`);
}

/** What is to be taken out of one fact; undefined when nothing is. */
async function entryFor(fact: Fact, person: Named, words: boolean, writer: Writer): Promise<Redaction | undefined> {
  const said = fact as Readonly<Partial<Record<string, unknown>>>;
  const theirs = person.is(fact.by);
  const names = (['by', 'signer'] as const).filter(
    key => typeof said[key] === 'string' && person.is(String(said[key])),
  );
  const bars: Record<string, [number, number][]> = {};
  for (const key of BARRED) {
    const text = Array.isArray(said[key]) ? said[key].join('\n') : said[key];
    const places = typeof text === 'string' ? person.places(text) : [];
    if (places.length > 0 && (fact.kind !== 'kart filed' || (await sameKart(fact.text, person, writer))))
      bars[key] = places;
  }
  const out = theirs
    ? [
        ...(['photo', 'file'] as const),
        ...(words ? [...WORDS, ...(fact.kind === 'note' ? (['text'] as const) : [])] : []),
      ].filter(key => said[key] !== undefined)
    : [];
  const entry: Redaction = {
    fact: fact.id,
    ...(names.length > 0 && { names: [...names] }),
    ...(Object.keys(bars).length > 0 && { bars }),
    ...(out.length > 0 && { out }),
    ...((fact.v === 1 || !provable(fact)) && { bones: bonesOf(fact) }),
  };
  return stillSays(fact, [{ ...entry, as: '-' }]) ? entry : undefined;
}

/** A kart file with black bars must read as the same kart, but for the bars. */
async function sameKart(text: string, person: Named, { reader }: Writer): Promise<boolean> {
  const [before, after] = [await reader.read(text), await reader.read(person.barred(text))];
  if (!before.ok || !after.ok) return false;
  return (
    person.barred(JSON.stringify(before.kart)) === JSON.stringify(after.kart) && before.kart.name === after.kart.name
  );
}

function wantedOf(
  karts: ReadonlyMap<string, readonly { readonly fact: Fact; readonly entry: Redaction }[]>,
  as: string,
  files: readonly string[],
): readonly OnKart[] {
  return [...karts].map(([kart, entries]) => {
    const payloads: unknown[] = [];
    const own = new Set(entries.flatMap(({ fact }) => filesOf(fact)));
    for (let n = 0; n < entries.length; n += ENTRIES) {
      const part = n === 0 ? files.filter(file => own.has(file)) : [];
      const facts = entries.slice(n, n + ENTRIES).map(({ entry }) => entry);
      payloads.push({ kind: 'redacted', as, facts, ...(part.length > 0 && { files: part }) });
    }
    return { kart, payloads };
  });
}

const refused = (...problems: readonly Problem[]): Forgot => ({ kind: 'refused', problems });
