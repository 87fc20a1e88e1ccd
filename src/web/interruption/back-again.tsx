import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import type { Session } from '../session.ts';
import { timeOf } from '../words.ts';
import type { Done } from './last-done.ts';

/** After an interruption: what was done last, and that it is touched again before anything goes on. */
export function BackAgain(props: {
  readonly done: readonly [Done, ...Done[]];
  /** Null: the page was opened anew. */
  readonly minutes: number | null;
  readonly session: Session;
  readonly onTouched: () => void;
}) {
  const { done, minutes, session } = props;
  const [last, ...before] = done;
  const [striking, setStriking] = useState(false);
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const strike = async (): Promise<void> => {
    const written = await session.write([{ kind: 'struck', fact: last.fact, why: 'not so when touched again' }]);
    if (written.kind === 'refused') setRefused(written.problems);
    else props.onTouched();
  };
  return (
    <section class="step" aria-label="After an interruption">
      <header>
        <b>Back again</b>
        <span>{minutes === null ? 'the page was opened anew' : `away for ${minutes} min`}</span>
      </header>
      <div class="step-body">
        <h1>Touch the last one again</h1>
        <p class="soft">What was in the hand when work stopped is what is left half done. Put a hand on it and look.</p>
        <ol class="rows last-done">
          {before.toReversed().map(one => (
            <DoneRow key={one.fact} done={one} />
          ))}
          <DoneRow done={last} last />
        </ol>
        <Refused problems={refused} />
        <div class="answers">
          {striking ? (
            <>
              <p class="note full">It will be to do again. The entry stays in the record, struck.</p>
              <button type="button" class="button big" onClick={() => setStriking(false)}>
                Keep it
              </button>
              <button type="button" class="button big" disabled={session.view().writing} onClick={strike}>
                Strike it
              </button>
            </>
          ) : (
            <>
              <button type="button" class="button main big full" onClick={props.onTouched}>
                I touched it: it is so
              </button>
              <button type="button" class="button full" onClick={() => setStriking(true)}>
                It is not so
              </button>
            </>
          )}
        </div>
      </div>
    </section>
  );
}

function DoneRow({ done, last }: { readonly done: Done; readonly last?: boolean }) {
  const words = `${done.did}: ${done.on}`;
  return (
    <li>
      <span class="soft">{timeOf(done.at)}</span>
      <div>{last ? <b>{words}</b> : words}</div>
      <span class="side">{last ? 'touch this' : ''}</span>
    </li>
  );
}
