/**
 * Where a function that changes sign between two places is zero. Bracketed and bounded: false position that halves the
 * weight of an end that stays (the Illinois rule, Dowell and Jarratt 1971, memory), and halving when that is slow.
 *
 * @param f falls or rises through zero once between the ends; either end may be infinite in value, not in place
 * @returns the place, to the last bits; the end whose sign is wrong is the caller's bug and throws
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 !== fb < 0) || Number.isNaN(fa) || Number.isNaN(fb))
    throw new Error(`rootBetween: f must change sign between ${low} and ${high}, got ${fa} and ${fb}`);
  for (let step = 0; step < 200; step++) {
    const width = Math.abs(b - a);
    if (width <= 4 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b))) break;
    const straight = (a * fb - b * fa) / (fb - fa);
    const inside = straight > Math.min(a, b) && straight < Math.max(a, b);
    const x = step % 3 === 2 || !inside ? (a + b) / 2 : straight;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0 === fb < 0) fa /= 2;
    else [a, fa] = [b, fb];
    [b, fb] = [x, fx];
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
