import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Step } from '../../prep/index.ts';
import { type Answer, adjustable, draftsOf, dueAgain, isHandling } from '../answer.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { Glyph } from '../glyph.tsx';
import { Caution, Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { actionOf, capital, didOf, spanOf, titleOf } from '../words.ts';
import { partsOff } from './kart.tsx';

type Asking = 'result' | 'fail' | 'not possible' | 'set';

/** One step as it is done: caution first, the number large, then the answers. What was typed outlives a reload. */
export function StepCard(props: {
  readonly step: Step;
  readonly of: number;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
  readonly onWritten: () => void;
}) {
  const { step, snapshot } = props;
  return (
    <article class="step" aria-label={`Step ${step.n}`}>
      <header>
        <b>{actionOf(step)}</b>
        <span>
          Step {step.n} of {props.of}
        </span>
        <span>{spanOf(step.minutes)}</span>
      </header>
      <div class="step-body">
        <h1>{titleOf(step)}</h1>
        <p class="soft">
          {step.item !== null && step.part !== null ? `${step.part}. ` : ''}
          {capital(step.why)}
        </p>
        <Caution text={step.caution} />
        <Target step={step} />
        {step.how !== '' && <p>{step.how}</p>}
        {step.accept !== '' && (
          <p>
            <span class="soft">Holds when: </span>
            {step.accept}
          </p>
        )}
        {step.state === 'ready' && <Answers {...props} />}
        {step.state === 'waiting' && <Waits step={step} snapshot={snapshot} />}
        {step.state === 'done' && (
          <>
            <p class="note">This step is done. A wrong entry is struck on the sheet Record.</p>
            <button type="button" class="button main big wide" onClick={props.onWritten}>
              Next step
            </button>
          </>
        )}
        <Fine step={step} />
        {step.part !== null && (
          <div class="locator">
            <KartDrawing
              kart={snapshot.kart}
              marks={[]}
              off={partsOff(snapshot)}
              here={step.part}
              title={`Where on the kart: ${step.part}`}
            />
          </div>
        )}
      </div>
    </article>
  );
}

function Target({ step }: { readonly step: Step }) {
  if (step.target === null && step.tolerance === null) return null;
  const same = step.target?.text === step.tolerance?.text;
  return (
    <dl class="target">
      {step.target && (
        <div>
          <dt>Target</dt>
          <dd>
            <Amount text={step.target.text} />
          </dd>
        </div>
      )}
      {step.tolerance && step.tolerance.text !== '' && !same && (
        <div>
          <dt>Allowed</dt>
          <dd>
            <Amount text={step.tolerance.text} />
          </dd>
        </div>
      )}
    </dl>
  );
}

/** '142.55 mm (5 5/8 in)' with what it is on a tape as a figure of its own, never broken inside. */
function Amount({ text }: { readonly text: string }) {
  const [, main = text, tape] = /^(.*?) \(([^()]*)\)$/.exec(text) ?? [];
  return (
    <>
      <span class="amount">{main}</span>
      {tape !== undefined && <span class="amount tape">{tape}</span>}
    </>
  );
}

function Fine({ step }: { readonly step: Step }) {
  const lines = [
    ['Tools', step.tools.join(', ')],
    ['Consumables', step.consumables.join(', ')],
    ['Kart', step.posture === 'any' ? '' : `on the ${step.posture}`],
    ['Grade', step.grade],
    ['Source', step.source],
  ].filter(([, text]) => text !== '');
  return (
    <dl class="target fine">
      {lines.map(([label, text]) => (
        <div key={label} class="fine">
          <dt>{label}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

function Waits({ step, snapshot }: { readonly step: Step; readonly snapshot: Snapshot }) {
  const first = snapshot.plan.steps.filter(s => step.after.includes(s.n));
  return (
    <div class="note">
      <p>
        <b>Waits for:</b>
      </p>
      <ul>
        {first.map(s => (
          <li key={s.key}>
            {s.n} {s.title}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Answers(props: Parameters<typeof StepCard>[0]) {
  const { step, keep, session } = props;
  const [asking, setAsking] = useState<Asking>((keep.get(`asking ${step.key}`) as Asking) || 'result');
  const [reading, setReading] = useKept(keep, `reading ${step.key}`);
  const [words, setWords] = useKept(keep, `words ${step.key}`);
  const [refused, setRefused] = useState<{ problems: readonly Problem[]; again: Answer | undefined }>({
    problems: [],
    again: undefined,
  });
  const busy = session.view().writing;

  const ask = (next: Asking): void => {
    keep.set(`asking ${step.key}`, next === 'result' ? '' : next);
    setAsking(next);
    setRefused({ problems: [], again: undefined });
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
  const value = reading.trim() === '' ? {} : { reading };
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
          onInput={e => setReading(e.currentTarget.value)}
        />
        <span>{step.unit}</span>
      </div>
      <p class="soft">A number is in {step.unit}; any other unit you write with it, like 5 3/4 in.</p>
    </>
  );

  const moved = adjustable(step, props.snapshot.kart);
  if (asking === 'set' && moved !== undefined)
    return (
      <form
        onSubmit={e => {
          e.preventDefault();
          void give({ is: 'set', reading: reading.trim() });
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
        void give({ is: 'done', ...value });
      }}
    >
      {step.action === 'second-look' && (
        <p class="note">Look with your own eyes, as if nobody had. The first result is not shown here.</p>
      )}
      {field}
      {refusal}
      <div class="answers">
        <button type="submit" class="button main big full" disabled={busy}>
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
