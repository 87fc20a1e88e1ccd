/**
 * Text that a person types, kept on the device until it is in the book: a locked phone or a reload does not lose it. It stands
 * nowhere else, so every form that shows it is empty once it was written down, whichever form or tab it was pressed in.
 */
import { useState } from 'preact/hooks';
import type { Keep } from './place.ts';

export function useKept(keep: Keep, slot: string): readonly [string, (text: string) => void] {
  const [, redraw] = useState(0);
  return [
    keep.get(slot),
    text => {
      keep.set(slot, text);
      redraw(n => n + 1);
    },
  ];
}
