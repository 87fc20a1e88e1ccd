/**
 * What is half typed of a step outlives a reload, and belongs to its kart and to the record as it was then: once somebody has done,
 * failed or opened it, or its part came off, the text of before is of another job and stands there no more.
 */
import type { State } from '../../book/index.ts';
import type { Step } from '../../prep/index.ts';
import { type Keep, keepOf } from '../place.ts';

type Of = Pick<Step, 'item' | 'joint' | 'part'>;

export function halfTyped(keep: Keep, kart: string, step: Of, state: State): Keep {
  const own = keepOf(keep, kart);
  const then = `${lastSaid(step, state)}\n`;
  return {
    get(key) {
      const kept = own.get(key);
      return kept.startsWith(then) ? kept.slice(then.length) : '';
    },
    set: (key, value) => own.set(key, value === '' ? '' : `${then}${value}`),
  };
}

/** The facts that were said last of what the step is about. */
function lastSaid({ item, joint, part }: Of, { items, joints, parts }: State): string {
  const { pass, fail, notPossible, set } = (item !== null && items[item]) || NOTHING;
  const { made, loosened } = (joint !== null && joints[joint]) || NOTHING;
  const { off, back } = (part !== null && parts[part]) || NOTHING;
  const marks = [pass, pass?.secondLook, fail, notPossible, set, made, made?.secondLook, loosened, off, back];
  return marks.map(mark => mark?.fact ?? '').join(' ');
}
const NOTHING: Partial<State['items'][string] & State['joints'][string] & State['parts'][string]> = {};
