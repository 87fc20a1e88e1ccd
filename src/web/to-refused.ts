/**
 * After a press that was refused the first field in question is brought into sight and gone to, however long the form; a refusal
 * of no field is brought into sight, and the focus is where it was when it was pressed.
 */
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export function useToRefused(busy: boolean): {
  readonly form: RefObject<HTMLFormElement | null>;
  readonly pressed: () => void;
} {
  const form = useRef<HTMLFormElement>(null);
  const waits = useRef<Element>(null); // what had the focus at the press
  useEffect(() => {
    if (waits.current === null || busy) return;
    const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"], .refused');
    if (!first) return;
    const [from, at] = [waits.current, document.activeElement];
    waits.current = null;
    if (at !== from && at !== document.body) return; // who goes on elsewhere meanwhile is left there
    first.scrollIntoView({ block: 'center' });
    const to = first.matches('.refused') ? from : first;
    if (form.current?.contains(to)) (to as HTMLElement).focus({ preventScroll: true });
  });
  return {
    form,
    pressed() {
      waits.current = document.activeElement;
    },
  };
}
