/**
 * Which of several claims stand when all of them together may err 1 time in 20.
 *
 *   p₍₁₎ ≤ p₍₂₎ ≤ ... ≤ p₍ₘ₎: claim k stands while p₍ᵢ₎ ≤ 0.05 / (m - i + 1) for every i up to k
 *
 * Source: Holm 1979, A simple sequentially rejective multiple test procedure (memory).
 */
export function holm(chances: readonly number[], all = 0.05): readonly boolean[] {
  const order = chances.map((_, n) => n).sort((a, b) => (chances[a] as number) - (chances[b] as number));
  const stands = chances.map(() => false);
  for (const [i, n] of order.entries()) {
    if (!((chances[n] as number) <= all / (chances.length - i))) break;
    stands[n] = true;
  }
  return stands;
}
