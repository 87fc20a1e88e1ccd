/** What a person types, until it is in the book. */
import { useRef, useState } from 'preact/hooks';
import type { Keep } from './place.ts';
import type { Session } from './session.ts';

export type Kept = {
  readonly text: string;
  /** As it is by now, when something comes later than it was drawn: '' once it is in the book. */
  now(): string;
  put(text: string): void;
  /** Whether it is still as it was drawn, so that it may be pressed; drawn anew where it is in the book by now. */
  stands(): boolean;
  /**
   * Names the press of it as it was drawn, the same one as long as it is not known to be in the book: a page may be put out after
   * it was written and before it heard so, and shows it once more.
   */
  id(): string;
  /** This text is in the book: it stands in no form any more, whichever form or tab it was pressed in. Another text stays. */
  written(text: string): void;
};

/** Kept on the device, so that a locked phone or a reload does not lose it. Two tabs type each their own; what was typed last is found again. */
export function useKept(keep: Keep, slot: string): Kept {
  const [, redraw] = useState(0);
  const mine = useRef(keep.get(slot));
  const inBook = `${slot} in the book`;
  const pressed = `${slot} pressed`;
  const now = (): string => {
    if (keep.get(inBook) === mine.current) mine.current = '';
    return mine.current;
  };
  const text = now();
  return {
    text,
    now,
    stands() {
      if (now() === text) return true;
      redraw(n => n + 1);
      return false;
    },
    id() {
      const last = keep.get(pressed);
      if (text !== '' && last.slice(ID_LENGTH) === text) return last.slice(0, ID_LENGTH);
      const id = newId();
      keep.set(pressed, id + text);
      return id;
    },
    put(text) {
      mine.current = text;
      keep.set(slot, text);
      keep.set(inBook, '');
      redraw(n => n + 1);
    },
    written(text) {
      if (mine.current === text) mine.current = ''; // whatever another tab is told meanwhile
      keep.set(inBook, text);
      if (keep.get(pressed).slice(ID_LENGTH) === text) keep.set(pressed, '');
      if (keep.get(slot) === text) keep.set(slot, '');
      redraw(n => n + 1);
    },
  };
}

/** 128 random bits, hex. */
const newId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(ID_LENGTH / 2)), byte => byte.toString(16).padStart(2, '0')).join(
    '',
  );
const ID_LENGTH = 32;

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
