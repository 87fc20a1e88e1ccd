/** One form with one button: a press of its own records what was asked about as it was said. */
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
        void writing.press(false);
      }}
    >
      {children}
      <Refused problems={writing.rest} />
      <div class="answers">
        {writing.asksAgain && !writing.busy ? (
          // Of its own: a key that is held down after a press must not say it once more.
          <button
            key="again"
            type="button"
            class="button main big full"
            onClick={() => {
              pressed();
              void writing.press(true);
            }}
          >
            {trackWords.itIsSoRecord}
          </button>
        ) : (
          <button key="press" type="submit" class="button main big full" disabled={writing.busy}>
            {writing.busy ? trackWords.writing : button}
          </button>
        )}
        {beside}
      </div>
    </form>
  );
}
