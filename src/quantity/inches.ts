/** A length as a tape shows it. `sign` is that of the rounded length; the rest is its size. */
export type InchFraction = {
  readonly sign: -1 | 0 | 1;
  readonly whole: number;
  readonly num: number;
  readonly den: number; // lowest terms; 1 when there is no fraction
  readonly text: string; // '5 3/4 in'
  readonly errorMetres: number; // shown less true
};

const INCH = 0.0254; // m, exact (1959)
const NOISE = 1e-9; // of one division: a length typed as a half must round as a half

/**
 * The nearest mark of a tape divided in 1/denominator inch, halves rounded up (away from zero), in lowest terms.
 * Denominator: a whole number from 1 (16 and 32 are usual). Throws on a length that is not finite.
 */
export function inchFraction(metres: number, denominator: number): InchFraction {
  if (!Number.isFinite(metres)) throw new Error(`inchFraction: metres must be finite, got ${metres} m`);
  if (!Number.isInteger(denominator) || denominator < 1)
    throw new Error(`inchFraction: denominator must be a whole number from 1, got ${denominator}`);
  const marks = Math.floor((Math.abs(metres) / INCH) * denominator + 0.5 + NOISE);
  const sign = marks === 0 ? 0 : metres < 0 ? -1 : 1;
  const whole = Math.floor(marks / denominator);
  const rest = marks % denominator;
  const shared = divisor(rest, denominator);
  const num = rest / shared;
  const den = denominator / shared;
  const size = rest === 0 ? `${whole}` : whole === 0 ? `${num}/${den}` : `${whole} ${num}/${den}`;
  return {
    sign,
    whole,
    num,
    den,
    text: `${sign < 0 ? '-' : ''}${size} in`,
    errorMetres: (sign * marks * 254) / (10000 * denominator) - metres,
  };
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
