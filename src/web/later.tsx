/** What nobody looks at first: drawn once the rest has been painted. What stood there before stays until then. */
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';

/** @param of it is drawn anew when one of these is another one */
export function Later(props: { readonly of: readonly unknown[]; readonly children: ComponentChildren }) {
  const [drawn, draw] = useState<ComponentChildren>(null);
  useEffect(() => {
    const now = (): void => draw(() => props.children);
    const stop = afterPaint(now);
    window.addEventListener('beforeprint', now);
    return () => {
      stop();
      window.removeEventListener('beforeprint', now);
    };
  }, props.of);
  return <>{drawn}</>;
}

/** What hundreds of rows need not be drawn again for. @param of it is drawn anew when one of these is another one */
export function Still(props: { readonly of: readonly unknown[]; readonly children: ComponentChildren }) {
  return <>{useMemo(() => props.children, props.of)}</>;
}

/** How many of so many rows are drawn by now: a screenful, then bites that no thumb waits for. */
export function useBites(rows: number): number {
  const [drawn, draw] = useState(SCREENFUL);
  useEffect(() => (drawn < rows ? afterPaint(() => draw(drawn + BITE)) : undefined), [drawn, rows]);
  return Math.min(drawn, rows);
}
const SCREENFUL = 12;
const BITE = 24;

/** Once what is asked for by now stands on the screen; a hidden page paints nothing, and does not wait for it. Returns the way to stop it. */
export function afterPaint(work: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const soon = (): void => {
    timer = setTimeout(work);
  };
  if (document.visibilityState === 'hidden') soon();
  const frame = timer === undefined ? requestAnimationFrame(soon) : 0;
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}
