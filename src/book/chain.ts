/** Is the book whole? Every device numbers its facts and names the hash of the one before (SPEC B6). */
import type { Fact } from './fact.ts';
import type { Problem } from './problem.ts';
import { unvouched } from './redact.ts';
import { CHAIN_START, fitsHash, hashOf } from './seal.ts';

/** What is wrong with a whole book: which fact was changed, is missing, or stands twice. Empty when nothing is. */
export function verifyChain(facts: readonly Fact[]): readonly Problem[] {
  return [...facts.filter(fact => !fitsHash(fact)).map(damaged), ...brokenChains(facts)];
}

/** The same for facts whose hashes are known to fit. */
export function brokenChains(facts: readonly Fact[]): readonly Problem[] {
  const problems: Problem[] = [];
  const devices = new Map<string, Fact[]>();
  const seen = new Map<string, Fact>();
  for (const fact of facts) {
    const twin = seen.get(fact.id);
    if (twin === undefined) {
      seen.set(fact.id, fact);
      const chain = devices.get(fact.device);
      if (chain) chain.push(fact);
      else devices.set(fact.device, [fact]);
    } else if (twin.hash !== fact.hash) {
      problems.push(broken(fact, `the id ${fact.id} must belong to one fact, got two that say different things`));
    }
  }
  return [...problems, ...[...devices.values()].flatMap(brokenLinks), ...unvouched(facts).map(notVouched)];
}

function brokenLinks(chain: readonly Fact[]): readonly Problem[] {
  const problems: Problem[] = [];
  let end = CHAIN_START;
  for (const fact of [...chain].sort((a, b) => a.seq - b.seq || (a.hash < b.hash ? -1 : 1))) {
    const link = linkFault(fact, end);
    if (link !== undefined) problems.push(broken(fact, link));
    end = fact;
  }
  return problems;
}

/** Why `fact` cannot follow the end of its device's chain; undefined when it does. */
function linkFault(fact: Fact, end: { readonly seq: number; readonly hash: string }): string | undefined {
  const device = `device "${fact.device}"`;
  if (fact.seq === end.seq)
    return `${device} must have one fact with number ${fact.seq}, got two: two copies of it wrote apart`;
  if (fact.seq !== end.seq + 1)
    return `${device} must go on with number ${end.seq + 1}, got ${fact.seq}: facts between are missing`;
  if (fact.prev !== end.hash)
    return `number ${fact.seq} of ${device} must follow the hash ${end.hash}, got ${fact.prev}: one of the two was changed`;
  return undefined;
}

function damaged(fact: Fact): Problem {
  return {
    kind: 'problem',
    code: 'damaged',
    message: `fact ${fact.id} (${fact.kind}, ${fact.at}) must have the hash ${hashOf(fact)} for what it says, got ${fact.hash}`,
    remedy: 'it was changed after it was written: take the book from another copy or the last export',
    fact: fact.id,
  };
}

function notVouched(fact: Fact): Problem {
  return {
    kind: 'problem',
    code: 'damaged',
    message: `fact ${fact.id} (${fact.kind}, ${fact.at}) must be redacted as a redaction in this book says, got none that fits what it says`,
    remedy: 'merge the book with the one that holds the redaction, or take it from another copy',
    fact: fact.id,
  };
}

function broken(fact: Fact, message: string): Problem {
  return {
    kind: 'problem',
    code: 'broken chain',
    message,
    remedy: 'merge the book with another copy that has the facts, or take the last export; do not number facts by hand',
    fact: fact.id,
  };
}
