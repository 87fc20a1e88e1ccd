import { useEffect } from 'preact/hooks';

/** The screen stays on while a step is shown, where the browser can and the battery lets it; elsewhere it goes dark as ever. */
export function useAwake(shown: boolean): void {
  useEffect(() => {
    const { wakeLock } = navigator as { readonly wakeLock?: WakeLock };
    if (!shown || wakeLock === undefined) return;
    let held: WakeLockSentinel | undefined;
    let left = false;
    const hold = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      held = await wakeLock.request('screen').catch(() => undefined); // a low battery may refuse
      if (left) void held?.release();
    };
    const again = (): void => void hold(); // the browser lets go when the page is hidden
    void hold();
    document.addEventListener('visibilitychange', again);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', again);
      void held?.release();
    };
  }, [shown]);
}
