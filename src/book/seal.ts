/** Closing a fact: from here on its hash tells whether a letter of it was changed (SPEC B5, B6). */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { canonical } from './canonical.ts';
import { FACT_FORMAT, type Fact, fact, type Unhashed } from './fact.ts';

/** What the first fact of a device follows. */
export const FIRST_PREV = '0'.repeat(64);
/** The end of a device's chain: seq and hash of its last fact, or 0 and 64 zeros. */
export type ChainEnd = { readonly seq: number; readonly hash: string };
export const CHAIN_START: ChainEnd = { seq: 0, hash: FIRST_PREV };

type Distribute<T> = T extends unknown ? Omit<T, 'v' | 'seq' | 'prev'> : never;
/** A fact that does not know its place in its device's chain yet. */
export type Draft = Distribute<Unhashed>;

/** Facts sealed by this program. They are frozen, so what held when they were sealed still does. */
const sealedHere = new WeakSet<object>();

/** Does the fact say what its hash was taken of? One that was sealed here is not hashed again. */
export const fitsHash = (fact: Fact): boolean => sealedHere.has(fact) || hashOf(fact) === fact.hash;

/** SHA-256 (FIPS 180-4), hex, of the canonical text of the fact without its own hash. */
export function hashOf(fact: Unhashed & { readonly hash?: string }): string {
  const { hash: _, ...content } = fact;
  return sha256Hex(canonical(content));
}

/**
 * A fact ready to be kept: exactly the object that any store gives back later. Nothing in it can be changed any more.
 * Throws when the content is no valid fact; what a person typed is validated with `payload` before.
 */
export function seal(unhashed: Unhashed): Fact {
  const text = canonical(unhashed);
  const sealed = fact.safeParse({ ...JSON.parse(text), hash: sha256Hex(text) });
  if (sealed.success) {
    sealedHere.add(frozen(sealed.data));
    return sealed.data;
  }
  const faults = sealed.error.issues.map(issue => `${issue.path.join('.') || 'fact'}: ${issue.message}`).join('; ');
  throw new TypeError(`seal: fact ${unhashed.id} must be valid, got ${faults}`);
}

/** Seals the next fact of a device, given the end of its chain. */
export function sealNext(last: ChainEnd, draft: Draft): Fact {
  return seal({ ...draft, v: FACT_FORMAT, seq: last.seq + 1, prev: last.hash } as Unhashed);
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
