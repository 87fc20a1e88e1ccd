/** After a press that was refused the first field in question is brought into sight and gone to, however long the form. */
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export function useToRefused(busy: boolean): {
  readonly form: RefObject<HTMLFormElement | null>;
  readonly pressed: () => void;
} {
  const form = useRef<HTMLFormElement>(null);
  const waits = useRef(false);
  useEffect(() => {
    if (!waits.current || busy) return;
    const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"], .refused');
    if (first) waits.current = false;
    first?.scrollIntoView({ block: 'center' });
    first?.focus({ preventScroll: true });
  });
  return {
    form,
    pressed() {
      waits.current = true;
    },
  };
}
