/**
 * Whose hands made a joint and who looked at it, and how far that makes one step depend on the one before: the words of the handbook,
 * by `dependence` of data/retentions.yaml. What nobody wrote down is taken for one pair of hands that looked once.
 */
import type { Mark, Pass, State } from '../../book/index.ts';
import type { ItemId, Joint, Kart } from '../../kart/index.ts';
import { standing } from '../../life/index.ts';
import type { Dependence } from '../fault-tree/index.ts';
import type { Catalogue } from '../retentions/index.ts';

export type Look = { readonly verified: boolean; readonly dependence: Dependence; readonly says: string };

type At = { readonly now: string; readonly event?: string; readonly retentions: Catalogue };

/** Who looked since a joint was made, and whether that still counts. A look that has lapsed is none. */
export function lookedAt(kart: Kart, state: State, joint: Joint, { now, event, retentions: { dependence } }: At): Look {
  const item = kart.items[joint.item];
  const found = item && standing(kart, state, item, { now, ...(event === undefined ? {} : { event }) });
  const pass = state.items[joint.item]?.pass;
  const counts = found?.holds || found?.cause === 'second look';
  if (!pass || !counts) return { verified: false, dependence: dependence['one look'], says: 'not looked at since' };
  const { secondLook } = pass;
  if (!secondLook) return { verified: true, dependence: dependence['one look'], says: 'looked at once' };
  const twice = (level: Dependence, says: string): Look => ({ verified: true, dependence: level, says });
  if (!samePerson(pass, secondLook)) return twice(dependence['another person'], 'looked at twice, by two people');
  if (minutesBetween(pass, secondLook) <= dependence['at once within'])
    return twice(dependence['one look'], 'looked at twice at once, by one person');
  return inAnotherOrder(state, joint.item, pass)
    ? twice(dependence['same person later, in another order'], 'looked at twice, by one person in another order')
    : twice(dependence['same person later'], 'looked at twice, by one person');
}

export const samePerson = (a: Mark, b: Mark): boolean => a.by.trim().toLowerCase() === b.by.trim().toLowerCase();
export const minutesBetween = (a: Mark, b: Mark): number => Math.abs(Date.parse(a.at) - Date.parse(b.at)) / 60_000;

/** On the second walk round other items came before and after it than on the first. */
function inAnotherOrder(state: State, id: ItemId, of: Pass): boolean {
  const walked = Object.entries(state.items).flatMap(([item, { pass }]) =>
    pass?.secondLook && samePerson(pass, of) && samePerson(pass, pass.secondLook) && sameDay(pass.secondLook, of)
      ? [{ item, first: pass.pos, second: pass.secondLook.pos }]
      : [],
  );
  const neighbours = (by: 'first' | 'second') => {
    const order = walked.toSorted((a, b) => a[by] - b[by]).map(({ item }) => item);
    const at = order.indexOf(id);
    return [order[at - 1], order[at + 1]];
  };
  const [first, second] = [neighbours('first'), neighbours('second')];
  return first[0] !== second[0] && first[1] !== second[1];
}
const sameDay = (look: Mark, of: Pass): boolean => look.at.slice(0, 10) === of.secondLook?.at.slice(0, 10);
