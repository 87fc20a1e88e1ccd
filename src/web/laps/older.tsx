/** What writing laps did to the parts: how much older they are, and how old that makes each. */
import { type Fact, partAge } from '../../book/index.ts';
import type { Snapshot } from '../session.ts';
import { lapsCount } from '../words/laps/reads.ts';
import { lapsWords } from '../words/laps/sheet.tsx';
import { spanOf } from '../words/reads.ts';
import type { LapsWritten } from './into-book.ts';

export function Older({ written, snapshot }: { readonly written: LapsWritten; readonly snapshot: Snapshot }) {
  const { kart, state } = snapshot;
  const ran = written.facts.find((fact): fact is Extract<Fact, { kind: 'ran' }> => fact.kind === 'ran');
  const parts = Object.values(kart.parts).filter(({ id }) => state.parts[id]?.on !== false);
  return (
    <section class="group" aria-label={lapsWords.hoursOnParts}>
      <h2 aria-live="polite">
        {ran
          ? lapsWords.partsAreAndOlder(spanOf(ran.minutes), lapsCount(ran.laps ?? 0))
          : lapsWords.hoursWereCountedBefore}
      </h2>
      {written.say.map(text => (
        <p key={text} class="note">
          {text}
        </p>
      ))}
      <p class="soft">{lapsWords.kartHasRun(spanOf(state.minutes), lapsCount(state.laps))}</p>
      <details class="group">
        <summary>
          <h2>
            {lapsWords.hoursOfEachPart} <span>{lapsWords.onKart(parts.length)}</span>
          </h2>
        </summary>
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">{lapsWords.part}</th>
              <th scope="col">{lapsWords.hasRun}</th>
              <th scope="col">{lapsWords.laps}</th>
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
