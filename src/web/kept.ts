/**
 * Text that a person types, kept on the device until it is in the book: a locked phone or a reload does not lose it. It stands
 * nowhere else, so every form that shows it is empty once it was written down, whichever form or tab it was pressed in.
 */
import { useRef, useState } from 'preact/hooks';
import type { Keep } from './place.ts';
import type { Session } from './session.ts';

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

/**
 * Whether what is being written was said in this form: what was pressed is what is written, so nothing in it is changed till then.
 * Another form, or a log that is read in, lets it be.
 */
export function useBeingWritten(session: Session): readonly [boolean, <T>(written: Promise<T>) => Promise<T>] {
  const pressed = useRef(0);
  return [
    session.view().writing && pressed.current > 0,
    async written => {
      pressed.current++;
      try {
        return await written;
      } finally {
        pressed.current--;
      }
    },
  ];
}
