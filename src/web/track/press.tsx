/** One form with one button: the second press records what was asked about as it was said. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Refused } from '../parts.tsx';
import { trackWords } from '../words/track.tsx';
import type { useWriting } from './writing.ts';

export function Press(props: {
  readonly writing: ReturnType<typeof useWriting>;
  readonly button: string;
  readonly children: ComponentChildren;
  readonly beside?: ComponentChildren; // further buttons
}) {
  const { writing, button, children, beside } = props;
  const at = useRef<HTMLFormElement>(null);
  const pressed = useRef(false);
  useEffect(() => {
    if (!pressed.current || writing.busy) return;
    const first = at.current?.querySelector<HTMLElement>('[aria-invalid="true"], .refused');
    if (first) pressed.current = false;
    first?.scrollIntoView({ block: 'center' });
    first?.focus({ preventScroll: true });
  });
  return (
    <form
      ref={at}
      noValidate
      onSubmit={e => {
        e.preventDefault();
        pressed.current = true;
        void writing.press();
      }}
    >
      {children}
      <Refused problems={writing.rest} />
      <div class="answers">
        <button type="submit" class="button main big full" disabled={writing.busy}>
          {writing.busy ? trackWords.writing : writing.asksAgain ? trackWords.itIsSoRecord : button}
        </button>
        {beside}
      </div>
    </form>
  );
}
