import type { Step } from '../../prep/index.ts';
import { KartDrawing } from '../drawing/kart-drawing.tsx';
import { useAwake } from '../interruption/awake.ts';
import { Caution } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Crew } from '../plan/crew.ts';
import { StepHands } from '../plan/row.tsx';
import type { Session, Snapshot } from '../session.ts';
import { actionOf, capital, spanOf, titleOf } from '../words.ts';
import { Answers } from './answers.tsx';
import { partsOff } from './kart.tsx';
import { ReadOut } from './read-out.tsx';

/** One step as it is done: caution first, the number large, then the answers. */
export function StepCard(props: {
  readonly step: Step;
  readonly of: number;
  readonly snapshot: Snapshot;
  readonly crew: Crew;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
  readonly onWritten: () => void;
  /** Something else is wrong at the place of the step. */
  readonly onFind: (step: Step) => void;
}) {
  const { step, snapshot } = props;
  useAwake();
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
        <ReadOut key={step.key} step={step} />
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
        {step.part !== null && step.state !== 'done' && (
          <button type="button" class="button plain wide head-gap" onClick={() => props.onFind(step)}>
            Write down a find here, with a photo
          </button>
        )}
        <StepHands step={step} plan={snapshot.plan} crew={props.crew} />
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
