import { useState } from 'preact/hooks';
import { instrumentsFor, type Problem } from '../../app/index.ts';
import type { Step } from '../../prep/index.ts';
import { type Answer, adjustable, draftsOf, dueAgain, isHandling, withUnit } from '../answer.ts';
import { Glyph } from '../glyph.tsx';
import { useBeingWritten } from '../kept.ts';
import { CountField } from '../keypad/count-field.tsx';
import { ReadingField } from '../keypad/reading-field.tsx';
import { unitsFor } from '../keypad/units.ts';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { useToRefused } from '../to-refused.ts';
import { notANumber, typedNumber } from '../typed-number.ts';
import { didOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';
import { Cannot, type Why } from './cannot.tsx';
import { type HalfTyped, useHalfTyped } from './half-typed.ts';
import { PhotoField } from './photo-field.tsx';

type Asking = 'result' | 'fail' | 'not possible' | 'set';

/** What a person can say of a step that is ready. What was typed outlives a reload and a refusal. */
export function Answers(props: {
  readonly step: Step;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: HalfTyped;
  readonly choices: Keep;
  readonly onWritten: () => void;
}) {
  const { step, keep, choices, session } = props;
  const [asked, setAsked, askedIsIn] = useHalfTyped(keep, `asking ${step.key}`);
  const asking = (asked || 'result') as Asking;
  const [reading, setReading, readingIsIn] = useHalfTyped(keep, `reading ${step.key}`);
  const [words, setWords, wordsAreIn] = useHalfTyped(keep, `words ${step.key}`);
  const [refused, setRefused] = useState<{ problems: readonly Problem[]; again: Answer | undefined }>(NOTHING);
  const [begun, setBegun] = useState(false);
  const [keeping, setKeeping] = useState(false);
  const busy = session.view().writing;
  const [isSent, isWritten] = useBeingWritten(session);
  const { form, pressed } = useToRefused(busy);
  const { kart } = props.snapshot;
  const item = step.item === null ? undefined : kart.items[step.item];
  // Remembered for every step that is read in this unit: the same piece is in the hand.
  const chosen = choices.get(`instrument ${step.unit ?? ''}`);
  // So is the unit of the tape or gauge.
  const said = choices.get(`read in ${step.unit ?? ''}`);
  const units = step.unit === null ? [] : unitsFor(step.unit);
  const unit = units.includes(said) ? said : (units[0] ?? null);
  const instrument = item && instrumentsFor(kart, item).includes(chosen) ? chosen : '';

  const handling = isHandling(step);
  const [whyKept, setWhy, whyIsIn] = useHalfTyped(keep, `why ${step.key}`);
  const why: Why = handling || whyKept === 'put off' ? 'put off' : 'cannot be done';
  const [because, setBecause, becauseIsIn] = useHalfTyped(keep, `because ${step.key}`);
  const [photo, setPhoto, photoIsIn] = useHalfTyped(keep, `photo ${step.key}`);

  const ask = (next: Asking): void => {
    setAsked(next === 'result' ? '' : next);
    setRefused(NOTHING);
  };
  /** It is in the book: the card is there a moment longer, and may be asked for again. */
  const clear = (): void => {
    for (const isIn of [askedIsIn, readingIsIn, wordsAreIn, whyIsIn, becauseIsIn, photoIsIn]) isIn();
    setRefused(NOTHING);
  };
  const leave = (): void => {
    clear();
    props.onWritten();
  };
  const wrongHours = step.fresh ? notANumber(words, 'hours', '6.5') : undefined;
  const hours = step.fresh ? typedNumber(words) : undefined;
  const read = instrument === '' ? {} : { instrument };
  const value = reading.trim() === '' ? {} : { reading: withUnit(reading, unit), ...read };
  const moved = adjustable(step, kart);
  /** As the fields say it now. */
  const answerNow = (): Answer => {
    if (asking === 'set' && moved !== undefined) return { is: 'set', reading: withUnit(reading, unit), ...read };
    if (asking === 'fail') return { is: 'fail', defect: words.trim(), ...value, ...(photo === '' ? {} : { photo }) };
    if (asking !== 'result') return { is: why === 'put off' ? why : 'not possible', why: because.trim() };
    const mended = step.mends === null ? {} : { how: words.trim() };
    return { is: 'done', ...value, ...mended, ...(hours === undefined ? {} : { hours }) };
  };
  const give = async (sure = false): Promise<void> => {
    pressed();
    const answer = answerNow();
    const [drafts, how] = [draftsOf(step, answer), sure ? { sure } : {}];
    const written = await isWritten(
      answer.is === 'done'
        ? session.finish(step.key, drafts, how, leave)
        : session.write(drafts, { ...how, recorded: clear }),
    );
    if (written.kind === 'refused')
      return setRefused({ problems: written.problems, again: written.asksAgain ? answer : undefined });
    if (answer.is === 'done') return;
    // What was set is read again where it stands; if its joint is open, the plan puts that first.
    const same = session.view().snapshot?.plan.steps.find(s => s.key === step.key);
    if (answer.is !== 'set' || same?.state !== 'ready') props.onWritten();
  };
  /** Alone, with nothing else left to do: the second look is begun by a tap of its own, which the record keeps. */
  const walkRound = async (): Promise<void> => {
    const written = await session.write([{ kind: 'note', text: workWords.walkRoundNote }]);
    if (written.kind === 'refused') return setRefused({ problems: written.problems, again: undefined });
    setRefused(NOTHING);
    setBegun(true);
  };
  const refusal = (
    <Refused problems={refused.problems}>
      {/* Another answer by now, in whichever field, is judged anew. */}
      {refused.again && JSON.stringify(refused.again) === JSON.stringify(answerNow()) && (
        <button type="button" class="button wide" disabled={busy} onClick={() => give(true)}>
          {workWords.itIsSoRecord(reading.trim() === '' ? 'it' : `“${withUnit(reading, unit)}”`)}
        </button>
      )}
      {refused.problems.some(({ code }) => code === 'same tap twice') && (
        <button type="button" class="button wide" disabled={busy} onClick={() => void walkRound()}>
          {workWords.beginWalkRound}
        </button>
      )}
    </Refused>
  );
  const field = step.unit !== null && (
    <ReadingField
      label={asking === 'set' ? workWords.whatItIsSet : workWords.whatYouRead}
      item={item}
      snapshot={props.snapshot}
      keep={choices}
      text={reading}
      onText={text => {
        setReading(text);
        setRefused(NOTHING); // another value: what was asked again is judged anew
      }}
      unit={unit ?? step.unit}
      asked={step.unit}
      onUnit={next => {
        choices.set(`read in ${step.unit ?? ''}`, next);
        setRefused(NOTHING);
      }}
      limits={{ min: step.tolerance?.min?.si, max: step.tolerance?.max?.si }}
      instrument={instrument}
      onInstrument={name => choices.set(`instrument ${step.unit ?? ''}`, name)}
      blind={step.action === 'second-look'}
    />
  );

  if (asking === 'set' && moved !== undefined)
    return (
      <form
        ref={form}
        inert={isSent}
        onSubmit={e => {
          e.preventDefault();
          void give();
        }}
      >
        {field}
        <p class="note">{workWords.dueAgain(dueAgain(moved, props.snapshot.kart))}</p>
        {refusal}
        <div class="answers">
          <button type="button" class="button" onClick={() => ask('result')}>
            {workWords.back}
          </button>
          <button type="submit" class="button main" disabled={busy || reading.trim() === ''}>
            {busy ? workWords.writing : workWords.iSet}
          </button>
        </div>
      </form>
    );
  if (asking !== 'result') {
    const fails = asking === 'fail';
    return (
      <form
        ref={form}
        inert={isSent}
        onSubmit={e => {
          e.preventDefault();
          void give();
        }}
      >
        {fails ? (
          <>
            {field}
            <label for="words">{workWords.whatIsWrong}</label>
            <textarea id="words" required value={words} onInput={e => setWords(e.currentTarget.value)} />
            <PhotoField
              id="step-photo"
              hash={photo}
              session={session}
              onPhoto={setPhoto}
              keeping={keeping}
              onKeeping={setKeeping}
            />
          </>
        ) : (
          <Cannot why={why} onlyPutOff={handling} onWhy={setWhy} words={because} onWords={setBecause} />
        )}
        {refusal}
        <div class="answers">
          <button type="button" class="button" onClick={() => ask('result')}>
            {workWords.back}
          </button>
          <button
            type="submit"
            class="button main"
            disabled={busy || keeping || (fails ? words : because).trim() === ''}
          >
            {busy ? workWords.writing : fails ? workWords.recordFail : workWords.record}
          </button>
        </div>
      </form>
    );
  }
  return (
    <form
      ref={form}
      inert={isSent}
      onSubmit={e => {
        e.preventDefault();
        void give();
      }}
    >
      {step.action === 'second-look' && <p class="note">{workWords.lookWithYourOwnEyes}</p>}
      {begun && (
        <p class="note need" role="status">
          {workWords.walkRoundBegun}
        </p>
      )}
      {step.mends !== null && (
        <>
          <label for="words">{workWords.howItWasMended}</label>
          <textarea id="words" required value={words} onInput={e => setWords(e.currentTarget.value)} />
        </>
      )}
      {step.fresh && (
        <>
          <label for="words">{workWords.hoursNewOneHasRun}</label>
          <CountField id="words" keys={choices} unit="h" placeholder={workWords.none} text={words} onText={setWords} />
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
          {busy ? workWords.writing : didOf(step)}
        </button>
        {!handling && (
          <button type="button" class="button big" disabled={busy} onClick={() => ask('fail')}>
            {workWords.itFails}
          </button>
        )}
        <button
          type="button"
          class={handling ? 'button full' : 'button big'}
          disabled={busy}
          onClick={() => ask('not possible')}
        >
          {handling ? workWords.notNow : workWords.notDone}
        </button>
        {moved !== undefined && (
          <button type="button" class="button plain full" disabled={busy} onClick={() => ask('set')}>
            {workWords.iHadToSet}
          </button>
        )}
      </div>
    </form>
  );
}

const NOTHING = { problems: [], again: undefined };
