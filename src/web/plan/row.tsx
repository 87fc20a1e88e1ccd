/** What a row says of hands, time and reason: beneath its title, and unfolded. */
import { useState } from 'preact/hooks';
import type { Plan, Step } from '../../prep/index.ts';
import { planWords } from '../words/plan.tsx';
import type { Crew } from './crew.ts';
import { isAlone } from './crew.ts';
import { helpOf, learntOf, startOf, whoOf, whyOf } from './said.ts';

/** 'J. Moor, 18:05'; nothing where nobody asked who and when. */
export function whoAndWhen(plan: Plan, crew: Crew, step: Step): string {
  if (step.state === 'done' || isAlone(crew)) return '';
  return [crew.people > 1 ? whoOf(crew, step) : '', startOf(plan, step)].filter(Boolean).join(', ');
}

/** Why now, and the minutes learnt on this kart. */
export function Reasons({ step }: { readonly step: Step }) {
  const lines = [...whyOf(step), learntOf(step) ?? ''].filter(Boolean);
  return (
    <div class="reasons">
      {lines.length === 0 && <p>{planWords.reasonsAreStillBeing}</p>}
      {lines.map(line => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

/** On the step itself: who, when, whose help, and how long closing up takes from here. */
export function StepHands(props: { readonly step: Step; readonly plan: Plan; readonly crew: Crew }) {
  const { step, plan, crew } = props;
  const [unfolded, unfold] = useState<string>();
  if (step.state === 'done') return null;
  const help = helpOf(step);
  const who = whoAndWhen(plan, crew, step);
  const closing = step.closing === null || step.closing < 1 ? undefined : Math.ceil(step.closing);
  return (
    <>
      {help !== undefined && (
        <p class="note need">
          <b>{help}</b>
        </p>
      )}
      {/* The same one for every step, and folded at the next: a browser takes long to make one. */}
      <details
        class="hands"
        open={unfolded === step.key}
        onToggle={e => unfold(e.currentTarget.open ? step.key : undefined)}
      >
        <summary>
          {who === '' ? planWords.whyNow : planWords.whyNowOf(who)}
          {closing !== undefined && <span class="soft">{planWords.minToCloseUp(closing)}</span>}
        </summary>
        <Reasons step={step} />
      </details>
    </>
  );
}
