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
const SCREENFUL = 8;
const BITE = 16;

/**
 * Once what is asked for by now stands on the screen and no thumb is waiting; a hidden page paints nothing, and does not wait for it.
 * Returns the way to stop it.
 */
export function afterPaint(work: () => void): () => void {
  let stop: () => void;
  if (document.visibilityState === 'hidden') stop = soon(work);
  else {
    const frame = requestAnimationFrame(() => {
      stop = whenIdle(work);
    });
    stop = () => cancelAnimationFrame(frame);
  }
  return () => stop();
}

function soon(work: () => void): () => void {
  const timer = setTimeout(work);
  return () => clearTimeout(timer);
}

/** Not every browser tells when it is idle. */
function whenIdle(work: () => void): () => void {
  if (!('requestIdleCallback' in window)) return soon(work);
  const asked = requestIdleCallback(work, { timeout: LONGEST_MS });
  return () => cancelIdleCallback(asked);
}
const LONGEST_MS = 100;
