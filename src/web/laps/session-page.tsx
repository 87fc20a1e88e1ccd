/** One session on one page: laps, conditions, tyres, set-up and what changed since the session before. */
import './printed.css';
import { useMemo } from 'preact/hooks';
import { outingsOf, type SessionSheet, sessionSheetOf } from '../../app/index.ts';
import { isComparable } from '../../laps/index.ts';
import type { Outing } from '../../prep/index.ts';
import { Cell, PrintSign, PrintTitle, Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { dateOf, spanOf, timeOf } from '../words.ts';
import { useOwn } from './own.ts';
import { Changed, Conditions, Laps, Notes, SetUp, Tyres } from './session-parts.tsx';
import type { LapsProps } from './sheet.tsx';
import { lapText, middleOf, nameOf } from './words.ts';

/** @param run the fact of the run, or of laps that have none */
export const sessionHash = (run: string): string => hashOf({ sheet: 'laps', about: `session/${run}` });

export function SessionPage(props: LapsProps) {
  const { snapshot, page } = props;
  const outings = useMemo(() => listOf(snapshot), [snapshot]);
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
            {outings.map(one => (
              <option key={one.fact} value={one.fact}>
                {nameOf(one)}, {dateOf(one.at)}, {timeOf(one.at)}
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
  const { kart, invented, session, ran, laps } = sheet;
  const best = laps?.best ?? null;
  const middle = middleOf((laps?.times ?? []).filter(isComparable).map(({ time }) => time));
  return (
    <>
      <PrintTitle title="Session sheet" kart={kart} event={nameOf(session)} invented={invented} />
      <section class="group" aria-label="The session in short">
        <h2 class="no-print">
          {nameOf(session)} {invented && <span>invented</span>}
        </h2>
        <div class="cells">
          <Cell label="When">
            {dateOf(session.at)}, {timeOf(session.at)}
          </Cell>
          <Cell label="Track">{session.track ?? 'not known'}</Cell>
          <Cell label="Surface">{session.wet ? 'wet' : 'dry'}</Cell>
          <Cell label="Engine ran">{ran ? spanOf(session.minutes) : 'not written down'}</Cell>
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
      <PrintSign who="Signature of who drove" />
    </>
  );
}

/** Every session of the record, the newest first. */
const listOf = ({ kart, facts }: Snapshot): readonly Outing[] =>
  outingsOf(
    kart,
    facts.flatMap(({ fact, struck }) => (struck === null ? [fact] : [])),
  )
    .map(({ outing }) => outing)
    .toReversed();
