import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { books } from '../../test/store-contract/random-facts.ts';
import {
  CHAIN_START,
  canonical,
  type Draft,
  type Fact,
  fitsHash,
  hashOf,
  isProblem,
  seal,
  sealAll,
  sealNext,
  upcast,
  verifyChain,
} from './index.ts';

const draft: Draft = {
  id: 'f1',
  kart: '41',
  at: '2026-05-01T08:00:00.000Z',
  recorded: '2026-05-01T08:00:00.000Z',
  by: 'A. Sample',
  device: 'bench',
  kind: 'note',
  text: 'rear axle dry',
};

describe('a fact sealed here', () => {
  it('B4 cannot be changed, not even deep inside', () => {
    const fact = sealNext(CHAIN_START, { ...draft, text: undefined, kind: 'set-up', changes: { jet: '160' } } as Draft);
    expect(() => Object.assign(fact, { by: 'B. Other' })).toThrow(TypeError);
    expect(() => Object.assign(fact.kind === 'set-up' ? fact.changes : {}, { jet: '165' })).toThrow(TypeError);
  });

  it('B5 is known to fit its hash, and a changed copy of it is not', () => {
    const fact = sealNext(CHAIN_START, draft);
    expect(fitsHash(fact)).toBe(true);
    expect(fitsHash({ ...fact })).toBe(true);
    expect(fitsHash({ ...fact, by: 'B. Other' })).toBe(false);
  });
});

describe('canonical text', () => {
  // Source: RFC 8785 (June 2020), section 3.2.2, input and result as printed there.
  it('B5 writes numbers, strings and literals as the sample of RFC 8785 does', () => {
    const sample = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    );
    expect(canonical(sample)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  // Source: RFC 8785, section 3.2.3: the order of the sample's keys, here by their values.
  it('B5 sorts keys by UTF-16 code units as the sample of RFC 8785 does', () => {
    const keys = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
    };
    const more = {
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(Object.values(JSON.parse(canonical({ ...keys, ...more }).replace('"1"', '"one"')))).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  it('B5 refuses what JSON cannot hold', () => {
    expect(() => canonical({ si: Number.NaN })).toThrow('must be a finite number, got NaN');
    expect(() => canonical({ text: 'cut \ud83d' })).toThrow('half a character');
    expect(() => canonical(() => 1)).toThrow('must be plain JSON');
  });
});

describe('a sealed fact', () => {
  it('B5 has as its hash the SHA-256 that an independent implementation gives for its canonical text', () => {
    fc.assert(
      fc.property(books, facts => {
        for (const { hash, ...content } of facts.filter(({ v }) => v === 1)) {
          expect(hash).toBe(createHash('sha256').update(canonical(content), 'utf8').digest('hex'));
        }
      }),
    );
  });

  it('B5 comes back from its own text as it was', () => {
    fc.assert(
      fc.property(books, facts => {
        for (const fact of facts) expect(upcast(JSON.parse(canonical(fact)))).toEqual(fact);
      }),
    );
  });

  it('B6 follows the one before', () => {
    const first = sealNext(CHAIN_START, draft);
    const second = sealNext(first, { ...draft, id: 'f2' });
    expect([first.seq, first.prev, second.seq, second.prev]).toEqual([1, '0'.repeat(64), 2, first.hash]);
  });

  it('B3 is never made from what is no fact', () => {
    const bad = { ...draft, v: 1, seq: 1, prev: '0'.repeat(64), text: '' } as never;
    expect(() => seal(bad)).toThrow('seal: fact f1 must be valid, got text:');
    expect(() => sealNext(CHAIN_START, { ...draft, colour: 'red' } as Draft)).toThrow('colour');
    expect(() => sealNext(CHAIN_START, { ...draft, at: '2026-05-01 08:00' })).toThrow('at:');
  });

  it('B3 is refused with every fault at its place', () => {
    const set = { ...draft, text: undefined, kind: 'set', item: '', reading: { text: '1 mm', unit: 'mm' } };
    expect(() => sealNext(CHAIN_START, set as never)).toThrow(/got item: [^;]*; reading\.si: /);
    expect(() => sealNext(CHAIN_START, { ...draft, colour: 'red' } as Draft)).toThrow(/got fact: .*"colour"$/);
  });
});

describe('the door for facts from outside', () => {
  const whole = sealNext(CHAIN_START, draft);
  const resealed = (change: object): unknown => {
    const changed = { ...whole, ...change };
    return { ...changed, hash: hashOf(changed as Fact) };
  };

  it.each([
    [
      'B22 a newer format is refused',
      resealed({ v: 3, salt: '0'.repeat(32) }),
      'newer format',
      'up to format 2, got format 3',
    ],
    ['B22 a format that is none is refused', resealed({ v: '1' }), 'not a fact', 'a whole number from 1, got "1"'],
    ['B5 a hash with half a character in it is found', { ...whole, hash: '\ud800' }, 'damaged', '"\\ud800"'],
    ['B5 a changed text is found', { ...whole, text: 'rear axle oily' }, 'damaged', 'the hash of this fact must be'],
    ['B22 a format below the first is refused', resealed({ v: 0 }), 'not a fact', 'a whole number from 1, got 0'],
    ['B22 half a format is refused', resealed({ v: 0.5 }), 'not a fact', 'a whole number from 1, got 0.5'],
    ['B5 half a character is found', { ...whole, text: '\ud83d' }, 'not a fact', 'half a character in "\\ud83d"'],
    ['B3 an unknown kind is named', resealed({ kind: 'guessed' }), 'unknown kind', 'got "guessed"'],
    [
      'B3 the kinds there are are listed',
      resealed({ kind: '?' }),
      'unknown kind',
      'one of kart filed, event, fitted, ',
    ],
    ['B3 a number is no fact', 5, 'not a fact', 'a fact must be a JSON object, got 5'],
    ['B3 nothing at all is no fact', undefined, 'not a fact', 'a fact must be a JSON object, got undefined'],
    ['B3 a fault of the whole is told as one', resealed({ colour: 'red' }), 'not a fact', 'got the fact: '],
    [
      'B3 every fault is told at its place',
      resealed({ kind: 'set', text: undefined, item: '', reading: { text: '1 mm', unit: 'mm' } }),
      'not a fact',
      '; reading.si: ',
    ],
    ['B3 an unknown key is named', resealed({ colour: 'red' }), 'not a fact', 'colour'],
    ['B3 a missing key is named', resealed({ text: undefined }), 'not a fact', 'text:'],
    ['B2 an instant without milliseconds is named', resealed({ at: '2026-05-01T08:00:00Z' }), 'not a fact', 'at:'],
    ['B3 a list is no fact', [], 'not a fact', 'got a list'],
    ['B3 nothing is no fact', null, 'not a fact', 'got null'],
  ])('%s', (_, raw, code, message) => {
    const problem = upcast(raw);
    expect(isProblem(problem)).toBe(true);
    expect(problem).toMatchObject({
      code,
      message: expect.stringContaining(message),
      remedy: expect.stringMatching(/\w/),
    });
  });

  it('B24 a problem names the fact where that says who it is', () => {
    expect(upcast(resealed({ v: 0 }))).toMatchObject({ fact: 'f1' });
    expect(upcast(resealed({ id: 7 }))).not.toHaveProperty('fact');
  });
});

describe('the chain', () => {
  const chain = sealAll(
    CHAIN_START,
    ['f1', 'f2', 'f3', 'f4'].map(id => ({ ...draft, id })),
  );
  const [first, second, third, fourth] = chain as [Fact, Fact, Fact, Fact];

  it('B6 a whole book has no problem, in whatever order it is read', () => {
    fc.assert(
      fc.property(books, facts => {
        expect(verifyChain([...facts].reverse())).toEqual([]);
      }),
    );
  });

  it('B6 a changed fact is the one that is named', () => {
    const changed = { ...second, by: 'someone else' };
    expect(verifyChain([first, changed, third, fourth])).toEqual([
      {
        kind: 'problem',
        code: 'damaged',
        message: `fact f2 (note, ${draft.at}) must have the hash ${hashOf(changed)} for what it says, got ${second.hash}`,
        remedy: 'it was changed after it was written: take the book from another copy or the last export',
        fact: 'f2',
      },
    ]);
  });

  it('B6 a fact changed together with its hash is found by the fact after it', () => {
    const forged = seal({ ...second, by: 'someone else', hash: undefined } as never);
    expect(verifyChain([first, forged, third, fourth])).toEqual([
      {
        kind: 'problem',
        code: 'broken chain',
        message: `number 3 of device "bench" must follow the hash ${forged.hash}, got ${second.hash}: one of the two was changed`,
        remedy:
          'merge the book with another copy that has the facts, or take the last export; do not number facts by hand',
        fact: 'f3',
      },
    ]);
  });

  it('B6 a missing fact is told by the number that was expected', () => {
    const [problem, ...rest] = verifyChain([first, third, fourth]);
    expect(problem).toMatchObject({
      code: 'broken chain',
      fact: 'f3',
      message: expect.stringContaining('number 2, got 3'),
    });
    expect(rest).toEqual([]);
  });

  it('B6 two facts in one place are told', () => {
    const twin = sealNext(first, { ...draft, id: 'other' });
    expect(
      verifyChain([...chain, twin])
        .map(p => p.message)
        .join(),
    ).toContain('device "bench" must have one fact with number 2, got two');
  });

  it('B6 of two facts in one place the same one is named, whatever was read first', () => {
    const twins = ['a', 'b', 'c'].map(id => sealNext(first, { ...draft, id }));
    const named = (facts: readonly Fact[]) => verifyChain(facts).map(({ fact }) => fact);
    const usual = named([first, ...twins]);
    expect(usual).toHaveLength(2);
    expect(named([...twins].reverse().concat(first))).toEqual(usual);
    expect(usual).not.toContain(twins.toSorted((a, b) => (a.hash < b.hash ? -1 : 1))[0]?.id);
  });

  it('B6 two facts under one id are told', () => {
    const twin = sealNext(CHAIN_START, { ...draft, device: 'phone' });
    expect(verifyChain([first, twin])).toMatchObject([
      { code: 'broken chain', message: expect.stringContaining('id f1') },
    ]);
    expect(verifyChain([first, first])).toEqual([]); // the same one twice is one
  });
});
