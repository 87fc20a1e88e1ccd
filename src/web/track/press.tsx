/** One form with one button: the second press records what was asked about as it was said. */
import type { ComponentChildren } from 'preact';
import { Refused } from '../parts.tsx';
import { useToRefused } from '../to-refused.ts';
import { trackWords } from '../words/track.tsx';
import type { useWriting } from './writing.ts';

export function Press(props: {
  readonly writing: ReturnType<typeof useWriting>;
  readonly button: string;
  readonly children: ComponentChildren;
  readonly beside?: ComponentChildren; // further buttons
}) {
  const { writing, button, children, beside } = props;
  const { form, pressed } = useToRefused(writing.busy);
  return (
    <form
      ref={form}
      inert={writing.isSent}
      noValidate
      onSubmit={e => {
        e.preventDefault();
        pressed();
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
