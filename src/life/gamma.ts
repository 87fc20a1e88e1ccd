/**
 * The gamma function, whole and from below.
 *
 *   ln Γ(x) = (x - 1/2) ln x - x + ln √(2π) + 1/(12x) - 1/(360x³) + 1/(1260x⁵) - ...      x >= 10; below by Γ(x) = Γ(x+1)/x
 *   γ(a, x) = x^a e^-x (1/a + x/(a(a+1)) + x²/(a(a+1)(a+2)) + ...)
 *
 * a, x [1], both above 0. Seven terms leave under 1e-15 at x = 10; the second series has no signs, so nothing cancels.
 * Source: Abramowitz and Stegun (1964), 6.1.41, 6.1.15 and 6.5.29 (memory).
 */
const TERMS = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

export function lnGamma(x: number): number {
  if (!(x > 0)) throw new Error(`lnGamma: x must be above 0, got ${x}`);
  let at = x;
  let down = 1;
  while (at < 10) {
    down *= at;
    at += 1;
  }
  let series = 0;
  for (const [n, term] of TERMS.entries()) series += term / at ** (2 * n + 1);
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series - Math.log(down);
}

export const gamma = (x: number): number => Math.exp(lnGamma(x));

/** ∫ from 0 to x of s^(a-1) e^-s ds; the whole of it where nothing is left above (x over 700). */
export function gammaBelow(a: number, x: number): number {
  if (!(a > 0 && x >= 0)) throw new Error(`gammaBelow: a must be above 0 and x 0 or more, got ${a} and ${x}`);
  if (x === 0) return 0;
  if (x > 700) return gamma(a);
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < 10_000 && term > sum * 1e-17; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return Math.exp(a * Math.log(x) - x) * sum;
}
