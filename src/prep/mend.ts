/**
 * An open find is work like any other: an item of its own that is reached, graded and planned, and done once. Such items
 * stand in no kart file; what plans with them gets a kart that has them besides its own.
 */
import type { Defect, State } from '../book/index.ts';
import type { Item, Kart } from '../kart/index.ts';
import type { Due } from './model.ts';

/** How long a mend takes nobody can know before it is done; half an hour is a starting guess, common practice. */
const MEND_MINUTES = 30;

/** What the kart asks for besides its own items: one for each find that is not mended. The same kart where there is none. */
export function withMends(kart: Kart, state: State): Kart {
  const mends = openFinds(kart, state).map(find => mendItem(kart, find));
  if (mends.length === 0) return kart;
  return { ...kart, items: { ...kart.items, ...Object.fromEntries(mends.map(item => [item.id, item])) } };
}

export const mendsDue = (kart: Kart, state: State): readonly Due[] =>
  openFinds(kart, state).map(find => {
    const { id, title, part, system, grade } = mendItem(kart, find);
    const why = `Found on ${find.at.slice(0, 10)} by ${find.by}: ${find.defect}. Not mended since.`;
    return { item: id, title, part, system, grade, why, cause: 'found', facts: [find.fact], ahead: false };
  });

/** A find on a part that the kart no longer has asks for no work on it; fitness still names it. */
const openFinds = (kart: Kart, { defects }: State): readonly Defect[] =>
  defects.filter(({ mended, part }) => mended === undefined && kart.parts[part] !== undefined);

/**
 * Found at an item or a joint, it is reached as that is, and a joint is opened for it; found on a part, the part comes off
 * for it where it can. What comes off or is opened is made and checked again, as after any other work.
 */
export function mendItem(kart: Kart, { fact, part: id, item: at, defect, grade, failed }: Defect): Item {
  const part = kart.parts[id];
  const seen = at === undefined ? undefined : kart.items[at];
  const itself = part?.removable ? [[id]] : (part?.behind ?? []);
  return {
    id: `${id}/mend ${fact}`,
    key: `mend ${fact}`,
    part: id,
    system: part?.system ?? 'bodywork',
    title: `Mend: ${defect}`,
    action: 'mend',
    mends: fact,
    how: failed
      ? 'Put another one in its place, or mend it as its maker says, and write down how. How long it takes is not known.'
      : 'Mend it, or put another one in its place, and write down how. How long it takes is not known: half an hour is a starting guess.',
    accept: 'what was found is gone, and looked at again',
    source: 'common practice',
    grade,
    when: [],
    minutes: MEND_MINUTES,
    posture: seen?.posture ?? 'any',
    needsOff: seen?.needsOff ?? itself,
    complete: false,
    // What is looked at again once it is mended; a joint, because it was opened.
    disturbs: seen === undefined || seen.joint !== undefined ? [] : [seen.id],
    opens: seen?.joint === undefined ? [] : [seen.joint],
    secondLook: false,
    tools: [],
    consumables: [],
    caution: MEND_CAUTION,
  };
}

const MEND_CAUTION =
  'Cracks, brakes, steering and welding belong to a qualified person when in doubt; the maker’s manual says what may be mended at all.';
