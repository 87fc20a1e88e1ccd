/** The end of the four questions: the plan, what was taken as known, and the way to say it otherwise. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';
import { Cell, Refused, Verdict } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { firstRunWords } from '../words/first-run.ts';
import { actionOf, dayOf, factWords, spanOf, titleOf } from '../words/reads.ts';

export type BegunKart = {
  readonly kart: string;
  /** The facts that say how long it is since the rebuild. */
  readonly hours: readonly string[];
  readonly unknownRunning: boolean;
};

const SLOT = 'begun';
const FIRST_STEPS = 6;

export function begunIn(keep: Keep): BegunKart | undefined {
  try {
    const kept = JSON.parse(keep.get(SLOT) || 'null') as Partial<BegunKart> | null;
    if (typeof kept?.kart !== 'string' || !Array.isArray(kept.hours)) return undefined;
    return { kart: kept.kart, hours: kept.hours, unknownRunning: kept.unknownRunning === true };
  } catch {
    return undefined; // something else wrote there
  }
}

export function keepBegun(keep: Keep, begun?: BegunKart): BegunKart | undefined {
  keep.set(SLOT, begun === undefined ? '' : JSON.stringify(begun));
  return begun;
}

export function Begun(props: {
  readonly begun: BegunKart;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly another: () => void;
}) {
  const { begun, snapshot, another } = props;
  const { plan, kart, fitness, state, due } = snapshot;
  const left = plan.steps.filter(step => step.state !== 'done');
  const event = due.event === null ? undefined : state.events[due.event];
  return (
    <>
      <h1>{firstRunWords.thePlan(kart.name)}</h1>
      <div class="cells head-gap">
        <Cell label={firstRunWords.workToDo}>{firstRunWords.steps(left.length, spanOf(plan.minutes))}</Cell>
        <Cell label={firstRunWords.nextEvent}>
          {event ? firstRunWords.eventOn(event.event, dayOf(event.from)) : firstRunWords.notSaid}
        </Cell>
        <Cell label={firstRunWords.runningExpected}>
          {event
            ? (begun.unknownRunning ? firstRunWords.notKnown : String)(spanOf(event.runMinutes))
            : firstRunWords.notSaid}
        </Cell>
      </div>
      <Verdict fitness={fitness} />
      <a class="button main big wide" href={hashOf({ sheet: 'work' })}>
        {firstRunWords.beginWithFirst}
      </a>
      <section class="group">
        <h2>
          {firstRunWords.firstOfAll} <span>{firstRunWords.ofSteps(left.length)}</span>
        </h2>
        <ol class="steps first-steps">
          {left.slice(0, FIRST_STEPS).map(step => (
            <li key={step.key}>
              <a href={hashOf({ sheet: 'work', step: step.key })}>
                <Glyph sign={step.state} />
                <span class="n">{step.n}</span>
                <span>
                  <span class="verb">{actionOf(step)}</span> {titleOf(step)}
                  {step.item !== null && <span class="soft"> {step.part}</span>}
                </span>
                <span class="word">{spanOf(step.minutes)}</span>
              </a>
            </li>
          ))}
        </ol>
      </section>
      <p class="note">{firstRunWords.nobodyLooked}</p>
      <Hours {...props} />
      <div class="answers">
        <a class="button full" href={hashOf({ sheet: 'build' })}>
          {firstRunWords.build}
        </a>
        <button type="button" class="button plain full" onClick={another}>
          {firstRunWords.anotherKart}
        </button>
      </div>
    </>
  );
}

/** What the plan takes as run already, and the way to take it back. */
function Hours({ begun, snapshot, session }: Pick<Parameters<typeof Begun>[0], 'begun' | 'snapshot' | 'session'>) {
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const lines = snapshot.facts.filter(({ fact, struck }) => struck === null && begun.hours.includes(fact.id));
  const takeBack = async (): Promise<void> => {
    const drafts = lines.map(({ fact }) => ({
      kind: 'struck',
      fact: fact.id,
      why: firstRunWords.takenBack,
    }));
    const written = await session.write(drafts);
    setRefused(written.kind === 'refused' ? written.problems : []);
  };
  return (
    <section class="group">
      <h2>{firstRunWords.sinceRebuild}</h2>
      {lines.length === 0 ? (
        <p class="head-gap">{firstRunWords.hoursNotKnown}</p>
      ) : (
        <>
          <ul class="rows">
            {lines.map(({ fact }) => (
              <li key={fact.id}>
                <Glyph sign="note" />
                <div>{factWords(fact)}</div>
                <span />
              </li>
            ))}
          </ul>
          <button
            type="button"
            class="button head-gap"
            disabled={session.view().writing}
            onClick={() => void takeBack()}
          >
            {firstRunWords.takeBack}
          </button>
        </>
      )}
      <Refused problems={refused} />
    </section>
  );
}
