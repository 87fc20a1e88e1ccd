/** What a lap should take on the track of a kept log: asked, watched while it is worked out, and stopped. */
import { useMemo, useState } from 'preact/hooks';
import { type LapSession, lapSessions } from '../../laps/index.ts';
import { PrintTitle, Refused } from '../parts.tsx';
import type { Snapshot } from '../session.ts';
import { predictWords } from '../words/laps/predict.ts';
import { choiceOf, nameOf } from '../words/laps/reads.ts';
import { Predicted } from './predicted.tsx';
import { type PredictAsk, usePredicting } from './predicting.ts';
import type { LapsProps } from './sheet.tsx';
import { WholeName } from './whole-name.tsx';

export function Predict({ snapshot, session: device, keep }: LapsProps) {
  const slot = `predict ${snapshot.kart.name}`;
  const sessions = useMemo(() => sessionsWithLog(snapshot), [snapshot]);
  const [chosen, setChosen] = useState(keep.get(slot));
  // What is typed stands while the answer comes in; it is asked when the person is done with it.
  const [typed, setTyped] = useState(keep.get(`${slot} gearing`));
  const [gearing, setGearing] = useState(typed);
  const [box, setBox] = useState(keep.get(`${slot} box`));
  const session = sessions.find(({ fact }) => fact === chosen) ?? sessions[0];
  const ask = useMemo(() => session && askOf(snapshot, session, { gearing, box }), [snapshot, session, gearing, box]);
  const { heard, cancel, again } = usePredicting(device, ask);
  return (
    <>
      <PrintTitle
        title={predictWords.lapPredicted}
        kart={snapshot.kart.name}
        event={session ? nameOf(session) : null}
        invented={snapshot.kart.invented}
      />
      {session === undefined ? (
        <p class="note">{predictWords.bookKeepsNoLog}</p>
      ) : (
        <>
          <div class="compare-picks no-print">
            <div class="entry-field">
              <label for="predict-session">{predictWords.trackAndKartFromLog}</label>
              <select
                id="predict-session"
                class="field"
                value={session.fact}
                onChange={e => {
                  keep.set(slot, e.currentTarget.value);
                  setChosen(e.currentTarget.value);
                }}
              >
                {sessions.map(one => (
                  <option key={one.fact} value={one.fact}>
                    {choiceOf(one)}
                  </option>
                ))}
              </select>
              <WholeName text={choiceOf(session)} />
            </div>
            <div class="entry-field">
              <label for="predict-gearing">{predictWords.teethThatWereOnFront}</label>
              <input
                id="predict-gearing"
                class="field"
                value={typed}
                placeholder={predictWords.asInBook}
                autocomplete="off"
                autocapitalize="off"
                onInput={e => setTyped(e.currentTarget.value)}
                onChange={e => {
                  const text = e.currentTarget.value.trim();
                  keep.set(`${slot} gearing`, text);
                  setGearing(text);
                }}
              />
            </div>
            <div class="entry-field">
              <label for="predict-box">{predictWords.sprocketsInBox}</label>
              <input
                id="predict-box"
                class="field"
                defaultValue={box}
                placeholder={boxOf(snapshot) || predictWords.behind}
                aria-describedby="predict-box-how"
                autocomplete="off"
                onChange={e => {
                  const text = e.currentTarget.value.trim();
                  keep.set(`${slot} box`, text);
                  setBox(text);
                }}
              />
              <p id="predict-box-how" class="soft">
                {predictWords.teethBehindOrInFront}
              </p>
            </div>
          </div>
          {(heard?.kind === 'reading' || heard?.kind === 'trying') && (
            <div class="predict-wait no-print" role="status">
              {heard.kind === 'reading' ? (
                <p>{predictWords.readingLog}</p>
              ) : (
                <p>
                  {predictWords.tryingSprocketsOfPairs(heard.done, heard.of)}
                  <progress value={heard.done} max={heard.of} aria-label={predictWords.pairsTriedSoFar} />
                </p>
              )}
              <button type="button" class="button" onClick={cancel}>
                {predictWords.cancel}
              </button>
            </div>
          )}
          {heard?.kind === 'cancelled' && (
            <div class="predict-wait no-print">
              <p>{predictWords.cancelledNothing}</p>
              <button type="button" class="button" onClick={again}>
                {predictWords.predictAgain}
              </button>
            </div>
          )}
          {heard?.kind === 'refused' && <Refused problems={heard.problems} />}
          {heard?.kind === 'predicted' && <Predicted of={heard.answer} />}
        </>
      )}
    </>
  );
}

/** Newest first: those whose log the book keeps. */
function sessionsWithLog({ facts }: Snapshot): readonly LapSession[] {
  return lapSessions(facts.map(({ fact }) => fact))
    .filter(({ file, fileKept, gates, laps }) => file !== null && fileKept && gates.length > 0 && laps > 0)
    .toReversed();
}

function askOf(
  { kart, facts }: Snapshot,
  session: LapSession,
  { gearing, box }: { readonly gearing: string; readonly box: string },
): PredictAsk {
  const counted = facts.flatMap(({ fact, struck }) => (struck === null ? [fact] : [])).toReversed();
  return { kart, facts: counted, session, ...(gearing !== '' && { gearing }), ...(box !== '' && { box }) };
}

const boxOf = ({ kart: { box } }: Snapshot): string =>
  [box?.frontSprockets ?? [], box?.rearSprockets ?? []]
    .filter(teeth => teeth.length > 0)
    .map(teeth => teeth.join(', '))
    .join(' / ');
