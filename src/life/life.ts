/**
 * One life as the record holds it. Ages are counted in one unit throughout (run-hours, or laps), never mixed.
 *
 * A part that was taken off fine, or still runs, is no gap in the record: it says that it lasted that long. One whose
 * first hours nobody saw (bought used, moved from a kart of somebody else) says nothing of those hours but that it
 * outlived them. A part found cracked failed somewhere between the last good look and the look that found it.
 */
export type Life =
  | { readonly fate: 'failed'; readonly age: number; readonly from?: number }
  | { readonly fate: 'found'; readonly age: number; readonly fineAt?: number; readonly from?: number } // fineAt: last good look
  | { readonly fate: 'replaced' | 'running'; readonly age: number; readonly from?: number }; // fine then

/** Did it end by failing, seen or found? */
export const ended = (life: Life): boolean => life.fate === 'failed' || life.fate === 'found';

export type LifeProblem = {
  readonly place: number;
  readonly what: 'age' | 'fineAt' | 'from';
  readonly expected: string;
  readonly got: number;
};

/** What cannot be in a record of lives, all at once; empty when it can be worked with. */
export function lifeProblems(lives: readonly Life[]): readonly LifeProblem[] {
  const found: LifeProblem[] = [];
  lives.forEach((life, place) => {
    const { age, from = 0 } = life;
    const fineAt = life.fate === 'found' ? (life.fineAt ?? 0) : undefined;
    const least = ended(life) ? 'an age above 0 for one that failed' : 'an age of 0 or more';
    const say = (what: LifeProblem['what'], expected: string, got: number) =>
      found.push({ place, what, expected, got });
    if (!(age < Number.POSITIVE_INFINITY && (age > 0 || (age === 0 && !ended(life))))) {
      say('age', least, age);
      return;
    }
    if (from !== 0 && !(from > 0 && (ended(life) ? from < age : from <= age)))
      say('from', `an age from 0 to below its last, ${age}`, from);
    if (fineAt === undefined || fineAt === 0) return;
    if (!(fineAt > 0 && fineAt < age)) say('fineAt', `an age from 0 to below the one it was found at, ${age}`, fineAt);
    else if (fineAt < from) say('fineAt', `an age of ${from} or more, from when it was watched`, fineAt);
  });
  return found;
}

/** A caller's bug: what came from outside is held against `lifeProblems` before. */
export function mustBeLives(who: string, lives: readonly Life[]): void {
  const [first] = lifeProblems(lives);
  if (first) throw new Error(`${who}: lives[${first.place}].${first.what} must be ${first.expected}, got ${first.got}`);
}

/**
 * A part that went from kart to kart has a leg in each, and one ends fine at the age at which the next begins: the legs
 * are one life. For the likelihood that is the same to the last bit; for counts and ranks it is not.
 */
export function joined(lives: readonly Life[]): readonly Life[] {
  if (lives.every(({ from }) => from === undefined || from === 0)) return lives;
  const all: Life[] = lives.filter(({ from = 0 }) => !(from > 0));
  const later = lives.filter(({ from = 0 }) => from > 0).sort((a, b) => (a.from ?? 0) - (b.from ?? 0));
  /** Where the fine ones of an age stand. */
  const fineAt = new Map<number, number[]>();
  const note = (life: Life, place: number): void => {
    if (ended(life)) return;
    const places = fineAt.get(life.age);
    if (places) places.push(place);
    else fineAt.set(life.age, [place]);
  };
  all.forEach(note);
  for (const life of later) {
    const place = fineAt.get(life.from ?? 0)?.pop();
    const leg = place === undefined ? undefined : all[place];
    if (place === undefined || leg === undefined) note(life, all.push(life) - 1);
    else {
      all[place] = { ...life, from: leg.from ?? 0 };
      note(life, place);
    }
  }
  return all;
}
