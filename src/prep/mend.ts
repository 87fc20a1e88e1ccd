/**
 * An open find is work like any other: an item of its own that is reached, graded and planned, and done once. So is a part
 * that failed: another one goes in its place, whatever its kind says. Such items stand in no kart file; what plans with them
 * gets a kart that has them besides its own.
 */
import type { Defect, State } from '../book/index.ts';
import type { Item, Kart } from '../kart/index.ts';
import type { Due } from './model.ts';

/** How long a mend takes nobody can know before it is done, nor a new part that only goes in whole; half an hour is a starting guess, common practice. */
const MEND_MINUTES = 30;

/** What the kart asks for besides its own items: one for each defect that is not mended. The same kart where there is none. */
export function withMends(kart: Kart, state: State): Kart {
  const mends = openDefects(kart, state).map(one => mendItem(kart, one));
  if (mends.length === 0) return kart;
  return { ...kart, items: { ...kart.items, ...Object.fromEntries(mends.map(item => [item.id, item])) } };
}

export const mendsDue = (kart: Kart, state: State): readonly Due[] =>
  openDefects(kart, state).map(one => {
    const { id, title, part, system, grade } = mendItem(kart, one);
    const { at, by, defect, failed } = one;
    const why = failed
      ? `Failed while it ran on ${at.slice(0, 10)}, said by ${by}: ${defect}. No other one is in its place since.`
      : `Found on ${at.slice(0, 10)} by ${by}: ${defect}. Not mended since.`;
    const due = { item: id, title, part, system, grade, why, facts: [one.fact], ahead: false };
    return failed ? { ...due, cause: 'failed', renews: true } : { ...due, cause: 'found' };
  });

/** One on a part that the kart no longer has asks for no work on it; fitness still names it. */
const openDefects = (kart: Kart, { defects }: State): readonly Defect[] =>
  defects.filter(({ mended, part }) => mended === undefined && kart.parts[part] !== undefined);

export const mendItem = (kart: Kart, defect: Defect): Item =>
  defect.failed ? replacing(kart, defect) : mending(kart, defect);

/**
 * Found at an item or a joint, it is reached as that is, and a joint is opened for it; found on a part, the part comes off
 * for it where it can. What comes off or is opened is made and checked again, as after any other work.
 */
function mending(kart: Kart, defect: Defect): Item {
  const seen = defect.item === undefined ? undefined : kart.items[defect.item];
  return {
    ...bare(kart, defect),
    key: `mend ${defect.fact}`,
    id: `${defect.part}/mend ${defect.fact}`,
    title: `Mend: ${defect.defect}`,
    action: 'mend',
    how: 'Mend it, or put another one in its place, and write down how. How long it takes is not known: half an hour is a starting guess.',
    accept: 'what was found is gone, and looked at again',
    posture: seen?.posture ?? 'any',
    needsOff: seen?.needsOff ?? itself(kart, defect),
    // What is looked at again once it is mended; a joint, because it was opened.
    disturbs: seen === undefined || seen.joint !== undefined ? [] : [seen.id],
    opens: seen?.joint === undefined ? [] : [seen.joint],
  };
}

/** One that comes off is replaced by its refit, which puts another one on; one that does not, in its place. */
function replacing(kart: Kart, defect: Defect): Item {
  const part = kart.parts[defect.part];
  return {
    ...bare(kart, defect),
    key: `replace ${defect.fact}`,
    id: `${defect.part}/replace ${defect.fact}`,
    title: `Replace: ${defect.part}`,
    action: 'replace',
    how: 'Put another one in its place; write its hours if it has run before. Where its maker has it mended instead, write it down as mended.',
    accept: 'another one is in its place, and looked at',
    ...(part?.removable ? { minutes: part.takeOff.minutes + part.refit.minutes } : {}),
    needsOff: itself(kart, defect),
  };
}

const itself = (kart: Kart, { part: id }: Defect): Item['needsOff'] =>
  kart.parts[id]?.removable ? [[id]] : (kart.parts[id]?.behind ?? []);

const bare = (kart: Kart, { fact, part, grade }: Defect) => ({
  part,
  system: kart.parts[part]?.system ?? ('bodywork' as const),
  mends: fact,
  source: 'common practice',
  grade,
  when: [],
  minutes: MEND_MINUTES,
  posture: 'any' as const,
  complete: false,
  disturbs: [],
  opens: [],
  secondLook: false,
  tools: [],
  consumables: [],
  caution: MEND_CAUTION,
});

const MEND_CAUTION =
  'Cracks, brakes, steering and welding belong to a qualified person when in doubt; the maker’s manual says what may be mended at all.';
