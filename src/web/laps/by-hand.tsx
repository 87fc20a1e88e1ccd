/** Laps read off a stopwatch: typed one after the other, shown as they were understood, and written into the book. */
import { useState } from 'preact/hooks';
import { handTimedLaps } from '../../laps/index.ts';
import { useBeingWritten, useKept } from '../kept.ts';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { eventNow } from '../track/now.ts';
import { lapsCount, lapText, problemText, within } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import { intoBook, type LapsWritten } from './into-book.ts';
import { SessionForm } from './session-form.tsx';

const SLOT = 'laps by hand';

export function Stopwatch(props: {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly onWritten: (written: LapsWritten) => void;
}) {
  const { snapshot, session, keep, onWritten } = props;
  const slot = `${SLOT} ${snapshot.kart.name}`;
  const { text, now, put, written, stands, id } = useKept(keep, slot);
  const [isOpen, setOpen] = useState(text !== '');
  const [isSent, isWritten] = useBeingWritten(session);
  const read = handTimedLaps(text);
  const laps = read.flatMap(each => (each.kind === 'lap' ? [each] : []));
  const wrong = read.flatMap(each => (each.kind === 'no lap' ? [each] : []));
  const event = eventNow(snapshot);
  const seconds = laps.reduce((sum, { time }) => sum + time, 0);
  const likely = {
    ...(laps.length > 0 && { minutes: String(Math.max(1, Math.round(seconds / 60))) }),
    ...(event && { event: event.event }),
    ...(event?.track && { track: event.track }),
  };
  return (
    <details class="group no-print" open={isOpen} onToggle={e => setOpen(e.currentTarget.open)}>
      <summary>
        <h2>{lapsWords.timesOfStopwatch}</h2>
      </summary>
      <div class="entry-field">
        <label for="hand-times">{lapsWords.lapTimesInOrderThey}</label>
        <textarea
          id="hand-times"
          rows={4}
          autocomplete="off"
          placeholder="52.31 52.08 1:02.5"
          aria-describedby="hand-times-hint"
          readOnly={isSent}
          value={text}
          onInput={e => put(e.currentTarget.value)}
        />
        <p class="soft" id="hand-times-hint">
          {lapsWords.oneUnderOther}
        </p>
        <Refused
          problems={wrong.map(({ text: got, expected, remedy }) => ({
            code: 'wrong shape',
            where: `times ${got}`,
            ...problemText({ expected, got: `“${got}”`, remedy }),
          }))}
        />
        {laps[0] && (
          <p aria-live="polite">
            <b>{lapsCount(laps.length)}:</b> {laps.map(({ time, spread }) => lapText(time, spread)).join(' · ')}{' '}
            <span class="soft">{lapsWords.sEachForThumb(within(laps[0].spread))}</span>
          </p>
        )}
      </div>
      {laps.length > 0 && wrong.length === 0 && (
        <SessionForm
          form="hand"
          of={lapsWords.fromStopwatch}
          {...{ snapshot, session, keep, likely, onWritten }}
          beside={[text]}
          stands={stands}
          button={lapsWords.writeIntoBook(lapsCount(laps.length))}
          send={(said, sure) =>
            isWritten(
              intoBook(
                session,
                (book, kart) =>
                  book.lapsByHand(kart, text, { by: keep.get('name'), ...said, ...(sure && { sure }), id: id() }),
                () => {
                  written(text);
                  setOpen(now() !== '');
                },
              ),
            )
          }
        />
      )}
    </details>
  );
}
