/** Laps: what came in, and what can be asked of it, each on a page of its own. */
import '../numbers/plates/plates.css';
import '../track/track.css';
import './laps.css';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import { Compare } from './compare.tsx';
import { Helped } from './helped.tsx';
import { Incoming } from './incoming.tsx';
import { Predict } from './predict.tsx';
import { SeasonPage } from './season-page.tsx';
import { SessionPage } from './session-page.tsx';

export type LapsProps = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly page: string | undefined;
};

/** By the word in the address, before which session it is; the first is where laps come in. */
const PAGES = [
  ['', lapsWords.sessions, Incoming],
  ['compare', lapsWords.compare, Compare],
  ['helped', lapsWords.didItHelp, Helped],
  ['predict', lapsWords.predict, Predict],
  ['session', lapsWords.sessionSheet, SessionPage],
  ['season', lapsWords.season, SeasonPage],
] as const;

export function LapsSheet(props: LapsProps) {
  const [at, , Page] = PAGES.find(([name]) => name === props.page?.split('/')[0]) ?? PAGES[0];
  return (
    <>
      <h1 class="no-print">{lapsWords.laps}</h1>
      <nav class="tiles no-print lap-pages" aria-label={lapsWords.pagesOfLaps}>
        {PAGES.map(([name, text]) => (
          <a
            key={name}
            class={`button ${name === at ? 'main' : 'plain'}`}
            aria-current={name === at ? 'page' : undefined}
            href={hashOf({ sheet: 'laps', ...(name !== '' && { about: name }) })}
          >
            {text}
          </a>
        ))}
      </nav>
      <Page {...props} />
    </>
  );
}
