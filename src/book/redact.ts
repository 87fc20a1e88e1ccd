/** Taking out of a fact what names a person, so that its hash, its place and what it says of the kart stay (SPEC B35 to B39). */
import { canonical } from './canonical.ts';
import type { Fact, Redaction } from './fact.ts';
import { BARRED, PERSONAL, type PersonalKey } from './personal.ts';
import { bonesOf, digestsOf, provable, saltFor } from './seal.ts';

/** A redaction of one fact, and the name that stands there from then on. */
export type NamedRedaction = Redaction & { readonly as: string };

/** Stands in the place of words that a fact must have. */
export const TAKEN_OUT = '(taken out)';
const BAR = '\u2588';

/** By the id of the fact that each works on. */
export function redactionsIn(facts: readonly Fact[]): ReadonlyMap<string, readonly NamedRedaction[]> {
  const found = new Map<string, NamedRedaction[]>();
  for (const fact of facts)
    if (fact.kind === 'redacted')
      for (const one of fact.facts) found.set(one.fact, [...(found.get(one.fact) ?? []), { ...one, as: fact.as }]);
  return found;
}

/**
 * The fact as it lies from then on; the same object when nothing is taken out. Several redactions of one fact give the same in any order,
 * and twice is once. One that is not about this fact (other bones) does nothing.
 */
export function redact(fact: Fact, redactions: readonly NamedRedaction[]): Fact {
  let now = fact;
  for (const one of redactions) if (isAbout(fact, one)) now = redactOnce(now, one);
  return now;
}

/** A fact of format 1 is known by its bones; one of format 2 by its hash. */
const isAbout = (fact: Fact, { bones }: NamedRedaction): boolean =>
  fact.v === 1 || !provable(fact) ? bones === bonesOf(fact) : true;

/** Redacted facts that their hash does not prove and no redaction among these vouches for. */
export function unvouched(facts: readonly Fact[]): readonly Fact[] {
  const open = facts.filter(fact => !provable(fact));
  if (open.length === 0) return open;
  const redactions = redactionsIn(facts);
  return open.filter(fact => !(redactions.get(fact.id) ?? []).some(({ bones }) => bones === bonesOf(fact)));
}

/** Does any of this stand in the fact still? */
export const stillSays = (fact: Fact, redactions: readonly NamedRedaction[]): boolean =>
  redact(fact, redactions) !== fact;

function redactOnce(fact: Fact, { names = [], bars = {}, out = [], as }: NamedRedaction): Fact {
  const said: Readonly<Partial<Record<PersonalKey, unknown>>> = fact;
  const next = new Map<PersonalKey, unknown>();
  for (const key of names) next.set(key, fact.gone?.[key] === undefined ? as : lesser(as, String(said[key])));
  for (const key of BARRED) {
    const places = bars[key];
    if (places && said[key] !== TAKEN_OUT) next.set(key, barred(said[key], places));
  }
  for (const key of out) next.set(key, MUST_STAY.includes(key) ? TAKEN_OUT : undefined);
  const changes = [...next].filter(([key, value]) => said[key] !== undefined && !same(said[key], value));
  return changes.length === 0 ? fact : changed(fact, changes);
}

/** These a kind of fact cannot be without. */
const MUST_STAY: readonly PersonalKey[] = ['text', 'statement'];
const lesser = (a: string, b: string): string => (a < b ? a : b);
const same = (a: unknown, b: unknown): boolean => b !== undefined && canonical(a) === canonical(b);

/** As long as before, so that what others take out still finds its place. */
function barred(value: unknown, places: readonly (readonly [number, number])[]): unknown {
  const texts = Array.isArray(value) ? (value as readonly string[]) : [String(value)];
  const letters = texts.join('\n').split('');
  for (const [from, many] of places)
    for (let i = from; i < Math.min(from + many, letters.length); i++) if (letters[i] !== '\n') letters[i] = BAR;
  // A sign of two halves is taken out as a whole.
  const covered = letters.join('').replace(/\p{Surrogate}/gu, BAR);
  if (!Array.isArray(value)) return covered;
  let at = 0;
  return texts.map(text => {
    const cut = covered.slice(at, at + text.length);
    at += text.length + 1;
    return cut;
  });
}

/** What goes leaves its digest behind, what stays its salt, so that the hash can still be worked out. */
function changed(fact: Fact, changes: readonly (readonly [PersonalKey, unknown])[]): Fact {
  const wasFormat1 = fact.v === 1 || !provable(fact);
  const digests = wasFormat1 ? {} : digestsOf(fact);
  const { salt: _, salts: __, ...rest } = fact;
  const next: Record<string, unknown> = { ...rest, v: 2 };
  const gone: Partial<Record<PersonalKey, string | null>> = { ...fact.gone };
  for (const [key, value] of changes) {
    gone[key] ??= digests[key] ?? null;
    if (value === undefined) delete next[key];
    else next[key] = value;
  }
  const stay = PERSONAL.filter(key => gone[key] === undefined && next[key] !== undefined);
  const salts = wasFormat1 ? {} : { salts: Object.fromEntries(stay.map(key => [key, saltFor(fact, key)])) };
  return { ...next, gone, ...salts } as unknown as Fact;
}
