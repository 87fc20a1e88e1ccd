import { useEffect, useState } from 'preact/hooks';
import { Refused } from '../parts.tsx';
import type { Setup as SetupPage, SetupProps } from '../setup/sheet.tsx';

type Loaded = { readonly Page?: typeof SetupPage; readonly failed?: string };

/** Fetched when somebody wants it: the bench page opens without it. */
export function Setup(props: SetupProps) {
  const [{ Page, failed }, setLoaded] = useState<Loaded>({});
  useEffect(() => {
    import('../setup/sheet.tsx').then(
      loaded => setLoaded({ Page: loaded.Setup }),
      (error: unknown) => setLoaded({ failed: error instanceof Error ? error.message : String(error) }),
    );
  }, []);
  if (failed !== undefined)
    return (
      <Refused
        problems={[
          {
            code: 'book',
            where: 'set-up',
            message: `The set-up sheet could not be fetched: ${failed}.`,
            remedy: 'See that the server still runs, then load the page again.',
          },
        ]}
      />
    );
  if (Page === undefined) return <p class="loading">Fetching the set-up sheet …</p>;
  return <Page {...props} />;
}
