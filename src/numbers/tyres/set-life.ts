/**
 * A set of tyres against its limits: heat cycles and age, whichever ends first.
 *
 *   left = limit - used of each;  Valid: a limit of the maker or of this team's own record; the ones here are common practice.
 */
export const SET_LIMITS = { cycles: 6, age: 2 * 365 * 86400 } as const; // heat cycles; seconds
export type SetAsked = {
  readonly cycles?: number;
  readonly age?: number; // since made [s]
  readonly mostCycles?: number;
  readonly mostAge?: number;
};
export type SetLife = {
  readonly state: 'within' | 'at its limit' | 'not known';
  readonly cyclesLeft: number; // not a number when not known
  readonly ageLeft: number; // [s]
};

/** Within only when both are known and within: what is not known is never taken as good. */
export function setLife({ cycles, age, mostCycles = SET_LIMITS.cycles, mostAge = SET_LIMITS.age }: SetAsked): SetLife {
  const cyclesLeft = cycles === undefined ? Number.NaN : mostCycles - cycles;
  const ageLeft = age === undefined ? Number.NaN : mostAge - age;
  const over = cyclesLeft <= 0 || ageLeft <= 0;
  const known = cyclesLeft > 0 && ageLeft > 0;
  return { state: over ? 'at its limit' : known ? 'within' : 'not known', cyclesLeft, ageLeft };
}
