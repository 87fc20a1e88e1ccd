/**
 * Student's t for a whole number of degrees of freedom: the share below a score, and the score for a share.
 *
 *   ν odd:  A = 2/π (θ + sin θ (cos θ + 2/3 cos³ θ + 2·4/(3·5) cos⁵ θ + ... to cos^(ν-2)));  ν = 1: A = 2θ/π
 *   ν even: A = sin θ (1 + 1/2 cos² θ + 1·3/(2·4) cos⁴ θ + ... to cos^(ν-2));  θ = atan(t / √ν);  below t: (1 + A)/2
 *
 * A share within ± t [1], below 0 for t below 0;  ν degrees of freedom, a whole number of 1 or more, else throws. A series
 * of ν/2 terms: exact. Not a number in, not a number out. Source: student-t.
 */
export function studentBelow(score: number, freedom: number): number {
  if (!(Number.isInteger(freedom) && freedom >= 1))
    throw new Error(`studentBelow: freedom must be a whole number of 1 or more, got ${freedom}`);
  const angle = Math.atan(score / Math.sqrt(freedom));
  const [sin, cosine] = [Math.sin(angle), Math.cos(angle)];
  const odd = freedom % 2 === 1;
  let term = odd ? cosine : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let n = odd ? 3 : 2; n <= freedom - 2; n += 2) {
    term *= ((n - 1) / n) * cosine ** 2;
    sum += term;
  }
  const within = odd ? (2 / Math.PI) * (angle + sin * sum) : sin * sum;
  return (1 + within) / 2;
}

/** The score below which a share p lies; p in (0, 1), else throws. Bracketed: doubling, then bisection that always ends. */
export function studentScore(p: number, freedom: number): number {
  if (!(p > 0 && p < 1)) throw new Error(`studentScore: p must lie between 0 and 1, got ${p}`);
  if (p < 0.5) return -studentScore(1 - p, freedom);
  let [low, high] = [0, 1];
  for (let step = 0; step < 200 && studentBelow(high, freedom) < p; step++) high *= 2;
  for (let step = 0; step < 200 && high - low > 1e-15 * high; step++) {
    const middle = (low + high) / 2;
    if (studentBelow(middle, freedom) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The score with 95 % between it and its mirror, 1.96 for endless freedom. */
export const student95 = (freedom: number): number => studentScore(0.975, freedom);
