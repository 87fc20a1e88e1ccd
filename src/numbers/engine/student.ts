/**
 * Two-sided 95 % point of Student's t for a whole number of degrees of freedom.
 *
 * θ = atan(t/√ν);  ν odd: A = (2/π)(θ + sin θ (cos θ + 2/3 cos³θ + …));  ν even: A = sin θ (1 + 1/2 cos²θ + 1·3/(2·4) cos⁴θ + …)
 * A chance within ± t [1]; ν degrees of freedom, 1 or more [1]. Exact series, found by halving. Source: student-t.
 */
export function student95(freedom: number): number {
  if (!(Number.isInteger(freedom) && freedom >= 1)) return Number.NaN;
  let [low, high] = [0, 20]; // 12.7 with one degree of freedom is the largest
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (within(middle, freedom) < 0.95) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Chance within ± t. */
function within(t: number, freedom: number): number {
  const theta = Math.atan(t / Math.sqrt(freedom));
  const [sin, cos] = [Math.sin(theta), Math.cos(theta)];
  const odd = freedom % 2 === 1;
  let term = odd ? cos : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
    term *= ((k - 1) / k) * cos ** 2;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + sin * sum) : sin * sum;
}
