/**
 * Two retentions of one joint, and what makes both let go at once.
 *   c = β min(p, q);  P = 1 - (1 - c)(1 - (p - c)(q - c)) = c + (1 - c)(p - c)(q - c)
 *   p, q: chance of the first and of the second from all their causes [1]; β: share of the less likely one's failures that
 *   both have in common [1]; c: chance of that, the floor below which no second retention brings the joint; P: both let go [1]
 * All in 0 to 1. Source: beta factor, Fleming 1975 as in NUREG/CR-4780 (memory); worked values in checks/rows.
 */
export type Pair = {
  readonly first: number; // alone
  readonly second: number; // alone
  readonly both: number; // the floor
  readonly chance: number;
};

export function pairOf(p: number, q: number, share: number): Pair {
  for (const [name, value] of Object.entries({ p, q, share }))
    if (!(value >= 0 && value <= 1)) throw new Error(`pairOf: ${name} must lie in 0…1, got ${value}`);
  const both = share * Math.min(p, q);
  const [first, second] = [p - both, q - both];
  return { first, second, both, chance: both + (1 - both) * first * second };
}

/** Two shares that come from different causes, taken together: 1 - (1 - a)(1 - b). */
export const shareOf = (a: number, b: number): number => a + b - a * b;
