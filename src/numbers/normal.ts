/**
 * Standard normal distribution. Cumulative probability to about 1e-15 in the middle and, in the tails, relative.
 *
 *   Φ(x) = 1/2 + φ(x) Σ x^(2n+1) / (1·3·5···(2n+1))          |x| <= 2
 *   1 - Φ(x) = φ(x) / (x + 1/(x + 2/(x + 3/(x + ...))))        x > 2
 *
 * x  standard score [1];  φ  density [1]. Valid for every finite x. Source: as-26, 26.2.11 and 26.2.14.
 */
export function normalBelow(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  if (x > 2) return 1 - tail(x);
  return x < -2 ? tail(-x) : 0.5 + middle(x);
}

/** The score below which a share p lies; p in (0, 1), else throws. Bracketed: bisection that always ends. */
export function normalScore(p: number): number {
  if (!(p > 0 && p < 1)) throw new Error(`normalScore: p must lie between 0 and 1, got ${p}`);
  if (p > 0.5) return -normalScore(1 - p);
  let low = -40;
  let high = 0;
  for (let step = 0; step < 200 && high - low > 1e-15 * Math.max(1, -low); step++) {
    const half = (low + high) / 2;
    if (normalBelow(half) < p) low = half;
    else high = half;
  }
  return (low + high) / 2;
}

const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

/** Between 0 and x, |x| <= 2: terms fall below 1e-17 within 30. */
function middle(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 60; n++) {
    term *= (x * x) / (2 * n + 1);
    sum += term;
  }
  return density(x) * sum;
}

/** Above x > 2, from the innermost of 200 links outward (at x = 2, 200 links leave under 1e-16 of it). */
function tail(x: number): number {
  if (x > 39) return 0; // under the smallest number that can be written
  let link = x;
  for (let n = 200; n >= 1; n--) link = x + n / link;
  return density(x) / link;
}
