/** Did the change help? The runs of a day with what was on the kart, the answer in words with its interval, and what to drive next. */
import { useMemo, useState } from 'preact/hooks';
import { changesIn, type DayRun, type TestDay, testDays } from '../../app/index.ts';
import { adviceFor, type Effect, effectSay, helped, runSpreadFrom, type TestRun, type Told } from '../../laps/index.ts';
import { Plate } from '../drawing/lines.tsx';
import { ScaleDrawing, scaleHeight } from '../drawing/scale.tsx';
import { PrintTitle } from '../parts.tsx';
import type { Snapshot } from '../session.ts';
import { type Asking, Entry } from '../track/fields.tsx';
import { isProblem, numberSaid, type Typed } from '../track/said.ts';
import { dateOf } from '../words.ts';
import { BeforeTest } from './before-test.tsx';
import { levelsOf } from './levels.ts';
import { RunsPicture } from './runs-picture.tsx';
import type { LapsProps } from './sheet.tsx';
import { lapText, middleOf } from './words.ts';

export function Helped({ snapshot, keep }: LapsProps) {
  const days = useMemo(() => daysOf(snapshot), [snapshot]);
  const slot = `helped day ${snapshot.kart.name}`;
  const [chosen, setChosen] = useState(keep.get(slot));
  const day = days.find(each => keyOf(each) === chosen) ?? days[0];
  const history = useMemo(() => days.filter(each => each !== day).map(({ runs }) => runs), [days, day]);
  const spreads = useMemo(() => spreadsOf(day), [day]);
  return (
    <>
      <PrintTitle
        title="Did it help?"
        kart={snapshot.kart.name}
        event={day ? nameOf(day) : null}
        invented={snapshot.kart.invented}
      />
      {day === undefined ? (
        <p class="note">
          No day in the record has two sessions with lap times yet. Bring in the laps of each session, and write every
          change of the set-up down when it is made: then the laps before and after can be compared.
        </p>
      ) : (
        <>
          {days.length > 1 && (
            <div class="entry-field no-print">
              <label for="helped-day">Which day</label>
              <select
                id="helped-day"
                class="field"
                value={keyOf(day)}
                onChange={e => {
                  keep.set(slot, e.currentTarget.value);
                  setChosen(e.currentTarget.value);
                }}
              >
                {days.map(each => (
                  <option key={keyOf(each)} value={keyOf(each)}>
                    {nameOf(each)}, {each.runs.length} runs
                  </option>
                ))}
              </select>
            </div>
          )}
          <Day key={keyOf(day)} day={day} history={history} />
        </>
      )}
      <BeforeTest key={day && keyOf(day)} seen={spreads} />
    </>
  );
}

/** Newest first; a day with one run tells nothing of a change. */
const daysOf = ({ facts, kart }: Snapshot): readonly TestDay[] =>
  testDays(
    facts.flatMap(({ fact, struck }) => (struck === null ? [fact] : [])),
    kart,
  )
    .filter(({ runs }) => runs.length > 1)
    .toReversed();

const nameOf = ({ day, event, track, wet }: TestDay): string =>
  [event ?? dateOf(`${day}T12:00:00Z`), track, wet ? 'wet' : null].filter(each => each !== null).join(', ');
const keyOf = ({ day, track, wet }: TestDay): string => [day, track, wet].join(' ');

function Day({ day, history }: { readonly day: TestDay; readonly history: readonly (readonly TestRun[])[] }) {
  const [runs, setRuns] = useState(day.runs);
  const [typed, setTyped] = useState<Typed>({ matters: '0.05', worth: '0.10' });
  const changes = changesIn(day);
  const read = (key: string, label: string) => numberSaid(typed, { key, label, unit: 's', dimension: 'time' });
  const [matters, worth] = [read('matters', 'Too small to matter'), read('worth', 'Worth finding')];
  const asking: Asking = {
    form: 'helped',
    typed,
    problemsAt: key => [key === 'matters' ? matters : key === 'worth' ? worth : undefined].filter(isProblem),
    put: (key, text) => setTyped({ ...typed, [key]: text }),
  };
  const told = useMemo(
    () =>
      helped(runs, {
        runSpread: runSpreadFrom(history),
        ...(typeof matters === 'number' && matters > 0 && { matters }),
      }),
    [runs, history, typed.matters],
  );
  const toggle = (at: number, change: string): void =>
    setRuns(runs.map((run, n) => (n === at ? { ...run, on: toggled(run.on, change) } : run)));
  return (
    <>
      <section class="group" aria-label="Answer">
        <h2>
          Did it help? <span>{nameOf(day)}</span>
        </h2>
        {told.kind === 'not told' ? (
          <p class="verdict-words">
            <b>Cannot tell.</b> {told.say}
          </p>
        ) : (
          told.effects.map(effect => (
            <OneEffect
              key={effect.change}
              effect={effect}
              advice={adviceFor(runs, told, effect, typeof worth === 'number' && worth > 0 ? worth : undefined)?.say}
            />
          ))
        )}
        {told.kind === 'told' && <Basis told={told} />}
      </section>
      <div class="two-fields no-print">
        <Entry asking={asking} at="matters" label="Too small to matter" unit="s" />
        <Entry asking={asking} at="worth" label="Worth finding" unit="s" />
      </div>
      <section class="group" aria-label="Runs">
        <h2>
          Runs <span>in the order they were driven</span>
        </h2>
        <figure class="sheet runs-drawn">
          <RunsPicture
            title="The laps of each run, with the level that was fitted. The table says the same."
            runs={runs.map(({ laps }, n) => ({
              name: String(n + 1),
              laps: laps.flatMap(({ time, out, marked }) => (out ? [] : [{ time, counts: !marked }])),
              ...levelOf(levelsOf(runs, told)[n]),
            }))}
          />
        </figure>
        <RunTable runs={runs} changes={changes} onToggle={toggle} />
        <p class="soft">
          What was on the kart is as the set-up in the record had it. Tick otherwise where the record is behind; that
          changes this answer only.
        </p>
      </section>
    </>
  );
}

const levelOf = (level: number | undefined) => (level === undefined ? {} : { level });

function OneEffect({ effect, advice }: { readonly effect: Effect; readonly advice: string | undefined }) {
  const { effect: size, low, high, smallest, change } = effect;
  const reach = Math.max(Math.abs(low), Math.abs(high), smallest, 0.05) * 1.15;
  const scale = {
    low: -reach,
    high: reach,
    above: [
      { at: 0, text: 'no effect' },
      { at: size, text: `${signed(size)} s a lap`, signal: true },
    ],
    bands: [{ from: low, to: high, text: `19 of 20: ${signed(low)} to ${signed(high)} s` }],
  };
  return (
    <div class="effect">
      <p class="verdict-words">
        <b>{effectSay(effect)}</b> {advice}
      </p>
      <Plate height={scaleHeight(scale) + 20} title={`${change}: ${effectSay(effect)}`}>
        <ScaleDrawing scale={scale} top={4} />
      </Plate>
      <p class="soft">
        Left of no effect is faster. Such a test shows an effect of {smallest.toFixed(2)} s 4 times of 5.
      </p>
    </div>
  );
}

const signed = (value: number): string =>
  value
    .toFixed(2)
    .replace(/^-(?=0\.00$)/, '')
    .replace('-', '−');

function Basis({ told }: { readonly told: Told }) {
  const { laps, drift, lapSpread, basis } = told;
  const left = [
    laps.out > 0 ? `${laps.out} ways out` : '',
    laps.marked > 0 ? `${laps.marked} marked or in doubt` : '',
    laps.slow > 0 ? `${laps.slow} far too slow` : '',
  ].filter(Boolean);
  return (
    <p class="soft">
      From {laps.counted} laps{left.length > 0 ? `, without ${left.join(', ')}` : ''}. Laps differ by{' '}
      {lapSpread.toFixed(2)} s, the track {drift <= 0 ? 'gained' : 'lost'} {Math.abs(drift * 1000).toFixed(0)} ms a lap;
      how much runs differ by themselves is {basis === 'own history' ? 'from your own days' : 'a starting guess'}.
    </p>
  );
}

function RunTable(props: {
  readonly runs: readonly DayRun[];
  readonly changes: readonly string[];
  readonly onToggle: (run: number, change: string) => void;
}) {
  const { runs, changes, onToggle } = props;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys
    <section class="wide-table" tabIndex={0} aria-label="Table of the runs">
      <table class="lap-table">
        <thead>
          <tr>
            <th scope="col">Run</th>
            {changes.map(change => (
              <th key={change} scope="col" class="tick">
                {change}
              </th>
            ))}
            <th scope="col">Laps</th>
            <th scope="col">Middle lap, s</th>
          </tr>
        </thead>
        <tbody>
          {runs.map(({ session, outing, on, laps }, n) => {
            const full = laps.filter(({ out }) => !out);
            return (
              <tr key={`${session.fact} ${outing}`}>
                <th scope="row" class="run">
                  {n + 1} <span class="soft">{session.session ?? ''}</span>
                </th>
                {changes.map(change => (
                  <td key={change} class="tick">
                    <label class="counts">
                      <input type="checkbox" checked={on.includes(change)} onChange={() => onToggle(n, change)} />
                      <span class="unseen">
                        {change} in run {n + 1}
                      </span>
                    </label>
                  </td>
                ))}
                <td>{full.length}</td>
                <td>{lapText(middleOf(full.map(({ time }) => time)))}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

const toggled = (on: readonly string[], change: string): readonly string[] =>
  on.includes(change) ? on.filter(each => each !== change) : [...on, change];

/** How much laps and runs of a day differ by themselves, where it tells. */
function spreadsOf(day: TestDay | undefined): { readonly lap: number; readonly run: number } | undefined {
  const told = day && helped(day.runs);
  return told?.kind === 'told' ? { lap: told.lapSpread, run: told.runSpread } : undefined;
}
