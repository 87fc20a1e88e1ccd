/** What changes of the set-up are said to do, as shipped beside the page. */
import { useEffect, useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { readSetupEffects, type SetupEffects } from '../../prep/index.ts';
import { setupWords } from '../words/setup.tsx';

const FILE = new URL('../../../data/setup-effects.yaml', import.meta.url);

export type Effects = { readonly effects?: SetupEffects; readonly problems: readonly Problem[] };

/** Empty until it came; the settings themselves do not wait for it. */
export function useSetupEffects(): Effects {
  const [got, setGot] = useState<Effects>({ problems: [] });
  useEffect(() => {
    fetchEffects().then(
      effects => setGot({ effects, problems: [] }),
      (error: unknown) => setGot({ problems: [notFetched(error)] }),
    );
  }, []);
  return got;
}

async function fetchEffects(): Promise<SetupEffects> {
  const response = await fetch(FILE);
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return readSetupEffects(await response.text());
}

const notFetched = (error: unknown): Problem => ({
  code: 'book',
  where: 'set-up',
  message: setupWords.whatIsSaidOfChanges(error instanceof Error ? error.message : String(error)),
  remedy: setupWords.settingsBelowAreWhole,
});
