import type { Step } from '../../prep/index.ts';
import { aimsOf } from '../choice/aims.ts';
import { withOwnDays } from '../choice/dates.ts';
import { drawnOn } from '../dimensioned/which.ts';
import { partsOff } from '../drawing/parts-off.ts';
import { Later } from '../later.tsx';
import { Caution } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Crew } from '../plan/crew.ts';
import { StepHands } from '../plan/row.tsx';
import type { Session, Snapshot } from '../session.ts';
import { aimsWords } from '../words/aims.ts';
import { actionOf, capital, spanOf, titleOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';
import { Answers } from './answers.tsx';
import type { HalfTyped } from './half-typed.ts';
import { Locator } from './locator.tsx';
import { ReadOut } from './read-out.tsx';

/** One step as it is done: caution first, the number large, then the answers. */
export function StepCard(props: {
  readonly step: Step;
  readonly of: number;
  readonly snapshot: Snapshot;
  readonly crew: Crew;
  readonly session: Session;
  readonly keep: HalfTyped;
  /** What is chosen here is chosen for every step. */
  readonly choices: Keep;
  readonly who: string;
  readonly onWritten: () => void;
  /** Something else is wrong at the place of the step. */
  readonly onFind: (step: Step) => void;
}) {
  const { step, snapshot } = props;
  const item = step.item === null ? undefined : snapshot.kart.items[step.item];
  const drawing = item && step.action !== 'second-look' ? drawnOn(item) : undefined; // which shows the first result
  return (
    <article class="step" aria-label={workWords.stepName(step.n)} onClickCapture={notTwice}>
      <header>
        <b>{actionOf(step)}</b>
        <span>{workWords.stepOf(step.n, props.of)}</span>
        <span>{spanOf(step.minutes)}</span>
      </header>
      <div class="step-body">
        <h1 tabIndex={-1}>{titleOf(step)}</h1>
        <p class="soft">
          {step.item !== null && step.part !== null ? `${step.part}. ` : ''}
          {capital(withOwnDays(step.why))}
        </p>
        <Caution text={step.caution} />
        <Target step={step} />
        {step.how !== '' && <p>{step.how}</p>}
        {step.accept !== '' && (
          <p>
            <span class="soft">{workWords.holdsWhen} </span>
            {step.accept}
          </p>
        )}
        <ReadOut step={step} />
        {step.state === 'ready' && <Answers {...props} />}
        {step.state === 'waiting' && <Waits step={step} snapshot={snapshot} />}
        {step.state === 'done' && (
          <>
            <p class="note">{workWords.thisStepIsDoneWrong}</p>
            <button type="button" class="button main big wide" onClick={props.onWritten}>
              {workWords.nextStep}
            </button>
          </>
        )}
        {step.part !== null && step.state !== 'done' && (
          <button type="button" class="button plain wide head-gap" onClick={() => props.onFind(step)}>
            {workWords.writeDownFindHere}
          </button>
        )}
        {drawing !== undefined && step.item !== null && (
          <a class="button plain wide head-gap" href={hashOf({ sheet: 'drawing', about: step.item })}>
            {workWords.onDrawing[drawing]}
          </a>
        )}
        <StepHands step={step} plan={snapshot.plan} crew={props.crew} />
        <Fine step={step} />
        {step.part !== null && (
          <div class="locator">
            <Later of={[snapshot.kart, snapshot.state, step.part]}>
              <Locator
                kart={snapshot.kart}
                marks={[]}
                off={partsOff(snapshot)}
                here={step.part}
                title={workWords.whereOnKart(step.part)}
              />
            </Later>
          </div>
        )}
      </div>
    </article>
  );
}

function Target({ step }: { readonly step: Step }) {
  const { target, allowed, given } = aimsOf(step);
  if (target === '' && allowed === '') return null;
  return (
    <>
      <dl class="target">
        {target !== '' && (
          <div>
            <dt>{workWords.targetLabel}</dt>
            <dd>
              <Amount text={target} />
            </dd>
          </div>
        )}
        {allowed !== '' && (
          <div>
            <dt>{workWords.allowed}</dt>
            <dd>
              <Amount text={allowed} />
            </dd>
          </div>
        )}
      </dl>
      {given !== '' && <p class="soft">{capital(aimsWords.givenAs(given))}</p>}
    </>
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
    [workWords.tools, step.tools.join(', ')],
    [workWords.consumables, step.consumables.join(', ')],
    [workWords.kart, step.posture === 'any' ? '' : workWords.onThe(step.posture)],
    [workWords.grade, step.grade],
    [workWords.source, step.source],
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
        <b>{workWords.waits}</b>
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

/** The second tap of a double one was meant for the step that stood here before. */
function notTwice(tap: MouseEvent): void {
  const answers = tap.target instanceof Element && tap.target.closest('.answers .main') !== null;
  if (!answers || tap.detail < 2) return;
  tap.preventDefault();
  tap.stopPropagation();
}
