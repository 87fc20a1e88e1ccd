/** What is said of a change, always with who says it and who disagrees, and what this kart itself showed. */
import type { Observed, Outing, SetupSheet } from '../../prep/index.ts';
import { dateOf, timeOf } from '../words/reads.ts';
import { setupWords } from '../words/setup.tsx';

const PHASES = [
  ['entry', setupWords.entry],
  ['mid', setupWords.middle],
  ['exit', setupWords.exit],
  ['use', setupWords.use],
] as const;

export function Hints({ sheet: { hints, note, differences } }: { readonly sheet: SetupSheet }) {
  if (differences.length === 0) return null;
  return (
    <section class="group" aria-labelledby="setup-said">
      <h2 id="setup-said">
        {setupWords.whatIsSaidOfThese} <span>{hints.length}</span>
      </h2>
      {hints.length === 0 && <p class="note">{setupWords.nothingIsKnown}</p>}
      {hints.length > 0 && note !== null && <p class="note">{note}</p>}
      <ul class="said-list">
        {hints.map(hint => (
          <li key={`${hint.for} ${hint.change}`}>
            <h3>{hint.opposite ? setupWords.ofOtherWay(hint.change) : hint.change}</h3>
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
                <dt>{setupWords.source}</dt>
                <dd>{hint.source}</dd>
              </div>
              {hint.disagreement !== undefined && (
                <div>
                  <dt>{setupWords.but}</dt>
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
        {setupWords.whatThisKartShowed} <span>{observed.length}</span>
      </h2>
      <p class="note">{setupWords.fromRecordAloneWhether}</p>
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
          <dt>{setupWords.before}</dt>
          <dd>{ranIn(one.before)}</dd>
        </div>
        <div>
          <dt>{setupWords.after}</dt>
          <dd>{ranIn(one.after)}</dd>
        </div>
        {one.notes.map((text, n) => (
          <div key={`${n} ${text}`}>
            <dt>{setupWords.noted}</dt>
            <dd>{text}</dd>
          </div>
        ))}
        {one.doubts.length > 0 && (
          <div>
            <dt>{setupWords.but}</dt>
            <dd>{setupWords.cannotBeLaidSide(one.doubts.join('; '))}</dd>
          </div>
        )}
      </dl>
    </li>
  );
}

const ranIn = (outing: Outing | null): string =>
  outing === null
    ? setupWords.nothingRan
    : `${outing.label}${outing.wet ? ', wet' : ''}${outing.conditions === null ? '' : ` (${outing.conditions})`}`;
