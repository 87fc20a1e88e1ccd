/** A record of lives boiled down to what the likelihood asks of it. Ages are counted from the logarithm of the largest, so that no power overflows. */
import { joined, type Life, mustBeLives } from '../life.ts';

/** ln(age / largest); -Infinity for one never looked at before. */
export type Between = { readonly fine: number; readonly at: number };

export type Evidence = {
  readonly units: number;
  readonly failed: number; // seen to fail, at a known age
  readonly top: number; // ln of the largest age
  readonly ages: Float64Array; // ln(age / largest) of all that failed or were fine
  readonly ofFailed: number; // their sum over those that failed
  readonly found: readonly Between[];
  readonly late: readonly number[]; // ln(from / largest) of those not watched from new
};

/** Throws on an age that cannot be (see `lifeProblems`). One fine at age 0 says nothing and is left out. */
export function evidenceOf(lives: readonly Life[]): Evidence {
  mustBeLives('evidenceOf', lives);
  let largest = 0;
  for (const { age } of lives) if (age > largest) largest = age;
  const ages = new Float64Array(lives.length);
  const found: Between[] = [];
  const late: number[] = [];
  let [units, kept, failed, ofFailed] = [0, 0, 0, 0];
  for (const life of joined(lives)) {
    if (life.age === 0) continue;
    units++;
    if (life.from !== undefined && life.from > 0) late.push(Math.log(life.from / largest));
    const at = Math.log(life.age / largest);
    if (life.fate === 'found') {
      found.push({ fine: Math.log((life.fineAt ?? 0) / largest), at });
      continue;
    }
    ages[kept++] = at;
    if (life.fate !== 'failed') continue;
    failed++;
    ofFailed += at;
  }
  return {
    units,
    failed,
    top: largest > 0 ? Math.log(largest) : 0,
    ages: ages.subarray(0, kept),
    ofFailed,
    found,
    late,
  };
}
