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
import { helpedWords } from '../words/laps/helped.ts';
import { lapText, middleOf } from '../words/laps/reads.ts';
import { dateOf } from '../words/reads.ts';
import { BeforeTest } from './before-test.tsx';
import { levelsOf } from './levels.ts';
import { RunsPicture } from './runs-picture.tsx';
import type { LapsProps } from './sheet.tsx';

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
        title={helpedWords.didItHelp}
        kart={snapshot.kart.name}
        event={day ? nameOf(day) : null}
        invented={snapshot.kart.invented}
      />
      {day === undefined ? (
        <p class="note">{helpedWords.noDayInRecordHas}</p>
      ) : (
        <>
          {days.length > 1 && (
            <div class="entry-field no-print">
              <label for="helped-day">{helpedWords.whichDay}</label>
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
                    {helpedWords.runsWith(nameOf(each), each.runs.length)}
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
  const [matters, worth] = [read('matters', helpedWords.tooSmallToMatter), read('worth', helpedWords.worthFinding)];
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
      <section class="group" aria-label={helpedWords.answer}>
        <h2>
          {helpedWords.didItHelp} <span>{nameOf(day)}</span>
        </h2>
        {told.kind === 'not told' ? (
          <p class="verdict-words">
            <b>{helpedWords.cannotTell}</b> {told.say}
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
        <Entry asking={asking} at="matters" label={helpedWords.tooSmallToMatter} unit="s" />
        <Entry asking={asking} at="worth" label={helpedWords.worthFinding} unit="s" />
      </div>
      <section class="group" aria-label={helpedWords.allRuns}>
        <h2>
          {helpedWords.allRuns} <span>{helpedWords.inOrderTheyWereDriven}</span>
        </h2>
        <figure class="sheet runs-drawn">
          <RunsPicture
            title={helpedWords.lapsOfEachRun}
            runs={runs.map(({ laps }, n) => ({
              name: String(n + 1),
              laps: laps.flatMap(({ time, out, marked }) => (out ? [] : [{ time, counts: !marked }])),
              ...levelOf(levelsOf(runs, told)[n]),
            }))}
          />
        </figure>
        <RunTable runs={runs} changes={changes} onToggle={toggle} />
        <p class="soft">{helpedWords.whatWasOnKart}</p>
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
      { at: 0, text: helpedWords.noEffect },
      { at: size, text: helpedWords.sLap(signed(size)), signal: true },
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
      <p class="soft">{helpedWords.leftOfNoEffect(smallest.toFixed(2))}</p>
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
    laps.out > 0 ? helpedWords.waysOut(laps.out) : '',
    laps.marked > 0 ? helpedWords.markedOrInDoubt(laps.marked) : '',
    laps.slow > 0 ? helpedWords.farTooSlow(laps.slow) : '',
  ].filter(Boolean);
  return (
    <p class="soft">
      {helpedWords.fromLapsLapsDiffer(
        laps.counted,
        left.length,
        left.join(', '),
        lapSpread.toFixed(2),
        drift,
        Math.abs(drift * 1000).toFixed(0),
        basis,
      )}
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
    <section class="wide-table" tabIndex={0} aria-label={helpedWords.tableOfRuns}>
      <table class="lap-table">
        <thead>
          <tr>
            <th scope="col">{helpedWords.run}</th>
            {changes.map(change => (
              <th key={change} scope="col" class="tick">
                {change}
              </th>
            ))}
            <th scope="col">{helpedWords.laps}</th>
            <th scope="col">{helpedWords.middleLap}</th>
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
                      <span class="unseen">{helpedWords.inRun(change, n + 1)}</span>
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
