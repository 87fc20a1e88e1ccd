/** At the track: before a session air in and the numbers of the day out; after it, everything that was read. */
import '../numbers/numbers.css';
import '../numbers/plates/plates.css';
import './track.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { hashOf } from '../place.ts';
import { dateOf, timeOf } from '../words/reads.ts';
import { trackWords } from '../words/track.tsx';
import { AfterForm } from './after-form.tsx';
import { Before } from './before.tsx';
import { eventNow, lastRan, likelyRan, type TrackProps } from './now.ts';
import { LastWritten } from './written.tsx';

const SIDE = 'track side';

export function Track(props: TrackProps) {
  const { snapshot, session, keep } = props;
  const [side, setSide] = useState(keep.get(SIDE) === 'after' ? 'after' : 'before');
  const [written, setWritten] = useState(0);
  const said = useRef<HTMLParagraphElement>(null);
  const event = eventNow(snapshot);
  const last = lastRan(snapshot);
  const go = (next: 'before' | 'after'): void => {
    keep.set(SIDE, next);
    setSide(next);
  };
  const onWritten = (): void => setWritten(n => n + 1);
  useEffect(() => {
    const isElsewhere = document.activeElement?.matches('main input, main textarea, main select');
    if (written > 0 && !isElsewhere) said.current?.focus();
  }, [written]);
  return (
    <>
      <h1 class="no-print">{trackWords.atTrack}</h1>
      <p class="soft no-print" ref={said} tabIndex={-1}>
        {trackWords.makersManualAndClass(
          last
            ? trackWords.lastOnTrack(dateOf(last.at), timeOf(last.at), last.session ? `, ${last.session}` : '')
            : trackWords.recordHoldsNoSession,
        )}
      </p>
      <div class="answers no-print sides">
        <button
          type="button"
          class={`button ${side === 'before' ? 'main' : ''}`}
          aria-pressed={side === 'before'}
          onClick={() => go('before')}
        >
          {trackWords.before}
        </button>
        <button
          type="button"
          class={`button ${side === 'after' ? 'main' : ''}`}
          aria-pressed={side === 'after'}
          onClick={() => go('after')}
        >
          {trackWords.after}
        </button>
      </div>
      <a class="button wide no-print head-gap" href={hashOf({ sheet: 'laps' })}>
        {trackWords.lapsLogsCompareDid}
      </a>
      <div class="head-gap no-print">
        <LastWritten {...props} />
      </div>
      {side === 'before' ? (
        <Before {...props} event={event} onWritten={onWritten} />
      ) : (
        <AfterForm
          snapshot={snapshot}
          session={session}
          keep={keep}
          likely={likelyRan(snapshot, keep)}
          onWritten={() => {
            onWritten();
            go('before');
          }}
        />
      )}
    </>
  );
}
