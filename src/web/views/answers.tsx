import { useState } from 'preact/hooks';
import { instrumentsFor, type Problem } from '../../app/index.ts';
import type { Step } from '../../prep/index.ts';
import { type Answer, adjustable, draftsOf, dueAgain, isHandling } from '../answer.ts';
import { Glyph } from '../glyph.tsx';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { notANumber, typedNumber } from '../typed-number.ts';
import { didOf } from '../words.ts';
import { InstrumentChoice, Judged } from './judged.tsx';

type Asking = 'result' | 'fail' | 'not possible' | 'set';

/** What a person can say of a step that is ready. What was typed outlives a reload and a refusal. */
export function Answers(props: {
  readonly step: Step;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly onWritten: () => void;
}) {
  const { step, keep, session } = props;
  const [asking, setAsking] = useState<Asking>((keep.get(`asking ${step.key}`) as Asking) || 'result');
  const [reading, setReading] = useKept(keep, `reading ${step.key}`);
  const [words, setWords] = useKept(keep, `words ${step.key}`);
  const [refused, setRefused] = useState<{ problems: readonly Problem[]; again: Answer | undefined }>(NOTHING);
  const busy = session.view().writing;
  const { kart } = props.snapshot;
  const item = step.item === null ? undefined : kart.items[step.item];
  // Remembered for every step that is read in this unit: the same piece is in the hand.
  const [chosen, setChosen] = useKept(keep, `instrument ${step.unit ?? ''}`);
  const instrument = item && instrumentsFor(kart, item).includes(chosen) ? chosen : '';

  const ask = (next: Asking): void => {
    keep.set(`asking ${step.key}`, next === 'result' ? '' : next);
    setAsking(next);
    setRefused(NOTHING);
  };
  const give = async (answer: Answer, sure = false): Promise<void> => {
    const written = await session.write(draftsOf(step, answer), sure ? { sure } : {});
    if (written.kind === 'refused') {
      setRefused({ problems: written.problems, again: written.asksAgain ? answer : undefined });
      return;
    }
    for (const key of ['reading', 'words', 'asking']) keep.set(`${key} ${step.key}`, '');
    // What was set is read again where it stands; if its joint is open, the plan puts that first.
    const same = session.view().snapshot?.plan.steps.find(s => s.key === step.key);
    if (answer.is === 'set' && same?.state === 'ready') {
      setReading('');
      ask('result');
    } else props.onWritten();
  };
  const read = instrument === '' ? {} : { instrument };
  const value = reading.trim() === '' ? {} : { reading, ...read };
  const refusal = (
    <Refused problems={refused.problems}>
      {refused.again && (
        <button
          type="button"
          class="button wide"
          disabled={busy}
          onClick={() => refused.again && give(refused.again, true)}
        >
          It is so: record {reading.trim() === '' ? 'it' : `“${reading.trim()}”`} as I said
        </button>
      )}
    </Refused>
  );
  const field = step.unit !== null && (
    <>
      <label for="reading">{asking === 'set' ? 'What it is set to' : 'What you read'}</label>
      <div class="with-unit">
        <input
          id="reading"
          class="reading"
          inputMode="text"
          autocomplete="off"
          value={reading}
          onInput={e => {
            setReading(e.currentTarget.value);
            setRefused(NOTHING); // another value: what was asked again is judged anew
          }}
        />
        <span>{step.unit}</span>
      </div>
      {item && <Judged kart={kart} item={item} unit={step.unit} typed={reading} instrument={instrument} />}
      <p class="soft">
        A number is in {step.unit}; any other unit you write with it, like 5 3/4 in. Several readings: a ; between them.
      </p>
      {item && <InstrumentChoice kart={kart} item={item} value={instrument} onChoose={setChosen} />}
    </>
  );

  const wrongHours = step.fresh ? notANumber(words, 'hours', '6.5') : undefined;
  const hours = step.fresh ? typedNumber(words) : undefined;
  const moved = adjustable(step, props.snapshot.kart);
  if (asking === 'set' && moved !== undefined)
    return (
      <form
        onSubmit={e => {
          e.preventDefault();
          void give({ is: 'set', reading: reading.trim(), ...read });
        }}
      >
        {field}
        <p class="note">Due again: {dueAgain(moved, props.snapshot.kart)}.</p>
        {refusal}
        <div class="answers">
          <button type="button" class="button" onClick={() => ask('result')}>
            Back
          </button>
          <button type="submit" class="button main" disabled={busy || reading.trim() === ''}>
            {busy ? 'Writing …' : 'I set it to that'}
          </button>
        </div>
      </form>
    );
  if (asking !== 'result') {
    const fails = asking === 'fail';
    return (
      <form
        onSubmit={e => {
          e.preventDefault();
          void give(fails ? { is: 'fail', defect: words.trim(), ...value } : { is: 'not possible', why: words.trim() });
        }}
      >
        {fails && field}
        <label for="words">{fails ? 'What is wrong' : 'Why it cannot be done'}</label>
        <textarea id="words" required value={words} onInput={e => setWords(e.currentTarget.value)} />
        {refusal}
        <div class="answers">
          <button type="button" class="button" onClick={() => ask('result')}>
            Back
          </button>
          <button type="submit" class="button main" disabled={busy || words.trim() === ''}>
            {busy ? 'Writing …' : fails ? 'Record the fail' : 'Record it'}
          </button>
        </div>
      </form>
    );
  }
  return (
    <form
      onSubmit={e => {
        e.preventDefault();
        void give({
          is: 'done',
          ...value,
          ...(step.mends === null ? {} : { how: words.trim() }),
          ...(hours === undefined ? {} : { hours }),
        });
      }}
    >
      {step.action === 'second-look' && (
        <p class="note">Look with your own eyes, as if nobody had. The first result is not shown here.</p>
      )}
      {step.mends !== null && (
        <>
          <label for="words">How it was mended</label>
          <textarea id="words" required value={words} onInput={e => setWords(e.currentTarget.value)} />
        </>
      )}
      {step.fresh && (
        <>
          <label for="words">Hours the new one has run before</label>
          <div class="with-unit">
            <input
              id="words"
              inputMode="decimal"
              autocomplete="off"
              placeholder="none"
              value={words}
              onInput={e => setWords(e.currentTarget.value)}
            />
            <span>h</span>
          </div>
          {wrongHours && <p class="note need">{wrongHours}</p>}
        </>
      )}
      {field}
      {refusal}
      <div class="answers">
        <button
          type="submit"
          class="button main big full"
          disabled={busy || (step.mends !== null && words.trim() === '') || wrongHours !== undefined}
        >
          <Glyph sign="done" />
          {busy ? 'Writing …' : didOf(step)}
        </button>
        {!isHandling(step) && (
          <>
            <button type="button" class="button big" disabled={busy} onClick={() => ask('fail')}>
              It fails
            </button>
            <button type="button" class="button big" disabled={busy} onClick={() => ask('not possible')}>
              Cannot do
            </button>
          </>
        )}
        {moved !== undefined && (
          <button type="button" class="button plain full" disabled={busy} onClick={() => ask('set')}>
            I had to set it
          </button>
        )}
      </div>
    </form>
  );
}

const NOTHING = { problems: [], again: undefined };

/** Text that a locked phone or a reload does not lose. */
function useKept(keep: Keep, key: string): readonly [string, (text: string) => void] {
  const [text, setText] = useState(keep.get(key));
  return [
    text,
    next => {
      keep.set(key, next);
      setText(next);
    },
  ];
}
