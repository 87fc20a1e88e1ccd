/** Before a test: how many runs in which order it takes, so that nobody drives one that cannot tell. */
import { useState } from 'preact/hooks';
import { ordersWith, planFor } from '../../laps/index.ts';
import { type Asking, Entry, Stepper } from '../track/fields.tsx';
import { isProblem, numberSaid, type Typed } from '../track/said.ts';
import { helpedWords } from '../words/laps/helped.ts';

/** s; from one run to the next the kart is never quite the same: as the reckoning begins with. */
const RUNS_DIFFER = 0.05;

/** @param props.seen standard deviations of laps and runs as the day chosen showed them, s */
export function BeforeTest({ seen }: { readonly seen: { readonly lap: number; readonly run: number } | undefined }) {
  const [typed, setTyped] = useState<Typed>({
    worth: '0.10',
    spread: (seen?.lap ?? 0.1).toFixed(2),
    laps: '6',
  });
  const read = (key: string, label: string) => numberSaid(typed, { key, label, unit: 's', dimension: 'time' });
  const [worth, spread] = [read('worth', helpedWords.effectWorthFinding), read('spread', helpedWords.yourLapsDiffer)];
  const asking: Asking = {
    form: 'test',
    typed,
    problemsAt: key => [key === 'worth' ? worth : key === 'spread' ? spread : undefined].filter(isProblem),
    put: (key, text) => setTyped({ ...typed, [key]: text }),
  };
  const laps = Math.min(30, Math.max(3, Math.round(Number(typed.laps)) || 6));
  const spreads = typeof spread === 'number' && spread > 0 ? { lap: spread, run: seen?.run ?? RUNS_DIFFER } : undefined;
  const plan = spreads && typeof worth === 'number' && worth > 0 ? planFor(worth, spreads) : undefined;
  return (
    <section class="group" aria-label={helpedWords.beforeTest}>
      <h2>
        {helpedWords.beforeTest} <span>{helpedWords.withoutChangeB}</span>
      </h2>
      <div class="two-fields">
        <Entry asking={asking} at="worth" label={helpedWords.effectWorthFinding} unit="s" />
        <Entry asking={asking} at="spread" label={helpedWords.yourLapsDiffer} unit="s" />
      </div>
      <p class="soft">
        {seen === undefined
          ? helpedWords.oneStandardDeviation
          : helpedWords.oneStandardDeviationAs(seen.run.toFixed(2))}
      </p>
      {spreads && (
        <p class="need note">
          {plan ? (
            <b>{helpedWords.lapsThatCountEachRun(plan.order, plan.laps, plan.driven)}</b>
          ) : (
            <b>{helpedWords.noTestOfOneDay}</b>
          )}
        </p>
      )}
      <div class="no-print">
        <Stepper asking={asking} at="laps" label={helpedWords.orWithSoManyLaps} />
      </div>
      {spreads && (
        <table class="lap-table head-gap">
          <thead>
            <tr>
              <th scope="col">{helpedWords.order}</th>
              <th scope="col">{helpedWords.shows}</th>
              <th scope="col">{helpedWords.lapsInAll}</th>
            </tr>
          </thead>
          <tbody>
            {ordersWith(laps, spreads).map(({ order, smallest, driven }) => (
              <tr key={order}>
                <th scope="row">{order}</th>
                <td>{smallest.toFixed(2)} s</td>
                <td>{driven}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p class="soft">{helpedWords.effectOfThisSizeShows}</p>
    </section>
  );
}
