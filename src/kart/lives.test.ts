import { describe, expect, it } from 'vitest';
import { good, HEAD, only } from '../../test/fixtures/kart-text.ts';

const withLives = (lives: string): string => `${HEAD}lives: ${lives}\n`;

describe('the lives that an owner expects', () => {
  it('are read by kind, in running time, with who says so', () => {
    const { lives } = good(
      withLives('{ wheel: { one in ten gone by: 12 h, half gone by: 1800 min, source: ten years of mine } }'),
    );
    expect(lives?.wheel).toMatchObject({
      tenthGoneBy: { si: 43_200 },
      halfGoneBy: { si: 108_000 },
      source: 'ten years of mine',
    });
    expect(good(HEAD).lives).toBeUndefined();
  });

  it.each([
    ['{ wheel: {} }', /"one in ten gone by:", "half gone by:", or both/],
    ['{ wheel: { half gone by: 30 } }', /quantity with its unit/],
    ['{ wheel: { half gone by: 30 mm } }', /time/],
    ['{ wheel: { half gone by: 0 h } }', /a time above 0/],
    ['{ wheel: { half gone by: 12 h, one in ten gone by: 30 h } }', /one in ten to be gone before half are/],
    ['{ whel: { half gone by: 12 h } }', /a kind that is known.*"whel".*wheel/s],
    ['{ wheel: { half gone by: 12 h, all gone by: 30 h } }', /half gone by/],
  ])('%s is refused with the reason', (lives, said) => {
    const { message, remedy, line } = only(withLives(lives)) as { message: string; remedy: string; line?: number };
    expect(`${message} ${remedy}`).toMatch(said);
    expect(line).toBe(4);
  });
});
