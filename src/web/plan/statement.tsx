/** On top of the work: what does not fit, what a new plan does otherwise, how far the search has come. */
import type { Plan, PlanDifference, Step } from '../../prep/index.ts';
import { Glyph } from '../glyph.tsx';
import type { View } from '../view.ts';
import { planWords } from '../words/plan.tsx';
import { actionOf, capital, spanOf, titleOf } from '../words/reads.ts';
import { isAlone } from './crew.ts';
import type { Planner } from './planner.ts';
import { bestOf, changeOf, enterOf, shortOf, whenOf } from './said.ts';

type Planning = Pick<Planner, 'stop' | 'seen' | 'again'>;

export function Statement(props: { readonly plan: Plan; readonly view: View; readonly planner: Planning }) {
  const { plan, view, planner } = props;
  const short = shortOf(plan);
  return (
    <div class="statement no-print">
      {short !== undefined && (
        <div class="refused short" role="status">
          <Glyph sign="not fit" />
          <p>
            <b>{short}</b>
          </p>
        </div>
      )}
      {!isAlone(view.crew) && (
        <div class="found">
          <p role="status" class="soft">
            {foundOf(plan, view)}
          </p>
          <Looking searching={view.searching} planner={planner} />
        </div>
      )}
      {view.changed && <Changed difference={view.changed} onSeen={() => planner.seen()} />}
      {plan.leftOut.length > 0 && <LeftOut plan={plan} />}
    </div>
  );
}

/** One button in one place: if it came and went, what lies beneath would slip away under a thumb. */
const Looking = ({ searching, planner }: { readonly searching: boolean; readonly planner: Planning }) =>
  searching ? (
    <button type="button" class="button" aria-label={planWords.stopLookingKeepBestSo} onClick={() => planner.stop()}>
      {planWords.stop}
    </button>
  ) : (
    <button type="button" class="button plain" aria-label={planWords.againPlanFromNow} onClick={() => planner.again()}>
      {planWords.again}
    </button>
  );

function foundOf(plan: Plan, { crew, searching }: View): string {
  if (searching && plan.people !== crew.people) return planWords.planningForPeople(crew.people);
  return `${bestOf(plan, searching)} ${closingUp(plan)}`;
}

function closingUp(plan: Plan): string {
  const { closeBy } = plan;
  if (closeBy === null) return '';
  return planWords.closingUpTakesAllTime(closeBy, by(whenOf(plan, closeBy)));
}
const by = (when: string): string => (/^(after|at|time) /.test(when) ? when : `by ${when}`);

function LeftOut({ plan }: { readonly plan: Plan }) {
  return (
    <details class="group">
      <summary>
        <h2>
          {planWords.leftOutForWant} <span>{plan.leftOut.length}</span>
        </h2>
      </summary>
      <p class="soft">{enterOf(plan)}</p>
      <ul class="rows">
        {plan.leftOut.map(({ item, title, grade, minutes, consequence, needs }) => (
          <li key={item}>
            <Glyph sign={grade === 'safety' ? 'not fit' : 'waiting'} />
            <div>
              <b>{title}</b> <span class="soft">{item.split('/')[0]}</span>
              <p>
                {capital(grade)}, {spanOf(minutes)}. {consequence}
                {needs !== null && planWords.entersWithInAll(spanOf(Math.ceil(needs)))}
              </p>
            </div>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What a find, a missing part or other hands changed, with the rows folded. */
function Changed({ difference, onSeen }: { readonly difference: PlanDifference; readonly onSeen: () => void }) {
  const { added, dropped, moved } = difference;
  const why = added[0]?.why;
  return (
    <section class="changed" aria-label={planWords.whatChanged} role="status">
      <p>
        <b>{changeOf(difference)}</b> {why !== undefined && planWords.because(why)}
      </p>
      <div class="changed-rows">
        <details>
          <summary>{planWords.showRows}</summary>
          <Rows title={planWords.new} steps={added} />
          <Rows title={planWords.noLongerIn} steps={dropped} />
          <Rows title={planWords.atAnotherPlace} steps={moved} />
        </details>
        <button type="button" class="button plain" onClick={onSeen}>
          {planWords.seen}
        </button>
      </div>
    </section>
  );
}

function Rows({ title, steps }: { readonly title: string; readonly steps: readonly Step[] }) {
  if (steps.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {steps.map(step => (
          <li key={step.key}>
            {actionOf(step)}: {titleOf(step)}
            {step.item !== null && step.part !== null && <span class="soft"> {step.part}</span>}
          </li>
        ))}
      </ul>
    </>
  );
}
