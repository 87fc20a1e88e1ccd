import { useEffect, useState } from 'preact/hooks';
import type { Plan, Step } from '../../prep/index.ts';
import { Glyph } from '../glyph.tsx';
import { PrintTitle } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { actionOf, spanOf, titleOf } from '../words.ts';
import { StepCard } from './step.tsx';
import { Undo } from './undo.tsx';

/** The plan, one step at a time, with the list of all of them beside. */
export function Work(props: {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
  readonly step: string | undefined;
  readonly go: (step: string | undefined) => void;
}) {
  const { snapshot, go } = props;
  const { plan } = snapshot;
  const current = plan.steps.find(s => s.key === props.step) ?? (props.step === undefined ? nextStep(plan) : undefined);
  const left = plan.steps.filter(s => s.state !== 'done');
  const named = current?.key;
  useEffect(() => {
    if (props.step === undefined && named !== undefined) go(named); // so that a reload finds the same step
  }, [props.step, named]);

  return (
    <>
      <div class="work no-print">
        <div>
          <Undo snapshot={snapshot} session={props.session} who={props.who} />
          {current ? (
            <StepCard
              key={current.key}
              step={current}
              of={plan.steps.length}
              snapshot={snapshot}
              session={props.session}
              keep={props.keep}
              who={props.who}
              onWritten={() => go(nextStep(props.session.view().snapshot?.plan ?? plan, current)?.key)}
            />
          ) : (
            <Elsewhere plan={plan} go={go} gone={props.step !== undefined} />
          )}
        </div>
        <section aria-label="All steps">
          <div class="bar">
            <b>
              {left.length} of {plan.steps.length} steps to do, {spanOf(plan.minutes)}
            </b>
            <button type="button" class="button plain" onClick={() => window.print()}>
              Print the work list
            </button>
          </div>
          <StepList plan={plan} current={current?.key} />
        </section>
      </div>
      <WorkList snapshot={snapshot} />
    </>
  );
}

/** The step to offer: the first that can be done after this one, else the first that can be done at all. */
export function nextStep(plan: Plan, after?: Step): Step | undefined {
  const ready = plan.steps.filter(s => s.state === 'ready');
  const place = after === undefined ? undefined : plan.steps.find(s => s.key === after.key && s.state !== 'done');
  const from = place?.n ?? 0;
  return ready.find(s => s.n > from) ?? ready[0] ?? plan.steps.find(s => s.state !== 'done');
}

function Elsewhere(props: {
  readonly plan: Plan;
  readonly go: (step: string | undefined) => void;
  readonly gone: boolean;
}) {
  const next = nextStep(props.plan);
  return (
    <div class="step">
      <div class="step-body">
        <h1>{next ? 'This step is no longer in the plan' : 'All steps are done'}</h1>
        <p class="soft">
          {next
            ? 'Someone did it, or something found since changed the plan.'
            : 'What the record shows against running, if anything, stands on the sheet Fit.'}
        </p>
        <div class="answers">
          {next ? (
            <button type="button" class="button main big full" onClick={() => props.go(next.key)}>
              Next: {next.title}
            </button>
          ) : (
            <a class="button main big full" href={hashOf({ sheet: 'fit' })}>
              See whether it is fit
            </a>
          )}
        </div>
      </div>
    </div>
  );
}

function StepList({ plan, current }: { readonly plan: Plan; readonly current: string | undefined }) {
  const [showDone, setShowDone] = useState(false);
  const done = plan.steps.filter(s => s.state === 'done').length;
  const steps = showDone ? plan.steps : plan.steps.filter(s => s.state !== 'done' || s.key === current);
  return (
    <>
      {done > 0 && (
        <button type="button" class="button plain wide" aria-expanded={showDone} onClick={() => setShowDone(!showDone)}>
          <Glyph sign="done" /> {showDone ? 'Hide' : 'Show'} {done} done
        </button>
      )}
      <ol class="steps">
        {steps.map(s => (
          <li key={s.key}>
            <a href={hashOf({ sheet: 'work', step: s.key })} aria-current={s.key === current ? 'step' : undefined}>
              <Glyph sign={s.state} />
              <span class="n">{s.n}</span>
              <span>
                {s.title}
                {s.item !== null && s.part !== null && <span class="soft"> {s.part}</span>}
              </span>
              <span class="word">{s.state}</span>
            </a>
          </li>
        ))}
      </ol>
    </>
  );
}

/** The same plan for a clipboard: numbers, targets, a box to tick, room for what was read. */
function WorkList({ snapshot }: { readonly snapshot: Snapshot }) {
  const { plan, kart } = snapshot;
  const toDo = plan.steps.filter(s => s.state !== 'done');
  return (
    <section class="only-print">
      <PrintTitle title="Work list" kart={kart.name} event={plan.event} invented={kart.invented} />
      <table class="print">
        <thead>
          <tr>
            <th>No.</th>
            <th>Step, and why</th>
            <th>Target, tolerance</th>
            <th class="hand">Read, by</th>
            <th class="tick">Done</th>
          </tr>
        </thead>
        <tbody>
          {toDo.map(s => (
            <tr key={s.key}>
              <td>{s.n}</td>
              <td>
                <b>{actionOf(s)}</b>: {titleOf(s)}
                {s.item !== null && ` (${s.part})`}. {s.why}
                {s.caution !== null && (
                  <>
                    <br />
                    <b>Caution: {s.caution}</b>
                  </>
                )}
              </td>
              <td>{[...new Set([s.target?.text, s.tolerance?.text])].filter(Boolean).join('; ') || s.accept}</td>
              <td class="hand" />
              <td class="tick">☐</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        The maker's manual, the rules of the class and local law win over any figure here. In doubt about brakes,
        steering or a crack, ask a qualified person.
      </p>
    </section>
  );
}
