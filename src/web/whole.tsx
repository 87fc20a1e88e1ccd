/** A sheet that needs every entry of the record, not only the newest; it goes on showing what it had until they are here. */
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Session, Snapshot } from './session.ts';
import { pageWords } from './words/page.ts';

export function Whole(props: {
  readonly session: Session;
  readonly snapshot: Snapshot;
  readonly children: (whole: Snapshot) => ComponentChildren;
}) {
  const { session, snapshot, children } = props;
  const isWhole = snapshot.facts.length === snapshot.entries;
  const [known, setKnown] = useState<Snapshot>();
  useEffect(() => {
    if (isWhole) return setKnown(snapshot);
    let mine = true;
    session.ask.whole().then(
      facts => mine && setKnown({ ...snapshot, facts, entries: facts.length }),
      () => undefined, // what stands against it is said above every sheet
    );
    return () => {
      mine = false;
    };
  }, [session, snapshot]);
  const shown = isWhole ? snapshot : known;
  if (shown === undefined || shown.kart.name !== snapshot.kart.name)
    return <p class="loading">{pageWords.readingBook}</p>;
  return <>{children(shown)}</>;
}
