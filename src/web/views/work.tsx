import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { openOf } from '../../app/index.ts';
import type { Plan, Step } from '../../prep/index.ts';
import { useChanges } from '../changes.ts';
import { useAwake } from '../interruption/awake.ts';
import type { Away } from '../interruption/away.ts';
import { BackAgain } from '../interruption/back-again.tsx';
import { lastDone } from '../interruption/last-done.ts';
import { afterPaint, Later } from '../later.tsx';
import { OpenList } from '../lies-open/list.tsx';
import { OnPaper } from '../on-paper.tsx';
import { hashOf, type Keep } from '../place.ts';
import { useAhead } from '../plan/ahead.ts';
import { type Crew, isAlone, keepCrew } from '../plan/crew.ts';
import { StepList } from '../plan/list.tsx';
import { nextStep } from '../plan/next-step.ts';
import { Statement } from '../plan/statement.tsx';
import { WhoAndWhen } from '../plan/who-and-when.tsx';
import { WorkList } from '../plan/work-list.tsx';
import type { Session, Snapshot } from '../session.ts';
import { keepPrinted } from '../type-in/printed.ts';
import { pageWords } from '../words/page.ts';
import { spanOf } from '../words/reads.ts';
import { workWords } from '../words/work.ts';
import { type Card, Deck } from './deck.tsx';
import { halfTyped } from './half-typed.ts';
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
  useChanges(props.away);
  useEffect(() => {
    const printed = (): void => keepPrinted(props.keep, kart.name, plan.steps, new Date().toISOString());
    window.addEventListener('beforeprint', printed);
    return () => window.removeEventListener('beforeprint', printed);
  }, [props.keep, kart, plan]);
  const [last, ...before] = lastDone(snapshot.facts, kart, props.who);
  const back = last === undefined ? undefined : props.away.asks(kart.name);
  useEffect(() => {
    if (props.step === undefined && named !== undefined) go(named); // so that a reload finds the same step
  }, [props.step, named]);

  // Where the person is by now: a card that is written late must not move on somebody who went to another step.
  const at = useRef(props.step);
  at.current = props.step;
  useLayoutEffect(
    () => () => {
      at.current = ''; // the sheet was left
    },
    [],
  );
  const ahead = useAhead(plan, current);
  // What is chosen for every step, an instrument or the keys, is another one on each card at once.
  const [chosen, choose] = useState(0);
  const choices: Keep = {
    get: props.keep.get,
    set(key, value) {
      props.keep.set(key, value);
      choose(n => n + 1);
    },
  };
  useAwake(current !== undefined && back === undefined);
  const card = (step: Step, plan: Plan): Card => ({
    key: step.key,
    of: [step, plan, kart, snapshot.state, crew, props.who, view.writing, chosen],
    draw: () => (
      <StepCard
        step={step}
        of={plan.steps.length}
        snapshot={{ ...snapshot, plan }}
        crew={crew}
        session={props.session}
        keep={halfTyped(props.keep, kart.name, step, snapshot.state)}
        choices={choices}
        who={props.who}
        onFind={step => beginFind(props.keep, kart.name, step.part ?? '', step.grade)}
        onWritten={() => {
          props.away.worked(kart.name);
          if (at.current !== undefined && at.current !== step.key) return;
          setWritten(step);
          go(nextStep(props.session.view().snapshot?.plan ?? plan, step)?.key);
        }}
      />
    ),
  });

  // A step that was written leaves the page, and the button that had the focus with it: the next one is gone to, and read out.
  const here = useRef<HTMLDivElement>(null);
  const [written, setWritten] = useState<Step>();
  useEffect(() => {
    if (written === undefined) return;
    return afterPaint(() => here.current?.querySelector<HTMLElement>(':not(.beneath) > .step h1')?.focus());
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
          {back && view.stood !== undefined ? (
            <p class="loading">{pageWords.readingBook}</p> // on a sheet of before the last step may be another one
          ) : back && last ? (
            <BackAgain
              key={last.fact}
              done={[last, ...before]}
              {...back}
              session={props.session}
              onTouched={() => props.away.back(kart.name)}
            />
          ) : current ? (
            <Deck seen={card(current, plan)} beneath={ahead && card(ahead.step, ahead.plan)} />
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
          <Later of={[kart, snapshot.state, plan, crew]}>
            <OpenList snapshot={snapshot} />
            {!isAlone(crew) && <AsBars plan={plan} crew={crew} />}
          </Later>
          <Later of={[plan, crew, current?.key]}>
            <StepList plan={plan} crew={crew} current={current?.key} />
          </Later>
          <a class="button plain wide head-gap" href={hashOf({ sheet: 'type-in' })}>
            {workWords.typeInListThatWas}
          </a>
        </section>
      </div>
      <OnPaper>
        <WorkList snapshot={snapshot} />
      </OnPaper>
      {!isAlone(crew) && <PrintByPerson plan={plan} crew={crew} />}
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
