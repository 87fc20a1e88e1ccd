/** Closing a fact: from here on its hash tells whether a letter of it was changed (SPEC B5, B6). */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonical } from './canonical.ts';
import { type Fact, fact, type Unhashed } from './fact.ts';
import { PERSONAL, type PersonalKey } from './personal.ts';

/** What the first fact of a device follows. */
export const FIRST_PREV = '0'.repeat(64);
/** The end of a device's chain: seq and hash of its last fact, or 0 and 64 zeros. */
export type ChainEnd = { readonly seq: number; readonly hash: string };
export const CHAIN_START: ChainEnd = { seq: 0, hash: FIRST_PREV };

type Distribute<T> = T extends unknown ? Omit<T, 'v' | 'seq' | 'prev'> : never;
/** A fact that does not know its place in its device's chain yet. With a random `salt` it is sealed in format 2, without in format 1. */
export type Draft = Distribute<Unhashed>;

/** Facts sealed by this program, or held against their hash by it. They are frozen, so what held then still does. */
const seenToFit = new WeakSet<object>();

/**
 * Does the fact say what its hash was taken of? One that is known to is not hashed again. A redacted one of format 1 passes:
 * what stayed of it is vouched for by its redaction (`unvouched`).
 */
export const fitsHash = (fact: Fact): boolean => seenToFit.has(fact) || !provable(fact) || hashOf(fact) === fact.hash;

/** Remembers of a fact that it fits its hash, which whoever calls has just seen; nothing in it can be changed any more. */
export function nowFits(fact: Fact): Fact {
  seenToFit.add(frozen(fact));
  return fact;
}

/** False for a redacted fact of format 1, whose hash was taken of all it said. */
export const provable = ({ gone }: Pick<Fact, 'gone'>): boolean =>
  gone === undefined || Object.values(gone).every(digest => digest !== null);

/** SHA-256 (FIPS 180-4), hex, of the canonical text of the fact without its own hash; in format 2 with digests for what may name a person. */
export function hashOf(fact: Unhashed & { readonly hash?: string }): string {
  const { hash: _, ...content } = fact;
  if (fact.v === 1) return sha256Hex(canonical(content));
  return sha256Hex(canonical({ ...bare(fact), v: fact.v, sealed: digestsOf(fact) }));
}

/** SHA-256 of what stays of a fact whatever is taken out of it. */
export const bonesOf = (fact: Unhashed): string => sha256Hex(canonical(bare(fact)));

/** Without what may name a person, and without what the format adds. */
function bare(fact: Unhashed): Record<string, unknown> {
  const bones: Record<string, unknown> = { ...fact };
  for (const key of [...PERSONAL, 'hash', 'v', 'salt', 'salts', 'gone']) delete bones[key];
  return bones;
}

/** What each part that may name a person is sealed by; `undefined` where a fact has none. */
export function digestsOf(fact: Unhashed): Partial<Record<PersonalKey, string>> {
  const said = fact as Partial<Record<PersonalKey, unknown>>;
  return Object.fromEntries(
    PERSONAL.flatMap(key => {
      const digest =
        fact.gone?.[key] ?? (said[key] === undefined ? undefined : digestOf(saltFor(fact, key), said[key]));
      return digest === undefined ? [] : [[key, digest]];
    }),
  );
}

/** Each part has a salt of its own, from which those of the others cannot be told. */
export const saltFor = ({ salt, salts }: Pick<Fact, 'salt' | 'salts'>, key: PersonalKey): string =>
  salts?.[key] ?? sha256Hex(`${salt} ${key}`);
const digestOf = (salt: string, value: unknown): string => sha256Hex(salt + canonical(value));

/**
 * A fact ready to be kept: exactly the object that any store gives back later. Nothing in it can be changed any more.
 * Throws when the content is no valid fact; what a person typed is validated with `payload` before.
 */
export function seal(unhashed: Unhashed): Fact {
  const text = canonical(unhashed);
  const hash = unhashed.v === 1 ? sha256Hex(text) : hashOf(unhashed);
  const sealed = fact.safeParse({ ...JSON.parse(text), hash });
  if (sealed.success) return nowFits(sealed.data);
  const faults = sealed.error.issues.map(issue => `${issue.path.join('.') || 'fact'}: ${issue.message}`).join('; ');
  throw new TypeError(`seal: fact ${unhashed.id} must be valid, got ${faults}`);
}

/** Seals the next fact of a device, given the end of its chain. */
export function sealNext(last: ChainEnd, draft: Draft): Fact {
  return seal({ ...draft, v: draft.salt === undefined ? 1 : 2, seq: last.seq + 1, prev: last.hash } as Unhashed);
}

/** Seals several, each after the one before. */
export function sealAll(last: ChainEnd, drafts: readonly Draft[]): readonly Fact[] {
  let end = last;
  return drafts.map(draft => {
    const sealed = sealNext(end, draft);
    end = sealed;
    return sealed;
  });
}

const sha256Hex = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

function frozen<T extends object>(value: T): T {
  for (const part of Object.values(value)) if (typeof part === 'object' && part !== null) frozen(part);
  return Object.freeze(value);
}
