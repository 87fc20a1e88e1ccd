import { describe, expect, it } from 'vitest';
import { good, HEAD, only } from '../../test/fixtures/kart-text.ts';

const withCosts = (costs: string): string => `${HEAD}costs: ${costs}\n`;

describe('what parts and a lost weekend cost', () => {
  it('is money of the owner by kind; what is not said is not known', () => {
    const { costs } = good(
      withCosts(
        '{ lost weekend: 420, accepted chance: 1 %, spares: { wheel: { price: 85, mass: 900 g, change: 5 min }, hub: { alike: false } } }',
      ),
    );
    expect(costs).toMatchObject({ lostWeekend: 420, acceptedChance: 0.01 });
    expect(costs?.spares.wheel).toMatchObject({ price: 85, mass: { si: 0.9 }, change: { si: 300 }, alike: true });
    expect(costs?.spares.hub).toEqual({ alike: false });
    expect(good(HEAD).costs).toBeUndefined();
  });

  it.each([
    ['{ lost weekend: -1 }', /money, 0 or more/],
    ['{ lost weekend: 400 EUR }', /an amount of money in your own/],
    ['{ accepted chance: 0 % }', /between 0 and 100 %/],
    ['{ accepted chance: 1 h }', /ratio|%/],
    ['{ spares: { whel: { price: 3 } } }', /a kind that is known.*"whel".*wheel/s],
    ['{ spares: { wheel: { mass: 3 } } }', /quantity with its unit/],
    ['{ spares: { wheel: { mass: -3 kg } } }', /a mass of 0 or more/],
    ['{ spares: { wheel: { change: 3 kg } } }', /time/],
    ['{ spares: { wheel: { prise: 3 } } }', /price/],
  ])('%s is refused with the reason', (costs, said) => {
    const { message, remedy, line } = only(withCosts(costs)) as { message: string; remedy: string; line?: number };
    expect(`${message} ${remedy}`).toMatch(said);
    expect(line).toBe(4);
  });
});
