/**
 * What is half typed of a step outlives a reload, and belongs to its kart and to the record as it was then: once somebody has done,
 * failed or opened it, or its part came off, the text of before is of another job and stands there no more.
 */
import { useEffect, useState } from 'preact/hooks';
import type { State } from '../../book/index.ts';
import type { Step } from '../../prep/index.ts';
import { type Keep, keepOf } from '../place.ts';

type Of = Pick<Step, 'item' | 'joint' | 'part'>;
export type HalfTyped = Keep & {
  /** Whether this is what is kept, of the record as it is or as it was. */
  holds(key: string, text: string): boolean;
};

export function halfTyped(keep: Keep, kart: string, step: Of, state: State): HalfTyped {
  const own = keepOf(keep, kart);
  const then = `${lastSaid(step, state)}\n`;
  return {
    get(key) {
      const kept = own.get(key);
      return kept.startsWith(then) ? kept.slice(then.length) : '';
    },
    set: (key, value) => own.set(key, value === '' ? '' : `${then}${value}`),
    holds(key, text) {
      const kept = own.get(key);
      return kept !== '' && kept.slice(kept.indexOf('\n') + 1) === text;
    },
  };
}

/**
 * What stands in a field stays there while the record goes on beneath it, and is kept with it as it is by then. Where nothing is
 * kept any more it was written, from this card or another one.
 */
export function useHalfTyped(
  keep: HalfTyped,
  key: string,
): readonly [text: string, put: (text: string) => void, written: () => void] {
  const [text, setText] = useState(keep.get(key));
  useEffect(() => {
    if (text === '' || keep.get(key) === text) return;
    if (keep.holds(key, text)) keep.set(key, text);
    else setText(keep.get(key));
  });
  const put = (next: string): void => {
    keep.set(key, next);
    setText(next);
  };
  return [text, put, () => keep.holds(key, text) && put('')];
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
