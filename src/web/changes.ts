/** A part of the page that follows what changes by itself. */
import { useLayoutEffect, useState } from 'preact/hooks';

type Changing = { onChange(listener: () => void): () => void };

/**
 * Draws it anew whenever one of these changes. Heard from the moment it is drawn: an effect is run only after the paint, and what
 * changed before that would be seen no sooner than the next change comes.
 */
export function useChanges(...all: readonly Changing[]): void {
  const [, redraw] = useState(0);
  useLayoutEffect(() => {
    const stops = all.map(one => one.onChange(() => redraw(n => n + 1)));
    return () => {
      for (const stop of stops) stop();
    };
  }, all);
}
