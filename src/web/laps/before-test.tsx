/** Before a test: how many runs in which order it takes, so that nobody drives one that cannot tell. */
import { useState } from 'preact/hooks';
import { ordersWith, planFor } from '../../laps/index.ts';
import { type Asking, Entry, Stepper } from '../track/fields.tsx';
import { isProblem, numberSaid, type Typed } from '../track/said.ts';

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
  const [worth, spread] = [read('worth', 'An effect worth finding'), read('spread', 'Your laps differ by')];
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
    <section class="group" aria-label="Before a test">
      <h2>
        Before a test <span>A without the change, B with it</span>
      </h2>
      <div class="two-fields">
        <Entry asking={asking} at="worth" label="An effect worth finding" unit="s" />
        <Entry asking={asking} at="spread" label="Your laps differ by" unit="s" />
      </div>
      <p class="soft">
        {seen === undefined
          ? 'One standard deviation; 0.10 s until a day in the book shows yours.'
          : `One standard deviation, as this day showed it; runs differ by ${seen.run.toFixed(2)} s by themselves.`}
      </p>
      {spreads && (
        <p class="need note">
          {plan ? (
            <b>
              {plan.order}, {plan.laps} laps that count each run: {plan.driven} laps in all with the ways out.
            </b>
          ) : (
            <b>No test of one day shows so little with laps that differ so much.</b>
          )}
        </p>
      )}
      <div class="no-print">
        <Stepper asking={asking} at="laps" label="Or with so many laps a run" />
      </div>
      {spreads && (
        <table class="lap-table head-gap">
          <thead>
            <tr>
              <th scope="col">Order</th>
              <th scope="col">Shows from</th>
              <th scope="col">Laps in all</th>
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
      <p class="soft">
        An effect of this size shows 4 times of 5. A alone and then B alone tells nothing: the track changes too.
      </p>
    </section>
  );
}
