/** One session on one page: laps, conditions, tyres, set-up and what changed since the session before. */
import './printed.css';
import { useMemo } from 'preact/hooks';
import { type SessionSheet, sessionSheetOf } from '../../app/index.ts';
import { isComparable } from '../../laps/index.ts';
import { type Outing, setupSheet } from '../../prep/index.ts';
import { Cell, PrintTitle, Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { dateOf, spanOf, timeOf } from '../words.ts';
import { useOwn } from './own.ts';
import { Changed, Conditions, Laps, Notes, SetUp, Tyres } from './session-parts.tsx';
import type { LapsProps } from './sheet.tsx';
import { lapText, middleOf } from './words.ts';

/** @param run the fact of the run */
export const sessionHash = (run: string): string => hashOf({ sheet: 'laps', about: `session/${run}` });

export function SessionPage(props: LapsProps) {
  const { snapshot, page } = props;
  const outings = useMemo(() => outingsOf(snapshot), [snapshot]);
  const named = page?.split('/')[1];
  const run = named ?? outings[0]?.fact;
  const { answer, problems } = useOwn(
    props,
    async (own, kart) => (run === undefined ? undefined : sessionSheetOf(own, kart, { session: run })),
    run,
  );
  if (outings.length === 0)
    return <p class="note">Nothing has run yet. Bring in laps, or write down a run: then its session stands here.</p>;
  return (
    <>
      <div class="page-picks no-print">
        <div class="entry-field">
          <label for="which-session">Which session</label>
          <select
            id="which-session"
            class="field"
            value={run}
            onChange={e => {
              location.hash = sessionHash(e.currentTarget.value);
            }}
          >
            {outings.map(({ fact, label, at }) => (
              <option key={fact} value={fact}>
                {label}, {dateOf(at)}, {timeOf(at)}
              </option>
            ))}
          </select>
        </div>
        <button type="button" class="button plain" onClick={() => window.print()}>
          Print it
        </button>
      </div>
      <Refused problems={problems} />
      {answer && <OnePage sheet={answer} />}
    </>
  );
}

function OnePage({ sheet }: { readonly sheet: SessionSheet }) {
  const { kart, invented, session, laps } = sheet;
  const best = laps?.best ?? null;
  const middle = middleOf((laps?.times ?? []).filter(isComparable).map(({ time }) => time));
  return (
    <>
      <PrintTitle title="Session sheet" kart={kart} event={session.label} invented={invented} />
      <section class="group" aria-label="The session in short">
        <h2 class="no-print">
          {session.label} {invented && <span>invented</span>}
        </h2>
        <div class="cells">
          <Cell label="When">
            {dateOf(session.at)}, {timeOf(session.at)}
          </Cell>
          <Cell label="Track">{session.track ?? 'not known'}</Cell>
          <Cell label="Surface">{session.wet ? 'wet' : 'dry'}</Cell>
          <Cell label="Engine ran">{spanOf(session.minutes)}</Cell>
          <Cell label="Laps">{session.laps ?? laps?.laps ?? 'not known'}</Cell>
          <Cell label="Best lap">{best ? `${lapText(best.time, best.spread)} s` : 'not known'}</Cell>
          <Cell label="Middle lap">{Number.isFinite(middle) ? `${lapText(middle, best?.spread)} s` : 'not known'}</Cell>
        </div>
      </section>
      <div class="session-page">
        <Laps sheet={sheet} />
        <div>
          <Conditions sheet={sheet} />
          <Tyres sheet={sheet} />
          <Changed sheet={sheet} />
        </div>
      </div>
      <SetUp sheet={sheet} />
      <Notes sheet={sheet} />
    </>
  );
}

/** Every run of the record, with laps or without, the newest first. */
const outingsOf = ({ kart, facts }: Snapshot): readonly Outing[] =>
  setupSheet(
    kart,
    facts.map(({ fact }) => fact),
  ).sessions.toReversed();
