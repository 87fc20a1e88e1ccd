import { useState } from 'preact/hooks';
import type { Keep } from '../place.ts';

export type Keys = Pick<Keep, 'get' | 'set'>;

/** Where the keys are wanted is a matter of the device, and kept on it. */
const WANTED = 'keypad';

export function useKeys(keep: Keys): readonly [boolean, (wanted: boolean) => void] {
  const [, redraw] = useState(0);
  return [
    (keep.get(WANTED) || (isTouched() ? 'yes' : 'no')) === 'yes',
    next => {
      keep.set(WANTED, next ? 'yes' : 'no');
      redraw(n => n + 1);
    },
  ];
}

/** A device that is touched has no keys of its own. */
const isTouched = (): boolean => window.matchMedia('(pointer: coarse)').matches;
