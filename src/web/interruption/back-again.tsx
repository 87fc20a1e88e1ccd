import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import type { Session } from '../session.ts';
import { interruptionWords } from '../words/interruption.ts';
import { timeOf } from '../words/reads.ts';
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
    const written = await session.write([
      { kind: 'struck', fact: last.fact, why: interruptionWords.notSoWhenTouchedAgain },
    ]);
    if (written.kind === 'refused') setRefused(written.problems);
    else props.onTouched();
  };
  return (
    <section class="step" aria-label={interruptionWords.afterInterruption}>
      <header>
        <b>{interruptionWords.backAgain}</b>
        <span>{minutes === null ? interruptionWords.pageWasOpenedAnew : interruptionWords.awayForMin(minutes)}</span>
      </header>
      <div class="step-body">
        <h1>{interruptionWords.touchLastOneAgain}</h1>
        <p class="soft">{interruptionWords.whatWasInHandWhen}</p>
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
              <p class="note full">{interruptionWords.itWillBeToDo}</p>
              <button type="button" class="button big" onClick={() => setStriking(false)}>
                {interruptionWords.keep}
              </button>
              <button type="button" class="button big" disabled={session.view().writing} onClick={strike}>
                {interruptionWords.strike}
              </button>
            </>
          ) : (
            <>
              <button type="button" class="button main big full" onClick={props.onTouched}>
                {interruptionWords.iTouched}
              </button>
              <button type="button" class="button full" onClick={() => setStriking(true)}>
                {interruptionWords.itIsNotSo}
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
      <span class="side">{last ? interruptionWords.touch : ''}</span>
    </li>
  );
}
