/** Chances of a retention as an event of a tree: by hand, looked at, or gone unseen. All in 0 to 1; else not a number. */

/** How far one step depends on the one before it, done or left out by the same person. Words of the handbook. */
export type Dependence = 'none' | 'low' | 'moderate' | 'high' | 'complete';

/**
 * Chance that the second step is left out too, given that the first was.
 *   low (1 + 19 n)/20;  moderate (1 + 6 n)/7;  high (1 + n)/2;  complete 1;  none n
 *   n: chance of leaving the second out taken alone [1]
 * Which one: same person, same minute, no mark: high. Same person with a mark and a separate look later: moderate to
 * low. A second person: low. Common practice.
 * Source: Swain and Guttmann, NUREG/CR-1278, table 20-17 (memory).
 */
export function leftOutToo(alone: number, dependence: Dependence): number {
  const n = inside(alone);
  if (dependence === 'low') return (1 + 19 * n) / 20;
  if (dependence === 'moderate') return (1 + 6 * n) / 7;
  if (dependence === 'high') return (1 + n) / 2;
  return dependence === 'complete' ? 1 : n;
}

/**
 * A step left out, such as a pin not fitted, that an inspection finds in so many of its cases.
 *   p (1 - e)
 *   p: chance a time it is done [1]; e: effectiveness of the inspection, 0 finds nothing, 1 finds all [1]
 */
export const afterInspection = (leftOut: number, effectiveness: number): number =>
  inside(leftOut) * (1 - inside(effectiveness));

/**
 * A second retention that nobody verified is latent, for it goes without being noticed: it helps only when it was there
 * at the start and stays.
 *   1 - (1 - g)(1 - p)
 *   g: chance that it is gone already [1]; p: chance that it goes over the event [1]
 */
export const latent = (goneAlready: number, goes: number): number => {
  const [g, p] = [inside(goneAlready), inside(goes)];
  return g + p - g * p;
};

const inside = (chance: number): number => (chance >= 0 && chance <= 1 ? chance : Number.NaN);
