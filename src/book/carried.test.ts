import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrivals, books } from '../../test/store-contract/random-facts.ts';
import { type Balance, Carried } from './carried.ts';
import type { Fact } from './fact.ts';
import { fold } from './fold.ts';
import { inOrder } from './order.ts';

const KART = '41';
const of = (facts: readonly Fact[]): readonly Fact[] => facts.filter(fact => fact.kart === KART);
const once = (facts: readonly Fact[]): readonly Fact[] => [...new Map(of(facts).map(fact => [fact.id, fact])).values()];
const throughText = (balance: Balance): Balance => JSON.parse(JSON.stringify(balance)) as Balance;

describe('a state carried forward', () => {
  it('B34 is the state folded from all facts, or not known, in any order of arrival and over any break', () => {
    let [known, all] = [0, 0];
    fc.assert(
      fc.property(arrivals, fc.integer({ min: 1, max: 6 }), fc.array(fc.boolean()), ([, arrived], least, breaks) => {
        const facts = once(arrived);
        let carried = Carried.of([], least);
        for (const [n, fact] of facts.entries()) {
          carried.add(fact);
          const balance = breaks[n] ? carried.balance() : undefined;
          if (balance) carried = Carried.from(throughText(balance), least);
          const state = carried.state;
          all++;
          if (state === undefined) break;
          known++;
          expect(state).toEqual(fold(facts.slice(0, n + 1)));
        }
      }),
      { numRuns: 500 },
    );
    expect(known / all).toBeGreaterThan(0.3); // else nothing was carried
  });

  it('B34 goes on from all facts, struck ones among them, and counts in what comes after', () => {
    fc.assert(
      fc.property(books, fc.integer({ min: 1, max: 6 }), fc.nat(), (book, least, cut) => {
        const facts = of(book);
        const first = facts.slice(0, cut % (facts.length + 1));
        const carried = Carried.of(first, least);
        expect(carried.state).toEqual(fold(first));
        for (const fact of facts.slice(first.length)) carried.add(fact);
        if (!carried.state) return;
        expect(carried.state).toEqual(fold(facts));
        expect(carried.lastAt).toBe(inOrder(facts).at(-1)?.at);
      }),
      { numRuns: 500 },
    );
  });

  it('B34 a state once given does not change when facts arrive', () => {
    fc.assert(
      fc.property(books, facts => {
        const carried = Carried.of([], 2);
        const given = of(facts).flatMap(fact => {
          carried.add(fact);
          const { state } = carried;
          return state ? [[state, JSON.stringify(state)] as const] : [];
        });
        for (const [state, text] of given) expect(JSON.stringify(state)).toBe(text);
      }),
    );
  });
});
