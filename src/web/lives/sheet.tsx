/** How long parts last: all of them, most likely to fail first; or one, with its life drawn and what is expected of its kind. */
import '../numbers/numbers.css';
import '../numbers/plates/plates.css';
import './lives.css';
import { Fragment } from 'preact';
import { useMemo } from 'preact/hooks';
import { type LifeLine, lifeLines } from '../../life/index.ts';
import { Glyph } from '../glyph.tsx';
import { PrintTitle, Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { livesWords } from '../words/lives.ts';
import { capital } from '../words/reads.ts';
import { useLives } from './asked.ts';
import { OnePart } from './one-part.tsx';
import { round } from './paper.tsx';

export type LivesProps = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  /** The part that is looked at; none: all. */
  readonly about: string | undefined;
};

export function Lives({ snapshot, session, about }: LivesProps) {
  const { kart, fitness } = snapshot;
  const { ask, failed } = useLives(session, snapshot);
  const part = about === undefined ? undefined : kart.parts[about];
  const lines = useMemo(() => (ask === undefined || part ? [] : lifeLines(kart, ask)), [kart, ask, part]);
  const known = lines.filter(({ chance, fate }) => chance !== null || fate === 'failed');
  const unknown = lines.filter(({ chance, fate }) => chance === null && fate !== 'failed');
  return (
    <>
      <PrintTitle
        title={part ? livesWords.life(part.id) : livesWords.livesOfParts}
        kart={kart.name}
        event={fitness.event}
        invented={kart.invented}
      />
      <p class="no-print">
        <a class="back" href={hashOf({ sheet: part ? 'lives' : 'weak' })}>
          {part ? livesWords.livesOfAllParts : livesWords.whatWouldHurtUs}
        </a>
      </p>
      <h1 class="no-print">{part ? capital(part.id) : livesWords.howLongPartsLast}</h1>
      {failed !== undefined && <Refused problems={session.ask.problems(failed)} />}
      {ask === undefined ? (
        <p class="loading">{livesWords.reckoningLives}</p>
      ) : part ? (
        <OnePart key={part.id} {...{ part, ask, snapshot, session }} />
      ) : (
        <>
          <p class="note">{livesWords.howLikelyEachFailsOver(fitness.event ?? livesWords.nextEvent)}</p>
          <section class="group" aria-labelledby="with-number">
            <h2 id="with-number">
              {livesWords.mostLikelyToFailFirst} <span>{known.length}</span>
            </h2>
            <ol class="lives">
              {known.map(line => (
                <Row key={line.part} line={line} />
              ))}
            </ol>
          </section>
          {unknown.length > 0 && (
            <section class="group" aria-labelledby="without-number">
              <h2 id="without-number">
                {livesWords.notKnownHead} <span>{unknown.length}</span>
              </h2>
              {byReason(unknown).map(([why, of]) => (
                <Fragment key={why}>
                  <p class="why-not soft">
                    <Glyph sign="not known" /> {why}
                  </p>
                  <ul class="lives">
                    {of.map(line => (
                      <Row key={line.part} line={line} />
                    ))}
                  </ul>
                </Fragment>
              ))}
            </section>
          )}
        </>
      )}
    </>
  );
}

/** What is not known of many for one reason is said once. */
function byReason(lines: readonly LifeLine[]): readonly (readonly [why: string, of: readonly LifeLine[]])[] {
  const reasons = [...new Set(lines.map(({ unknown }) => unknown ?? ''))];
  return reasons.map(why => [why, lines.filter(({ unknown }) => (unknown ?? '') === why)]);
}

function Row({ line: { part, age, words, mostlyGuess } }: { readonly line: LifeLine }) {
  return (
    <li>
      <a href={hashOf({ sheet: 'lives', about: part })}>
        <b>{part}</b>
        <span class="soft">{age === null ? '' : `${round(age)} h`}</span>
        {words && (
          <span class="words">
            {words.short}
            {mostlyGuess && <span class="soft">{livesWords.mostlyOurStartingGuess}</span>}
          </span>
        )}
      </a>
    </li>
  );
}
