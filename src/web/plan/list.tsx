/** All steps of the plan in a list. Of hundreds of rows only those are drawn again that say something else. */
import { useMemo, useState } from 'preact/hooks';
import type { Plan, Step } from '../../prep/index.ts';
import { Glyph } from '../glyph.tsx';
import { useBites } from '../later.tsx';
import { hashOf } from '../place.ts';
import { actionOf, spanOf, titleOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';
import type { Crew } from './crew.ts';
import { Reasons, whoAndWhen } from './row.tsx';

type ListProps = { readonly plan: Plan; readonly crew: Crew; readonly current: string | undefined };

export function StepList(props: ListProps) {
  const { plan } = props;
  const [showDone, setShowDone] = useState(false);
  const of = (state: Step['state']): readonly Step[] => plan.steps.filter(s => s.state === state);
  const [done, ready, waiting] = [of('done'), of('ready'), of('waiting')];
  return (
    <>
      <Steps {...props} title={workWords.canBeDoneNow} steps={ready} />
      <Steps {...props} title={workWords.waitForOthers} steps={waiting} />
      {done.length > 0 && (
        <button
          type="button"
          class="button plain wide head-gap"
          aria-expanded={showDone}
          onClick={() => setShowDone(!showDone)}
        >
          <Glyph sign="done" /> {workWords.showOrHideDone(showDone, done.length)}
        </button>
      )}
      {showDone && <Steps {...props} title={workWords.doneHead} steps={done} />}
    </>
  );
}

function Steps(props: ListProps & { readonly title: string; readonly steps: readonly Step[] }) {
  const { title, steps, plan, crew, current } = props;
  const [asked, setAsked] = useState<string>();
  const drawn = useBites(steps.length);
  if (steps.length === 0) return null;
  return (
    <section class="group">
      <h2>
        {title} <span>{steps.length}</span>
      </h2>
      <ol class="steps" style={{ containIntrinsicBlockSize: `auto ${drawn * ROW_PX}px` }}>
        {steps.slice(0, drawn).map(s => (
          <Row
            key={s.key}
            step={s}
            meta={metaOf(s, whoAndWhen(plan, crew, s))}
            isCurrent={s.key === current}
            isAsked={asked === s.key}
            ask={setAsked}
          />
        ))}
      </ol>
    </section>
  );
}

/** A row of two lines, for the height of a list that nobody has seen yet. */
const ROW_PX = 88;

type RowProps = {
  readonly step: Step;
  readonly meta: string;
  readonly isCurrent: boolean;
  readonly isAsked: boolean;
  readonly ask: (step: string | undefined) => void;
};

function Row({ step, meta, isCurrent, isAsked, ask }: RowProps) {
  const { key, n, state, part } = step;
  const [verb, title] = [actionOf(step), titleOf(step)];
  return useMemo(
    () => (
      <li>
        <a href={hashOf({ sheet: 'work', step: key })} aria-current={isCurrent ? 'step' : undefined}>
          <Glyph sign={state} />
          <span class="n">{n}</span>
          <span>
            <b class="verb">{verb}</b> {title}
            {step.item !== null && part !== null && <span class="soft"> {part}</span>}
            <span class="meta">{meta}</span>
          </span>
        </a>
        {state !== 'done' && (
          <button
            type="button"
            class="why"
            aria-expanded={isAsked}
            aria-label={workWords.whyNowStep(n)}
            onClick={() => ask(isAsked ? undefined : key)}
          >
            {workWords.why}
          </button>
        )}
        {isAsked && <Reasons step={step} />}
      </li>
    ),
    [key, n, state, verb, title, part, meta, isCurrent, isAsked, isAsked && step],
  );
}

const metaOf = (step: Step, who: string): string =>
  [
    spanOf(step.minutes),
    who,
    step.state === 'waiting' ? workWords.after(step.after.slice(0, 2)) : '',
    step.helpers > 0 ? workWords.needsHelp : '',
  ]
    .filter(Boolean)
    .join(' · ');
