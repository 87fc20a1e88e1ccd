import { useEffect, useRef, useState } from 'preact/hooks';
import { openOf } from '../../app/index.ts';
import type { Plan, Step } from '../../prep/index.ts';
import { aimsSaid } from '../choice/aims.ts';
import { withOwnDays } from '../choice/dates.ts';
import { Glyph } from '../glyph.tsx';
import type { Away } from '../interruption/away.ts';
import { BackAgain } from '../interruption/back-again.tsx';
import { lastDone } from '../interruption/last-done.ts';
import { Later } from '../later.tsx';
import { OpenList } from '../lies-open/list.tsx';
import { PrintSign, PrintTitle } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import { type Crew, isAlone, keepCrew } from '../plan/crew.ts';
import { nextStep } from '../plan/next-step.ts';
import { Reasons, whoAndWhen } from '../plan/row.tsx';
import { Statement } from '../plan/statement.tsx';
import { WhoAndWhen } from '../plan/who-and-when.tsx';
import type { Session, Snapshot } from '../session.ts';
import { keepPrinted } from '../type-in/printed.ts';
import { actionOf, spanOf, titleOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';
import { Picture, PrintByPerson } from './picture.tsx';
import { signedSince } from './signed.ts';
import { StepCard } from './step.tsx';
import { Undo } from './undo.tsx';
import { beginFind } from './writing.ts';

/** The plan, one step at a time, with the list of all of them beside. */
export function Work(props: {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly away: Away;
  readonly who: string;
  readonly step: string | undefined;
  readonly go: (step: string | undefined) => void;
}) {
  const { snapshot, go } = props;
  const { plan, kart } = snapshot;
  const view = props.session.view();
  const { planner } = props.session;
  const { crew } = view;
  // What was done and is due again stands twice under one name: the one that is to do is meant.
  const asked = plan.steps.filter(s => s.key === props.step);
  const current =
    asked.find(s => s.state !== 'done') ?? asked[0] ?? (props.step === undefined ? nextStep(plan) : undefined);
  const left = plan.steps.filter(s => s.state !== 'done');
  const named = current?.key;
  const [, redraw] = useState(0);
  useEffect(() => props.away.onChange(() => redraw(n => n + 1)), [props.away]);
  useEffect(() => {
    const printed = (): void => keepPrinted(props.keep, kart.name, plan.steps, new Date().toISOString());
    window.addEventListener('beforeprint', printed);
    return () => window.removeEventListener('beforeprint', printed);
  }, [props.keep, kart, plan]);
  const [last, ...before] = lastDone(snapshot.facts, kart, props.who);
  const back = last === undefined ? undefined : props.away.asks();
  useEffect(() => {
    if (props.step === undefined && named !== undefined) go(named); // so that a reload finds the same step
  }, [props.step, named]);

  // A step that was written leaves the page, and the button that had the focus with it: the next one is gone to, and read out.
  const here = useRef<HTMLDivElement>(null);
  const [written, setWritten] = useState<Step>();
  useEffect(() => {
    if (written !== undefined) here.current?.querySelector<HTMLElement>('.step h1')?.focus();
  }, [written, named]);

  return (
    <>
      <Statement plan={plan} view={view} planner={planner} />
      <div class="work no-print">
        <div ref={here}>
          <p class="unseen" role="status">
            {written && workWords.stepIsWritten(written.n)}
          </p>
          <Undo
            snapshot={snapshot}
            session={props.session}
            who={props.who}
            blindTo={current?.action === 'second-look' ? (current.item ?? undefined) : undefined}
          />
          {back && last ? (
            <BackAgain done={[last, ...before]} {...back} session={props.session} onTouched={props.away.back} />
          ) : current ? (
            <StepCard
              key={current.key}
              step={current}
              of={plan.steps.length}
              snapshot={snapshot}
              crew={crew}
              session={props.session}
              keep={props.keep}
              who={props.who}
              onFind={step => beginFind(props.keep, step.part ?? '', step.grade)}
              onWritten={() => {
                props.away.worked();
                setWritten(current);
                go(nextStep(props.session.view().snapshot?.plan ?? plan, current)?.key);
              }}
            />
          ) : (
            <Elsewhere snapshot={snapshot} go={go} />
          )}
        </div>
        <section aria-label={workWords.allSteps}>
          <div class="bar list-head">
            <b>{workWords.ofStepsToDo(left.length, plan.steps.length, spanOf(plan.minutes))}</b>
            <button
              type="button"
              class="button plain small"
              aria-label={workWords.printWorkList}
              onClick={() => window.print()}
            >
              {workWords.print}
            </button>
          </div>
          <WhoAndWhen
            crew={crew}
            who={props.who}
            onSaid={said => {
              keepCrew(props.keep, kart.name, said);
              planner.setCrew(said);
            }}
          />
          <Later of={[plan, kart, snapshot.state, crew, current?.key]}>
            <OpenList snapshot={snapshot} />
            {!isAlone(crew) && <AsBars plan={plan} crew={crew} />}
            <StepList plan={plan} crew={crew} current={current?.key} />
          </Later>
          <a class="button plain wide head-gap" href={hashOf({ sheet: 'type-in' })}>
            {workWords.typeInListThatWas}
          </a>
        </section>
      </div>
      <Later of={[plan, kart, crew]}>
        <WorkList snapshot={snapshot} />
        {!isAlone(crew) && <PrintByPerson plan={plan} crew={crew} />}
      </Later>
    </>
  );
}

/** No step to show: someone was quicker, or the plan is worked off and what remains is a person's decision. */
function Elsewhere({ snapshot, go }: { readonly snapshot: Snapshot; readonly go: (step: string) => void }) {
  const next = nextStep(snapshot.plan);
  if (next !== undefined)
    return (
      <div class="step">
        <div class="step-body">
          <h1 tabIndex={-1}>{workWords.thisStepIsNoLonger}</h1>
          <p class="soft">{workWords.someoneDid(snapshot.plan.leftOut.length)}</p>
          <div class="answers">
            <button type="button" class="button main big full" onClick={() => go(next.key)}>
              {workWords.next(next.title)}
            </button>
          </div>
        </div>
      </div>
    );
  const open = openOf(snapshot.fitness).length;
  const signed = signedSince(snapshot);
  return (
    <div class="step">
      <header>
        <b>{workWords.work}</b>
        <span>{signed ? workWords.doneAndSigned : workWords.doneToBeSigned}</span>
      </header>
      <div class="step-body">
        <h1 tabIndex={-1}>{workWords.allStepsAreDone}</h1>
        <p class="soft">
          {signed
            ? workWords.signedByAsNothingWas(signed.signer, signed.verdict)
            : workWords.whatRemainsPersonLooks(open)}
        </p>
        <div class="answers">
          <a class="button main big full" href={hashOf({ sheet: 'fit' })}>
            {signed ? workWords.seeRelease : workWords.seeWhetherItIsFit}
          </a>
        </div>
      </div>
    </div>
  );
}

function AsBars(props: { readonly plan: Plan; readonly crew: Crew }) {
  const [open, setOpen] = useState(false);
  return (
    <details class="group" onToggle={e => setOpen(e.currentTarget.open)}>
      <summary>
        <h2>
          {workWords.asBars} <span>{workWords.whoDoesWhatWhen}</span>
        </h2>
      </summary>
      {open && <Picture {...props} />}
    </details>
  );
}

function StepList(props: { readonly plan: Plan; readonly crew: Crew; readonly current: string | undefined }) {
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

function Steps(props: {
  readonly title: string;
  readonly steps: readonly Step[];
  readonly plan: Plan;
  readonly crew: Crew;
  readonly current: string | undefined;
}) {
  const { title, steps, plan, crew, current } = props;
  const [asked, setAsked] = useState<string>();
  if (steps.length === 0) return null;
  return (
    <section class="group">
      <h2>
        {title} <span>{steps.length}</span>
      </h2>
      <ol class="steps">
        {steps.map(s => (
          <li key={s.key}>
            <a href={hashOf({ sheet: 'work', step: s.key })} aria-current={s.key === current ? 'step' : undefined}>
              <Glyph sign={s.state} />
              <span class="n">{s.n}</span>
              <span>
                <b class="verb">{actionOf(s)}</b> {titleOf(s)}
                {s.item !== null && s.part !== null && <span class="soft"> {s.part}</span>}
                <span class="meta">{metaOf(s, whoAndWhen(plan, crew, s))}</span>
              </span>
            </a>
            {s.state !== 'done' && (
              <button
                type="button"
                class="why"
                aria-expanded={asked === s.key}
                aria-label={workWords.whyNowStep(s.n)}
                onClick={() => setAsked(asked === s.key ? undefined : s.key)}
              >
                {workWords.why}
              </button>
            )}
            {asked === s.key && <Reasons step={s} />}
          </li>
        ))}
      </ol>
    </section>
  );
}

const metaOf = (step: Step, who: string): string =>
  [
    spanOf(step.minutes),
    who,
    step.state === 'waiting' ? `after ${step.after.slice(0, 2).join(', ')}` : '',
    step.helpers > 0 ? workWords.needsHelp : '',
  ]
    .filter(Boolean)
    .join(' · ');

/** The same plan for a clipboard: numbers, targets, a box to tick, room for what was read. */
function WorkList({ snapshot }: { readonly snapshot: Snapshot }) {
  const { plan, kart } = snapshot;
  const toDo = plan.steps.filter(s => s.state !== 'done');
  return (
    <section class="only-print">
      <PrintTitle title={workWords.workList} kart={kart.name} event={plan.event} invented={kart.invented} />
      <table class="print">
        <thead>
          <tr>
            <th>{workWords.no}</th>
            <th>{workWords.stepAndWhy}</th>
            <th class="limits">{workWords.targetTolerance}</th>
            <th class="hand">{workWords.read}</th>
            <th class="tick">{workWords.doneHead}</th>
          </tr>
        </thead>
        <tbody>
          {toDo.map(s => (
            <tr key={s.key}>
              <td>{s.n}</td>
              <td>
                <b>{actionOf(s)}</b>: {titleOf(s)}
                {s.item !== null && ` (${s.part})`}. {withOwnDays(s.why)}
                {s.caution !== null && (
                  <>
                    <br />
                    <b>{workWords.cautionOnPaper(s.caution)}</b>
                  </>
                )}
              </td>
              <td>{aimsSaid(s) || s.accept}</td>
              <td class="hand" />
              <td class="tick">☐</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="head-gap">{workWords.makersManualRules}</p>
      <PrintSign who={workWords.signatureOfWhoWorked} />
    </section>
  );
}
