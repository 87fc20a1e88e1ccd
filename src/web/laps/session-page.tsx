/** One session on one page: laps, conditions, tyres, set-up and what changed since the session before. */
import './printed.css';
import { useMemo } from 'preact/hooks';
import { outingsOf, type SessionSheet, sessionSheetOf } from '../../app/index.ts';
import { isComparable } from '../../laps/index.ts';
import type { Outing } from '../../prep/index.ts';
import { Cell, PrintSign, PrintTitle, Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Snapshot } from '../session.ts';
import { lapsPagesWords } from '../words/laps/printed.ts';
import { lapText, middleOf, nameOf } from '../words/laps/reads.ts';
import { dateOf, spanOf, timeOf } from '../words/reads.ts';
import { useOwn } from './own.ts';
import { Changed, Conditions, Laps, Notes, SetUp, Tyres } from './session-parts.tsx';
import type { LapsProps } from './sheet.tsx';

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
  if (outings.length === 0) return <p class="note">{lapsPagesWords.nothingHasRunYetBring}</p>;
  return (
    <>
      <div class="page-picks no-print">
        <div class="entry-field">
          <label for="which-session">{lapsPagesWords.whichSession}</label>
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
          {lapsPagesWords.print}
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
    <div class="laps-paper">
      <PrintTitle title={lapsPagesWords.sessionSheet} kart={kart} event={nameOf(session)} invented={invented} />
      <section class="group" aria-label={lapsPagesWords.sessionInShort}>
        <h2 class="no-print">
          {nameOf(session)} {invented && <span>{lapsPagesWords.invented}</span>}
        </h2>
        <div class="cells">
          <Cell label={lapsPagesWords.when}>
            {dateOf(session.at)}, {timeOf(session.at)}
          </Cell>
          <Cell label={lapsPagesWords.track}>{session.track ?? lapsPagesWords.notKnown}</Cell>
          <Cell label={lapsPagesWords.surface}>{session.wet ? lapsPagesWords.wet : lapsPagesWords.dry}</Cell>
          <Cell label={lapsPagesWords.engineRan}>{ran ? spanOf(session.minutes) : lapsPagesWords.notWrittenDown}</Cell>
          <Cell label={lapsPagesWords.laps}>{session.laps ?? laps?.laps ?? lapsPagesWords.notKnown}</Cell>
          <Cell label={lapsPagesWords.bestLap}>
            {best ? `${lapText(best.time, best.spread)} s` : lapsPagesWords.notKnown}
          </Cell>
          <Cell label={lapsPagesWords.middleLap}>
            {Number.isFinite(middle) ? `${lapText(middle, best?.spread)} s` : lapsPagesWords.notKnown}
          </Cell>
        </div>
      </section>
      <div class="session-page">
        <Laps sheet={sheet} />
        <Conditions sheet={sheet} />
        <Tyres sheet={sheet} />
        <Changed sheet={sheet} />
      </div>
      <SetUp sheet={sheet} />
      <Notes sheet={sheet} />
      <PrintSign who={lapsPagesWords.signatureOfWhoDrove} />
    </div>
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
