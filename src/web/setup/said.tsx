/** What is said of a change, always with who says it and who disagrees, and what this kart itself showed. */
import type { Observed, Outing, SetupSheet } from '../../prep/index.ts';
import { dateOf, timeOf } from '../words.ts';

const PHASES = [
  ['entry', 'Entry'],
  ['mid', 'Middle'],
  ['exit', 'Exit'],
  ['use', 'Use'],
] as const;

export function Hints({ sheet: { hints, note, differences } }: { readonly sheet: SetupSheet }) {
  if (differences.length === 0) return null;
  return (
    <section class="group" aria-labelledby="setup-said">
      <h2 id="setup-said">
        What is said of these changes <span>{hints.length}</span>
      </h2>
      {hints.length === 0 && <p class="note">Nothing is known to be said of them.</p>}
      {hints.length > 0 && note !== null && <p class="note">{note}</p>}
      <ul class="said-list">
        {hints.map(hint => (
          <li key={`${hint.for} ${hint.change}`}>
            <h3>{hint.opposite ? `Of the other way: ${hint.change}` : hint.change}</h3>
            <dl>
              {PHASES.map(([key, word]) =>
                hint[key] === undefined ? null : (
                  <div key={key}>
                    <dt>{word}</dt>
                    <dd>{hint[key]}</dd>
                  </div>
                ),
              )}
              <div class="soft">
                <dt>Source</dt>
                <dd>{hint.source}</dd>
              </div>
              {hint.disagreement !== undefined && (
                <div>
                  <dt>But</dt>
                  <dd>{hint.disagreement}</dd>
                </div>
              )}
            </dl>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Showed({ sheet: { observed, differences } }: { readonly sheet: SetupSheet }) {
  if (differences.length === 0) return null;
  return (
    <section class="group" aria-labelledby="setup-showed">
      <h2 id="setup-showed">
        What this kart showed <span>{observed.length}</span>
      </h2>
      <p class="note">From the record alone; whether a change made it faster takes laps both ways.</p>
      <ul class="said-list">
        {observed.toReversed().map(one => (
          <One key={`${one.fact} ${one.setting}`} one={one} />
        ))}
      </ul>
    </section>
  );
}

function One({ one }: { readonly one: Observed }) {
  return (
    <li>
      <h3>
        {one.setting} {one.was} → {one.now}
      </h3>
      <p class="soft">
        {dateOf(one.at)}, {timeOf(one.at)}, {one.person}
        {one.why === null ? '' : `: ${one.why}`}
      </p>
      <dl>
        <div>
          <dt>Before</dt>
          <dd>{ranIn(one.before)}</dd>
        </div>
        <div>
          <dt>After</dt>
          <dd>{ranIn(one.after)}</dd>
        </div>
        {one.notes.map((text, n) => (
          <div key={`${n} ${text}`}>
            <dt>Noted</dt>
            <dd>{text}</dd>
          </div>
        ))}
        {one.doubts.length > 0 && (
          <div>
            <dt>But</dt>
            <dd>cannot be laid side by side: {one.doubts.join('; ')}</dd>
          </div>
        )}
      </dl>
    </li>
  );
}

const ranIn = (outing: Outing | null): string =>
  outing === null
    ? 'nothing ran'
    : `${outing.label}${outing.wet ? ', wet' : ''}${outing.conditions === null ? '' : ` (${outing.conditions})`}`;
