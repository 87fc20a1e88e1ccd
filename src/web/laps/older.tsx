/** What writing laps did to the parts: how much older they are, and how old that makes each. */
import { type Fact, partAge } from '../../book/index.ts';
import type { Snapshot } from '../session.ts';
import { spanOf } from '../words.ts';
import type { LapsWritten } from './into-book.ts';
import { lapsCount } from './words.ts';

export function Older({ written, snapshot }: { readonly written: LapsWritten; readonly snapshot: Snapshot }) {
  const { kart, state } = snapshot;
  const ran = written.facts.find((fact): fact is Extract<Fact, { kind: 'ran' }> => fact.kind === 'ran');
  const parts = Object.values(kart.parts).filter(({ id }) => state.parts[id]?.on !== false);
  return (
    <section class="group" aria-label="Hours on the parts">
      <h2 aria-live="polite">
        {ran
          ? `The parts are ${spanOf(ran.minutes)} and ${lapsCount(ran.laps ?? 0)} older`
          : 'The hours were counted before: the parts are as old as they were'}
      </h2>
      {written.say.map(text => (
        <p key={text} class="note">
          {text}
        </p>
      ))}
      <p class="soft">
        The kart has run {spanOf(state.minutes)} and {lapsCount(state.laps)}. What that makes due stands on Today.
      </p>
      <details class="group">
        <summary>
          <h2>
            Hours of each part <span>{parts.length} on the kart</span>
          </h2>
        </summary>
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">Has run</th>
              <th scope="col">Laps</th>
            </tr>
          </thead>
          <tbody>
            {parts.map(({ id }) => {
              const { minutes, laps } = partAge(state, id);
              return (
                <tr key={id}>
                  <th scope="row">{id}</th>
                  <td>{spanOf(minutes)}</td>
                  <td>{laps}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </details>
    </section>
  );
}
