import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrivals, books } from '../../test/store-contract/random-facts.ts';
import {
  CHAIN_START,
  compareFacts,
  type Draft,
  type Fact,
  factsOf,
  fold,
  inOrder,
  Ledger,
  sealNext,
  struckFacts,
} from './index.ts';

const KART = '41';
const of = (facts: readonly Fact[]) => factsOf(facts, KART);

function strike(id: string, fact: string, minute = 0): Fact {
  const at = new Date(Date.parse('2026-05-01T08:00:00.000Z') + minute * 60_000).toISOString();
  const draft: Draft = {
    id,
    kart: KART,
    at,
    recorded: at,
    by: 'B. Sample',
    device: `of ${id}`,
    kind: 'struck',
    fact,
    why: 'slip',
  };
  return sealNext(CHAIN_START, draft);
}

function note(id: string, minute: number): Fact {
  const at = new Date(Date.parse('2026-05-01T08:00:00.000Z') + minute * 60_000).toISOString();
  const draft: Draft = {
    id,
    kart: KART,
    at,
    recorded: at,
    by: 'B. Sample',
    device: `of ${at}`,
    kind: 'note',
    text: at,
  };
  return sealNext(CHAIN_START, draft);
}

describe('order', () => {
  it('B7 the order is total, and only one fact stands in each place', () => {
    fc.assert(
      fc.property(arrivals, ([facts, arrived]) => {
        const ordered = inOrder(arrived);
        expect(ordered.length).toBe(facts.length);
        for (let i = 1; i < ordered.length; i++) {
          expect(compareFacts(ordered[i - 1] as Fact, ordered[i] as Fact)).toBeLessThan(0);
        }
      }),
    );
  });

  it('B7 facts stand by when they happened, then when they were written, then by device, its number, id and hash', () => {
    const keys = ['at', 'recorded', 'device', 'seq', 'id', 'hash'] as const;
    const [low, high] = ['1', '2'];
    for (const [n, key] of keys.entries()) {
      // The key decides; those before it are alike, those after it say the contrary.
      const place = (own: string, after: string) =>
        Object.fromEntries(
          keys.map((each, i) => {
            const value = i < n ? low : i === n ? own : after;
            return [each, each === 'seq' ? Number(value) : value];
          }),
        ) as unknown as Fact;
      expect(compareFacts(place(low, high), place(high, low)), key).toBeLessThan(0);
      expect(compareFacts(place(high, low), place(low, high)), key).toBeGreaterThan(0);
      expect(compareFacts(place(low, high), place(low, high)), key).toBe(0);
    }
  });

  it('B7 two books merged in any order give the same state', () => {
    fc.assert(
      fc.property(arrivals, fc.nat(), ([facts, arrived], cut) => {
        const at = cut % (facts.length + 1);
        const [a, b] = [arrived.slice(0, at + 3), arrived.slice(at)];
        expect(fold(of([...a, ...b]))).toEqual(fold(of([...b, ...a])));
        expect(fold(of([...b, ...a]))).toEqual(fold(of(facts)));
      }),
    );
  });

  it('B7 of two claims to one id the same one stands whatever comes first', () => {
    const [a, b] = [strike('s', 'x'), strike('s', 'y', 5)];
    expect(inOrder([b, a])).toEqual(inOrder([a, b]));
    expect(new Ledger(KART, [b, a]).state).toEqual(fold([a, b]));
    expect(new Ledger(KART, [a, b]).state).toEqual(fold([a, b]));
  });
});

describe('strikes', () => {
  it('B8 a struck fact is as if it had never been there', () => {
    fc.assert(
      fc.property(books, fc.nat(), (facts, n) => {
        const all = of(facts).filter(fact => fact.kind !== 'struck');
        const gone = all[n % Math.max(1, all.length)];
        if (!gone) return;
        const { struck, ...after } = fold([...all, strike('s', gone.id)]);
        const { struck: none, ...never } = fold(all.filter(fact => fact !== gone));
        expect(after).toEqual(never);
        expect(struck).toEqual({ [gone.id]: { by: 'B. Sample', why: 'slip' } });
        expect(none).toEqual({});
      }),
    );
  });

  it('B9 struck facts are those that a strike which counts names, found the slow way', () => {
    fc.assert(
      fc.property(arrivals, ([, arrived]) => {
        const facts = inOrder(of(arrived));
        const counts = (id: string): boolean => !facts.some(f => f.kind === 'struck' && f.fact === id && counts(f.id));
        const named = facts.flatMap(fact => (fact.kind === 'struck' ? [fact.fact] : []));
        expect(new Set(struckFacts(facts).keys())).toEqual(new Set(named.filter(id => !counts(id))));
      }),
    );
  });

  it('B9 a strike that is struck gives back what it struck, as deep as it goes', () => {
    const chain = Array.from({ length: 10_001 }, (_, i) => strike(`s${i}`, i ? `s${i - 1}` : 'fact'));
    expect(struckFacts(inOrder(chain)).has('fact')).toBe(true);
    expect(struckFacts(inOrder(chain.slice(0, -1))).has('fact')).toBe(false);
  });

  it('B10 strikes in a ring decide nothing, and one from outside opens the ring', () => {
    const ring = [strike('a', 'b'), strike('b', 'a'), strike('self', 'self')];
    expect([...struckFacts(ring).keys()]).toEqual([]);
    expect([...struckFacts([...ring, strike('c', 'a')]).keys()]).toEqual(['a']);
  });

  it('B10 a strike works on a fact that arrives after it', () => {
    fc.assert(
      fc.property(books, facts => {
        const mine = of(facts);
        const last = [...inOrder(mine)].pop();
        if (!last || last.kind === 'struck') return;
        const ledger = new Ledger(KART, [strike('s', last.id), ...mine.filter(fact => fact !== last)]);
        ledger.state;
        ledger.add([last]);
        expect(ledger.state).toEqual(fold([...mine, strike('s', last.id)]));
      }),
    );
  });
});

describe('the ledger', () => {
  it('B21 the state kept up to date fact by fact is the state folded, in any order of arrival', () => {
    fc.assert(
      fc.property(arrivals, fc.boolean(), ([facts, arrived], ask) => {
        const ledger = new Ledger(KART);
        for (const fact of arrived) {
          ledger.add([fact]);
          if (ask) ledger.state;
        }
        expect(ledger.state).toEqual(fold(of(facts)));
        expect(ledger.facts).toEqual(inOrder(of(facts)));
      }),
      { numRuns: 500 },
    );
  });

  it('B21 facts in order are added without folding anew and give the same state', () => {
    fc.assert(
      fc.property(books, facts => {
        const ledger = new Ledger(KART);
        for (const fact of inOrder(facts)) {
          ledger.add([fact]);
          expect(ledger.state.count).toBeLessThanOrEqual(facts.length);
        }
        expect(ledger.state).toEqual(fold(of(facts)));
      }),
    );
  });

  it('B21 of two claims to one id that come one after the other only the first in order counts', () => {
    const [a, b] = [note('same', 1), note('same', 2)];
    const ledger = new Ledger(KART, [a]);
    ledger.state;
    ledger.add([b]);
    expect(ledger.state).toEqual(fold([a]));
    expect(ledger.facts).toEqual([a]);
  });

  it('B21 a state once given does not change when facts arrive', () => {
    fc.assert(
      fc.property(books, facts => {
        const ledger = new Ledger(KART);
        const given = inOrder(facts).map(fact => {
          ledger.add([fact]);
          return [ledger.state, JSON.stringify(ledger.state)] as const;
        });
        for (const [state, text] of given) expect(JSON.stringify(state)).toBe(text);
      }),
    );
  });

  it('B21 the same state is the same object until a fact arrives', () => {
    const ledger = new Ledger(KART, [strike('a', 'b')]);
    const before = ledger.state;
    ledger.add([strike('a', 'b')]);
    expect(ledger.state).toBe(before);
    ledger.add([strike('c', 'd')]);
    expect(ledger.state).not.toBe(before);
  });
});
