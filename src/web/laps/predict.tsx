/** What a lap should take on the track of a kept log: asked, watched while it is worked out, and stopped. */
import { useMemo, useState } from 'preact/hooks';
import { type LapSession, lapSessions } from '../../laps/index.ts';
import { PrintTitle, Refused } from '../parts.tsx';
import type { Snapshot } from '../session.ts';
import { Predicted } from './predicted.tsx';
import { type PredictAsk, usePredicting } from './predicting.ts';
import type { LapsProps } from './sheet.tsx';
import { choiceOf, nameOf } from './words.ts';

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
        title="A lap predicted"
        kart={snapshot.kart.name}
        event={session ? nameOf(session) : null}
        invented={snapshot.kart.invented}
      />
      {session === undefined ? (
        <p class="note">
          The book keeps no log with a full lap yet. Bring one in: its laps are the track, and say what the kart holds.
        </p>
      ) : (
        <>
          <div class="compare-picks no-print">
            <div class="entry-field">
              <label for="predict-session">Track and kart from the log of</label>
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
            </div>
            <div class="entry-field">
              <label for="predict-gearing">Teeth that were on, front/rear</label>
              <input
                id="predict-gearing"
                class="field"
                value={typed}
                placeholder="as in the book"
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
              <label for="predict-box">Sprockets in the box</label>
              <input
                id="predict-box"
                class="field"
                defaultValue={box}
                placeholder={boxOf(snapshot) || 'behind: 21, 22, 23'}
                aria-describedby="predict-box-how"
                autocomplete="off"
                onChange={e => {
                  const text = e.currentTarget.value.trim();
                  keep.set(`${slot} box`, text);
                  setBox(text);
                }}
              />
              <p id="predict-box-how" class="soft">
                Teeth behind, or in front / behind. Left empty: as the kart file has them.
              </p>
            </div>
          </div>
          {(heard?.kind === 'reading' || heard?.kind === 'trying') && (
            <div class="predict-wait no-print" role="status">
              {heard.kind === 'reading' ? (
                <p>Reading the log …</p>
              ) : (
                <p>
                  Trying sprockets: {heard.done} of {heard.of} pairs
                  <progress value={heard.done} max={heard.of} aria-label="Pairs tried so far" />
                </p>
              )}
              <button type="button" class="button" onClick={cancel}>
                Cancel
              </button>
            </div>
          )}
          {heard?.kind === 'cancelled' && (
            <div class="predict-wait no-print">
              <p>Cancelled. Nothing of it was kept.</p>
              <button type="button" class="button" onClick={again}>
                Predict again
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
