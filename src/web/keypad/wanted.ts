import { useState } from 'preact/hooks';
import type { Keep } from '../place.ts';

export type Keys = Pick<Keep, 'get' | 'set'>;

/** Where the keys are wanted is a matter of the device, and kept on it. */
const WANTED = 'keypad';

export function useKeys(keep: Keys): readonly [boolean, (wanted: boolean) => void] {
  const [wanted, setWanted] = useState(keep.get(WANTED) || (isTouched() ? 'yes' : 'no'));
  return [
    wanted === 'yes',
    next => {
      const said = next ? 'yes' : 'no';
      keep.set(WANTED, said);
      setWanted(said);
    },
  ];
}

/** A device that is touched has no keys of its own. */
const isTouched = (): boolean => window.matchMedia('(pointer: coarse)').matches;
