/** Laps one under the other: time and how far it may be off, sectors, what stands against each, and whether it counts. */
import { useState } from 'preact/hooks';
import type { Lap, Outing } from '../../laps/index.ts';
import { flagsOf, lapsCount, lapText, middleOf, within } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import { capital, spanOf } from '../words/reads.ts';
import type { Found } from './log.ts';
import { bestsOf, isSound } from './sectors.ts';

/** A day holds hundreds; nobody reads them all. */
const SHOWN = 60;

export function LapTable(props: {
  readonly name: string; // of the log
  readonly found: Found;
  readonly looking: boolean;
  readonly marked: ReadonlySet<number>;
  readonly onMark: (lap: number) => void;
}) {
  const { name, found, looking, marked, onMark } = props;
  const [all, setAll] = useState(false);
  const { laps, outings, say } = found;
  const counts = laps.filter(({ number }) => !marked.has(number));
  const bests = bestsOf(counts);
  const spread = bests.lap?.spread;
  const sectors = laps[0]?.sectors.length ?? 1;
  const shown = new Set((all ? laps : laps.slice(0, SHOWN)).map(({ number }) => number));
  return (
    <section class="group" aria-label={lapsWords.lapsOf(name)}>
      <h2>
        {lapsWords.laps} <span role="status">{looking ? lapsWords.lookingForLaps : lapsCount(laps.length)}</span>
      </h2>
      {say.map(text => (
        <p key={text} class="note">
          {text}
        </p>
      ))}
      {bests.lap && (
        <dl class="leads">
          <div>
            <dt>{lapsWords.bestLap(bests.lap.number)}</dt>
            <dd>
              {lapText(bests.lap.time, spread)} <small>{within(bests.lap.spread)} s</small>
            </dd>
          </div>
          {bests.ideal !== undefined && (
            <div>
              <dt>{lapsWords.bestSectorsTogether}</dt>
              <dd>{lapText(bests.ideal, spread)}</dd>
            </div>
          )}
          <div>
            <dt>{lapsWords.middleLap}</dt>
            <dd>{lapText(middleOf(counts.filter(isSound).map(({ time }) => time)), spread)}</dd>
          </div>
        </dl>
      )}
      {laps.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys
        <section class="wide-table" tabIndex={0} aria-label={lapsWords.tableOfLaps(name)}>
          <table class="lap-table">
            <thead>
              <tr>
                <th scope="col">{lapsWords.lap}</th>
                <th scope="col">{lapsWords.counts}</th>
                <th scope="col">{lapsWords.timeS}</th>
                {sectors > 1 &&
                  Array.from({ length: sectors }, (_, n) => (
                    <th key={`sector ${n + 1}`} scope="col">
                      S{n + 1}
                    </th>
                  ))}
              </tr>
            </thead>
            {outings.map((outing, n) => (
              <OutingRows
                key={outing.from}
                {...{ outing, number: n + 1, of: outings.length, sectors, bests, marked, onMark, shown }}
              />
            ))}
          </table>
        </section>
      )}
      {laps.length > SHOWN && !all && (
        <button type="button" class="button plain wide" onClick={() => setAll(true)}>
          {lapsWords.showAllLaps(laps.length)}
        </button>
      )}
      {laps.length > 0 && <p class="soft">{lapsWords.ofLapTimesLieWithin}</p>}
    </section>
  );
}

function OutingRows(props: {
  readonly outing: Outing;
  readonly number: number;
  readonly of: number;
  readonly sectors: number;
  readonly bests: ReturnType<typeof bestsOf>;
  readonly marked: ReadonlySet<number>;
  readonly onMark: (lap: number) => void;
  readonly shown: ReadonlySet<number>;
}) {
  const { outing, number, of, sectors, bests, marked, onMark, shown } = props;
  const laps = outing.laps.filter(lap => shown.has(lap.number));
  if (laps.length === 0 && outing.laps.length > 0) return null;
  const columns = sectors > 1 ? sectors + 3 : 3;
  const minutes = (outing.to - outing.from) / 60;
  return (
    <tbody>
      {of > 1 && (
        <tr class="outing">
          <th scope="rowgroup" colSpan={columns}>
            {lapsWords.outing(number)}{' '}
            <span class="soft">
              {spanOf(minutes)}, {lapsCount(outing.laps.length)}
            </span>
          </th>
        </tr>
      )}
      {outing.out && <Way what={lapsWords.wayOut} seconds={outing.out.to - outing.out.from} columns={columns} />}
      {laps.map(lap => (
        <LapRow key={lap.number} {...{ lap, sectors, bests, onMark }} counts={!marked.has(lap.number)} />
      ))}
      {outing.in && <Way what={lapsWords.way} seconds={outing.in.to - outing.in.from} columns={columns} />}
    </tbody>
  );
}

const Way = (props: { readonly what: string; readonly seconds: number; readonly columns: number }) => (
  <tr class="soft">
    <td>–</td>
    <td colSpan={props.columns - 1}>
      {props.what}, {lapText(props.seconds, 0.5)} s
    </td>
  </tr>
);

function LapRow(props: {
  readonly lap: Lap;
  readonly sectors: number;
  readonly bests: ReturnType<typeof bestsOf>;
  readonly counts: boolean;
  readonly onMark: (lap: number) => void;
}) {
  const { lap, sectors, bests, counts, onMark } = props;
  const best = bests.lap === lap;
  const flags = [best ? 'best' : '', counts ? '' : lapsWords.doesNotCount, flagsOf(lap)].filter(Boolean).join(', ');
  return (
    <tr class={counts ? '' : 'not-counting'}>
      <th scope="row">{lap.number}</th>
      <td class="tick">
        <label class="counts">
          <input type="checkbox" checked={counts} onChange={() => onMark(lap.number)} />
          <span class="unseen">{lapsWords.lapCounts(lap.number)}</span>
        </label>
      </td>
      <td>
        {best ? <b>{lapText(lap.time, lap.spread)}</b> : lapText(lap.time, lap.spread)}{' '}
        <span class="soft">{within(lap.spread)}</span>
        {flags !== '' && <small>{capital(flags)}</small>}
      </td>
      {sectors > 1 &&
        lap.sectors.map((time, n) => (
          <td key={n}>
            {time === undefined ? '–' : lapText(time, lap.spread)}
            {bests.sectors[n] === lap && <small>{lapsWords.best}</small>}
          </td>
        ))}
    </tr>
  );
}
