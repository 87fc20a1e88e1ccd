/** Taking out what names a person: the hash, the place and the state stay, whoever hears of it when (SPEC B35 to B39). */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { books } from '../../test/store-contract/random-facts.ts';
import {
  bonesOf,
  CHAIN_START,
  canonical,
  type Draft,
  exportLines,
  type Fact,
  factsOf,
  fitsHash,
  fold,
  hashOf,
  importLines,
  isProblem,
  type NamedRedaction,
  redact,
  sealAll,
  sealNext,
  stillSays,
  unvouched,
  upcast,
  verifyChain,
} from './index.ts';
import { BARRED, NAMES, OUT } from './personal.ts';

const SALT = '00112233445566778899aabbccddeeff';
const draft = (id: string, more: object): Draft =>
  ({
    id,
    kart: '41',
    at: '2026-05-01T08:00:00.000Z',
    recorded: '2026-05-01T08:00:00.000Z',
    by: 'R. Stranger',
    device: 'bench',
    kind: 'note',
    text: 'R. Stranger saw it',
    ...more,
  }) as Draft;
const sha = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Any redaction of a fact, as an owner could ask for it. */
const redactionOf = (fact: Fact): fc.Arbitrary<NamedRedaction> =>
  fc.record({
    fact: fc.constant(fact.id),
    as: fc.constantFrom('somebody 1', 'somebody 2'),
    names: fc.subarray([...NAMES]),
    out: fc.subarray([...OUT]),
    bars: fc
      .dictionary(
        fc.constantFrom(...BARRED),
        fc.array(fc.tuple(fc.nat(20), fc.integer({ min: 1, max: 8 })), { maxLength: 3 }),
      )
      .map(bars => ({ ...bars })),
    bones: fc.constant(bonesOf(fact)),
  }) as fc.Arbitrary<NamedRedaction>;
const redacting = books.chain(facts =>
  fc.tuple(fc.constant(facts), fc.tuple(...facts.map(fact => fc.array(redactionOf(fact), { maxLength: 3 })))),
);
const bare = (state: object): unknown =>
  JSON.parse(
    JSON.stringify(state, (key, value) =>
      ['by', 'why', 'defect', 'how', 'signer', 'statement', 'open', 'photo'].includes(key) ? undefined : value,
    ),
  );

describe('a redaction', () => {
  it('B35 in any order, and twice as if once, leaves the same', () => {
    fc.assert(
      fc.property(redacting, ([facts, redactions]) => {
        for (const [i, fact] of facts.entries()) {
          const all = redactions[i] ?? [];
          const once = redact(fact, all);
          expect(redact(fact, all.toReversed())).toEqual(once);
          expect(redact(once, all)).toBe(once);
          expect(all.reduce((now, one) => redact(now, [one]), fact)).toEqual(once);
          expect(stillSays(once, all)).toBe(false);
        }
      }),
    );
  });

  it('B36 leaves hash, place and chain as they were, and what stays of a fact of format 2 is proven by its hash', () => {
    fc.assert(
      fc.property(redacting, ([facts, redactions]) => {
        const after = facts.map((fact, i) => redact(fact, redactions[i] ?? []));
        for (const [i, fact] of after.entries()) {
          expect({ hash: fact.hash, seq: fact.seq, prev: fact.prev, device: fact.device }).toEqual({
            hash: facts[i]?.hash,
            seq: facts[i]?.seq,
            prev: facts[i]?.prev,
            device: facts[i]?.device,
          });
          expect(bonesOf(fact)).toBe(bonesOf(facts[i] as Fact));
          if (facts[i]?.v === 2) expect(hashOf(fact)).toBe(fact.hash);
          expect(upcast(JSON.parse(canonical(fact)))).toEqual(fact);
        }
        expect(
          verifyChain(after)
            .map(({ fact }) => fact)
            .toSorted(),
        ).toEqual(
          unvouched(after)
            .map(({ id }) => id)
            .toSorted(),
        );
      }),
    );
  });

  it('B37 changes nothing in the state but names, words and photos', () => {
    fc.assert(
      fc.property(redacting, ([facts, redactions]) => {
        const after = facts.map((fact, i) => redact(fact, redactions[i] ?? []));
        expect(bare(fold(factsOf(after, '41')))).toEqual(bare(fold(factsOf(facts, '41'))));
      }),
    );
  });

  it('B36 a change of what stays of a redacted fact of format 2 is found', () => {
    const fact = sealNext(CHAIN_START, draft('f1', { salt: SALT, part: 'engine' }));
    const after = redact(fact, [{ fact: 'f1', as: 'somebody 1', names: ['by'] }]);
    expect(fitsHash(after)).toBe(true);
    for (const lie of [{ text: 'other' }, { part: 'chain' }, { at: '2026-05-01T09:00:00.000Z' }]) {
      expect(fitsHash({ ...after, ...lie } as Fact)).toBe(false);
      expect(upcast({ ...after, ...lie })).toMatchObject({ code: 'damaged' });
    }
  });

  it('B35 blacks out a name letter by letter, also in a list, and takes out what is asked for', () => {
    const released = draft('f1', {
      salt: SALT,
      kind: 'released',
      text: undefined,
      signer: 'R. Stranger',
      verdict: 'fit',
      open: ['toe', 'seen by R. Stranger'],
      statement: 'as said',
    });
    const after = redact(sealNext(CHAIN_START, released), [
      { fact: 'f1', as: 'somebody 1', names: ['by', 'signer'], bars: { open: [[12, 11]] }, out: ['statement'] },
    ]);
    expect(after).toMatchObject({
      by: 'somebody 1',
      signer: 'somebody 1',
      verdict: 'fit',
      open: ['toe', `seen by ${'█'.repeat(11)}`],
      statement: '(taken out)',
    });
    expect(canonical(after)).not.toContain('Stranger');
    expect(fitsHash(after)).toBe(true);
  });

  it('B38 does nothing to a fact of format 1 that has other bones', () => {
    const fact = sealNext(CHAIN_START, draft('f1', {}));
    const one: NamedRedaction = { fact: 'f1', as: 'somebody 1', names: ['by'], bones: '0'.repeat(64) };
    expect(redact(fact, [one])).toBe(fact);
    const right = redact(fact, [{ ...one, bones: bonesOf(fact) }]);
    expect(right).toMatchObject({ v: 2, by: 'somebody 1', gone: { by: null }, hash: fact.hash });
  });
});

describe('a book with redacted facts of format 1', () => {
  const facts = sealAll(CHAIN_START, [draft('f1', {}), draft('f2', { text: 'dry' })]);
  const entries = facts.map(fact => ({ fact: fact.id, names: ['by' as const], bones: bonesOf(fact) }));
  const redaction = sealNext(
    CHAIN_START,
    draft('r1', {
      kind: 'redacted',
      text: undefined,
      by: 'O. Owner',
      device: 'desk',
      salt: SALT,
      as: 'somebody 1',
      facts: entries,
    }),
  );
  const after = facts.map(fact =>
    redact(fact, [{ ...entries.find(e => e.fact === fact.id), as: 'somebody 1' } as never]),
  );

  test('B38 is whole with the redaction that vouches for them, and not without', () => {
    expect(verifyChain([...after, redaction])).toEqual([]);
    expect(verifyChain(after).map(({ fact }) => fact)).toEqual(['f1', 'f2']);
    expect(verifyChain([...after.map(fact => ({ ...fact, kart: '7' })), redaction]).length).toBe(2);
  });

  test('B23 exported, imported and exported again gives the same bytes', () => {
    const text = exportLines([...after, redaction]);
    const read = importLines(text);
    if (read.kind !== 'facts') throw new Error(JSON.stringify(read.problems));
    expect(exportLines(read.facts)).toBe(text);
    expect(text).not.toContain('R. Stranger"');
    const torn = importLines(exportLines(after));
    expect(torn.kind === 'problems' && torn.problems.map(({ code }) => code)).toEqual(['damaged', 'damaged']);
  });
});

test('B35 the hash of format 2 is what an independent SHA-256 gives for bones and salted digests', () => {
  const { hash, salt, by, text, ...bones } = sealNext(CHAIN_START, draft('f1', { salt: SALT })) as Fact & {
    text: string;
  };
  const digest = (key: string, value: string) => sha(sha(`${salt} ${key}`) + JSON.stringify(value));
  expect(hash).toBe(sha(canonical({ ...bones, sealed: { by: digest('by', by), text: digest('text', text) } })));
});

test('B35 a fact of format 2 without its salt is refused', () => {
  const { salt: _, ...fact } = sealNext(CHAIN_START, draft('f1', { salt: SALT }));
  const read = upcast({ ...fact, hash: hashOf(fact as Fact) });
  expect(isProblem(read) && read.message).toContain('must have its "salt"');
});
