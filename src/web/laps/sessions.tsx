/** The sessions that have laps, the newest first, each with its best, its middle lap and its laps one by one. */
import { useState } from 'preact/hooks';
import { isComparable, type LapSession, lapSessions, type SessionLap } from '../../laps/index.ts';
import type { Snapshot } from '../session.ts';
import { lapsPagesWords } from '../words/laps/printed.ts';
import { lapsCount, lapText, middleOf, nameOf, remarksOn, within } from '../words/laps/reads.ts';
import { capital, dateOf, spanOf, timeOf } from '../words/reads.ts';
import { sessionHash } from './session-page.tsx';

const PAGE = 20;

export function Sessions({ snapshot }: { readonly snapshot: Snapshot }) {
  const [shown, setShown] = useState(PAGE);
  const sessions = lapSessions(snapshot.facts.map(({ fact }) => fact)).toReversed();
  return (
    <section class="group" aria-label={lapsPagesWords.sessionsWithLaps}>
      <h2>
        {lapsPagesWords.sessionsWithLaps}{' '}
        <span>{sessions.length === 0 ? lapsPagesWords.noneYet : sessions.length}</span>
      </h2>
      {sessions.slice(0, shown).map(session => (
        <OneSession key={session.fact} session={session} />
      ))}
      {sessions.length > shown && (
        <button type="button" class="button plain wide" onClick={() => setShown(shown + 4 * PAGE)}>
          {lapsPagesWords.showOlderSessions}
        </button>
      )}
    </section>
  );
}

function OneSession({ session }: { readonly session: LapSession }) {
  const { at, track, laps, best, minutes, wet, times, timed, run, fact } = session;
  const usual = middleOf(times.filter(isComparable).map(({ time }) => time));
  const where = [dateOf(at), timeOf(at), track, wet ? 'wet' : undefined].filter(Boolean).join(', ');
  return (
    <details class="group">
      <summary>
        <h2>
          {nameOf(session)} <span>{best ? lapText(best.time, best.spread) : lapsCount(laps)}</span>
        </h2>
      </summary>
      <p class="soft">
        {where}: {lapsCount(laps)}
        {minutes === null ? '' : `, ${spanOf(minutes)}`}
        {Number.isFinite(usual) ? lapsPagesWords.andMiddleLap(lapText(usual, best?.spread)) : ''}
        {timed === 'by hand' ? lapsPagesWords.alsoTimedByHand : ''}.
      </p>
      {times.length > 0 && (
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">{lapsPagesWords.lap}</th>
              <th scope="col">{lapsPagesWords.time}</th>
            </tr>
          </thead>
          <tbody>
            {times.map((lap, n) => (
              <Row key={lap.number ?? `way ${n}`} lap={lap} best={best} />
            ))}
          </tbody>
        </table>
      )}
      <a class="button plain wide" href={sessionHash(run ?? fact)}>
        {lapsPagesWords.sessionOnOnePage}
      </a>
    </details>
  );
}

function Row({ lap, best }: { readonly lap: SessionLap; readonly best: SessionLap | null }) {
  const flags = remarksOn(lap, best);
  return (
    <tr class={lap.way ? 'soft' : ''}>
      <th scope="row">{lap.number ?? lapsPagesWords.way(lap.way)}</th>
      <td>
        {lapText(lap.time, lap.spread)} <span class="soft">{within(lap.spread)}</span>
        {flags !== '' && <small>{capital(flags)}</small>}
      </td>
    </tr>
  );
}
