import { useEffect, useState } from 'preact/hooks';
import type { NumbersSheet, SheetProps } from '../numbers/sheet.tsx';
import { Refused } from '../parts.tsx';

type Loaded = { readonly Sheet?: typeof NumbersSheet; readonly failed?: string };

/** Fetched when somebody wants it: the bench page opens without it. */
export function Numbers(props: SheetProps) {
  const [{ Sheet, failed }, setLoaded] = useState<Loaded>({});
  useEffect(() => {
    import('../numbers/sheet.tsx').then(
      loaded => setLoaded({ Sheet: loaded.NumbersSheet }),
      (error: unknown) => setLoaded({ failed: error instanceof Error ? error.message : String(error) }),
    );
  }, []);
  if (failed !== undefined)
    return (
      <Refused
        problems={[
          {
            code: 'book',
            where: 'numbers',
            message: `The numbers could not be fetched: ${failed}.`,
            remedy: 'See that the server still runs, then load the page again.',
          },
        ]}
      />
    );
  if (Sheet === undefined) return <p class="loading">Fetching the numbers …</p>;
  return <Sheet {...props} />;
}
