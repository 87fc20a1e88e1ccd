import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Refused } from '../parts.tsx';

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
              message: `The ${what} could not be fetched: ${failed}.`,
              remedy: 'See that the server still runs, then load the page again.',
            },
          ]}
        />
      );
    if (Sheet === undefined) return <p class="loading">Fetching the {what} …</p>;
    return <Sheet {...props} />;
  };
}
