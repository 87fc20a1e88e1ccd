/** What every store decides before it writes: which facts of a batch are new, and whether each follows its device's chain. */
import type { AppendOutcome, Kept, Lying } from '../app/ports.ts';
import {
  type ChainEnd,
  canonical,
  type Fact,
  fitsHash,
  hashOf,
  type NamedRedaction,
  redact,
  redactionsIn,
} from '../book/index.ts';

export type Admission =
  | { readonly kind: 'admitted'; readonly fresh: readonly Fact[]; readonly known: number }
  | Exclude<AppendOutcome, { kind: 'kept' }>;

export type Present = {
  /** Hash of the fact kept under an id. */
  readonly hash: (id: string) => string | undefined;
  /** End of a device's chain; seq 0 and 64 zeros when it has none. */
  readonly end: (device: string) => ChainEnd;
  /** Redactions kept here of the fact of an id. */
  readonly redactions: (id: string) => readonly NamedRedaction[];
};

/** What is taken out of facts, by their ids, and which files nobody keeps any more. */
export type Redacting = {
  readonly facts: ReadonlyMap<string, readonly NamedRedaction[]>;
  readonly files: readonly string[];
};

/** What new facts ask to be taken out of the facts that are kept. */
export const redactingIn = (fresh: readonly Fact[]): Redacting => ({
  facts: redactionsIn(fresh),
  files: fresh.flatMap(fact => (fact.kind === 'redacted' ? (fact.files ?? []) : [])),
});

/**
 * New facts come back redacted as this book and the batch ask, and by device and number, so that whoever reads rows in order never sees a chain with a hole.
 * Throws when a fact does not fit its own hash: such a fact must not get this far.
 */
export function admit(facts: readonly Fact[], present: Present): Admission {
  const batch = new Map<string, Fact>();
  let known = 0;
  for (const fact of facts) {
    if (!fitsHash(fact))
      throw new TypeError(`append: fact ${fact.id} must have the hash ${hashOf(fact)}, got ${fact.hash}`);
    const kept = present.hash(fact.id) ?? batch.get(fact.id)?.hash;
    if (kept === undefined) batch.set(fact.id, fact);
    else if (kept === fact.hash) known++;
    else return { kind: 'clash', id: fact.id };
  }
  const fresh = [...batch.values()].sort((a, b) =>
    a.device < b.device ? -1 : a.device > b.device ? 1 : a.seq - b.seq,
  );
  const ends = new Map<string, ChainEnd>();
  for (const fact of fresh) {
    const end = ends.get(fact.device) ?? present.end(fact.device);
    if (fact.seq !== end.seq + 1 || fact.prev !== end.hash) {
      const expected = `number ${end.seq + 1} after ${end.hash}`;
      return { kind: 'broken chain', device: fact.device, expected, got: `number ${fact.seq} after ${fact.prev}` };
    }
    ends.set(fact.device, fact);
  }
  const within = redactionsIn(fresh);
  const asRedacted = (fact: Fact): Fact =>
    redact(fact, [...present.redactions(fact.id), ...(within.get(fact.id) ?? [])]);
  return { kind: 'admitted', fresh: fresh.map(asRedacted), known };
}

/** For facts built inside the store's own transaction, where anything but admission is the builder's mistake. */
export function mustAdmit(facts: readonly Fact[], device: string, present: Present): readonly Fact[] {
  const stranger = facts.find(fact => fact.device !== device);
  if (stranger) throw new TypeError(`appendNext: build must return facts of device ${device}, got ${stranger.device}`);
  const admission = admit(facts, present);
  if (admission.kind === 'admitted') return admission.fresh;
  if (admission.kind === 'clash') throw new TypeError(`appendNext: build must give new ids, got ${admission.id} again`);
  throw new TypeError(`appendNext: build must return ${admission.expected}, got ${admission.got}`);
}

/** For a store that keeps facts as objects, not as text. */
export const lyingAs = ({ row, fact }: Kept): Lying => {
  const { id, hash, device, seq } = fact;
  return { row, id, hash, device, seq, body: canonical(fact) };
};
