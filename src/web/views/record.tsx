import { useState } from 'preact/hooks';
import type { FactLine, Problem } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';
import { Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { dateOf, factSign, factWords, timeOf } from '../words/reads.ts';
import { recordWords } from '../words/record.ts';
import { Photo } from './photo.tsx';
import { WriteDown } from './write-down.tsx';

const PAGE = 60;

export type RecordProps = { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep };

/** Every entry, newest first. A wrong one is struck with a reason and stays to be seen. */
export function RecordSheet(props: RecordProps) {
  const { snapshot, session } = props;
  const [shown, setShown] = useState(PAGE);
  const [striking, setStriking] = useState('');
  const lines = snapshot.facts.slice(0, shown);
  const days = byDay(lines);
  return (
    <>
      <h1>{recordWords.theRecord}</h1>
      <WriteDown {...props} />
      <p class="bar no-print">
        <a class="button wide" href={hashOf({ sheet: 'laps' })}>
          {recordWords.lapsOfSessionFromLog}
        </a>
        <a class="button wide" href={hashOf({ sheet: 'devices' })}>
          {recordWords.devicesLetPhone}
        </a>
      </p>
      <p class="soft head-gap">{recordWords.entriesNewestFirst(snapshot.facts.length)}</p>
      {days.map(([day, list]) => (
        <section class="group" key={day}>
          <h2>{day}</h2>
          <ul class="rows record">
            {list.map(line => (
              <li key={line.fact.id} class={line.struck ? 'struck' : undefined}>
                <Glyph sign={line.struck ? 'struck' : factSign(line.fact)} />
                <div>
                  {line.struck ? <s>{factWords(line.fact)}</s> : factWords(line.fact)}
                  <p>
                    {timeOf(line.fact.at)}, {line.fact.by}
                    {line.struck ? recordWords.struckBy(line.struck.by, line.struck.why) : ''}
                  </p>
                  {(line.fact.kind === 'found' || line.fact.kind === 'failed') && line.fact.photo !== undefined && (
                    <Photo session={session} hash={line.fact.photo} alt={factWords(line.fact)} />
                  )}
                  {striking === line.fact.id && <Strike line={line} session={session} onDone={() => setStriking('')} />}
                </div>
                {line.struck === null && striking !== line.fact.id && line.fact.kind !== 'kart filed' ? (
                  <button
                    type="button"
                    class="button plain small"
                    aria-label={recordWords.strikeThis(factWords(line.fact))}
                    onClick={() => setStriking(line.fact.id)}
                  >
                    {recordWords.strikeButton}
                  </button>
                ) : (
                  <span class="side">{line.struck ? recordWords.isStruck : ''}</span>
                )}
              </li>
            ))}
          </ul>
        </section>
      ))}
      {snapshot.facts.length > shown && (
        <div class="bar">
          <button type="button" class="button wide" onClick={() => setShown(shown + PAGE * 4)}>
            {recordWords.showOlderEntries}
          </button>
        </div>
      )}
    </>
  );
}

function Strike(props: { readonly line: FactLine; readonly session: Session; readonly onDone: () => void }) {
  const [why, setWhy] = useState('');
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  return (
    <form
      onSubmit={async e => {
        e.preventDefault();
        const written = await props.session.write([{ kind: 'struck', fact: props.line.fact.id, why: why.trim() }]);
        if (written.kind === 'refused') setRefused(written.problems);
        else props.onDone();
      }}
    >
      <label for="strike-why">{recordWords.whyItIsWrong}</label>
      <input id="strike-why" required value={why} onInput={e => setWhy(e.currentTarget.value)} />
      <Refused problems={refused} />
      <div class="answers">
        <button type="button" class="button" onClick={props.onDone}>
          {recordWords.keep}
        </button>
        <button type="submit" class="button main" disabled={why.trim() === '' || props.session.view().writing}>
          {recordWords.strikeIt}
        </button>
      </div>
    </form>
  );
}

function byDay(lines: readonly FactLine[]): readonly (readonly [string, readonly FactLine[]])[] {
  const days = new Map<string, FactLine[]>();
  for (const line of lines) {
    const day = dateOf(line.fact.at);
    days.set(day, [...(days.get(day) ?? []), line]);
  }
  return [...days];
}
