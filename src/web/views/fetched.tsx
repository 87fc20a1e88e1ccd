import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Refused } from '../parts.tsx';
import { pageWords } from '../words/page.ts';

type Loaded<P> = { readonly Sheet?: ComponentType<P>; readonly failed?: string };

/** A sheet that is fetched when somebody wants it, so that the bench page opens without it; says what to do when it cannot be. */
export function fetched<P extends object>(where: string, what: string, load: () => Promise<ComponentType<P>>) {
  return function Fetched(props: P) {
    const [{ Sheet, failed }, setLoaded] = useState<Loaded<P>>({});
    useEffect(() => {
      load().then(
        sheet => setLoaded({ Sheet: sheet }),
        (error: unknown) => setLoaded({ failed: error instanceof Error ? error.message : String(error) }),
      );
    }, []);
    if (failed !== undefined)
      return (
        <Refused
          problems={[
            {
              code: 'book',
              where,
              message: pageWords.couldNotBeFetched(what, failed),
              remedy: pageWords.seeThatServerStillRuns,
            },
          ]}
        />
      );
    if (Sheet === undefined) return <p class="loading">{pageWords.fetchingThe(what)}</p>;
    return <Sheet {...props} />;
  };
}
