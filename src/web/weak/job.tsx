/** A second retention becomes a job of the plan: one tap, and one that says it again with what follows from it. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { SinglePoint } from '../../risk/index.ts';
import { Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session } from '../session.ts';
import { weakWords } from '../words/weak.tsx';
import type { Wanted } from './wanted.ts';

type Addition = { readonly joint: string; readonly retention: string; readonly needs?: string };

/** What is a job already, and how one more becomes one. */
export type Jobs = {
  readonly session: Session;
  readonly who: string;
  readonly made: readonly Wanted[];
};

/** What could be added to a link that alone is enough. */
export function Job({ point: { joint, couldAdd }, jobs }: { readonly point: SinglePoint; readonly jobs: Jobs }) {
  if (joint === undefined) return null;
  const made = jobs.made.find(one => one.joint === joint);
  if (made) return <Made wanted={made} jobs={jobs} />;
  return (
    <div class="could-add">
      {couldAdd.map(retention => (
        <Confirm key={retention} adding={{ joint, retention }} jobs={jobs}>
          {weakWords.add(retention)}
        </Confirm>
      ))}
    </div>
  );
}

/** It is in the plan: the way to its step, and the way back, with two taps as for everything that is struck. */
export function Made(props: { readonly wanted: Wanted; readonly jobs: Jobs }) {
  const { joint, retention, step, takeBack } = props.wanted;
  const { session } = props.jobs;
  const [asking, setAsking] = useState(false);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const strike = async (facts: readonly string[]): Promise<void> => {
    const why = weakWords.onNoLongerWanted(retention, joint);
    const written = await session.write(facts.map(fact => ({ kind: 'struck', fact, why })));
    if (written.kind === 'refused') setProblems(written.problems);
  };
  return (
    <div class="note made" role="status">
      <p>
        {weakWords.inPlan(
          retention,
          joint.replace('/', ', '),
          takeBack === undefined ? weakWords.toTakeItBackFile : '',
        )}
      </p>
      <div class="answers">
        <a class="button" href={hashOf({ sheet: 'work', step })}>
          {weakWords.toStep}
        </a>
        {takeBack && !asking && (
          <button type="button" class="button plain" onClick={() => setAsking(true)}>
            {weakWords.takeItBack}
          </button>
        )}
        {takeBack && asking && (
          <>
            <button type="button" class="button" disabled={session.view().writing} onClick={() => strike(takeBack)}>
              {weakWords.itIsNotWanted}
            </button>
            <button type="button" class="button plain" onClick={() => setAsking(false)}>
              {weakWords.keep}
            </button>
          </>
        )}
      </div>
      <Refused problems={problems} />
    </div>
  );
}

export function Confirm(props: {
  readonly adding: Addition;
  readonly jobs: Jobs;
  readonly children: ComponentChildren;
}) {
  const { session, who } = props.jobs;
  const { joint, retention, needs = '' } = props.adding;
  const [asking, setAsking] = useState(false);
  const [by, setBy] = useState(who);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const busy = session.view().writing;
  if (!asking)
    return (
      <button
        type="button"
        class="button"
        aria-label={weakWords.makeItJobAsk(retention, joint)}
        onClick={() => setAsking(true)}
      >
        {props.children}
      </button>
    );
  const [part, name] = joint.split('/');
  return (
    <form
      class="step confirm"
      onSubmit={async e => {
        e.preventDefault();
        const written = await session.wantSecond({ joint, retention, by: by.trim() });
        if (written.kind === 'refused') setProblems(written.problems);
        else setAsking(false);
      }}
    >
      <div class="step-body">
        <p>
          {weakWords.fitOnKartFileNames(
            retention,
            part ?? '',
            name ?? '',
            needs !== '' ? weakWords.itNeeds(needs) : '',
          )}
        </p>
        <p class="soft">{weakWords.neverDrillWeldOrWire}</p>
        <label>
          {weakWords.whoWants}
          <input required maxLength={200} value={by} onInput={e => setBy(e.currentTarget.value)} />
        </label>
        <Refused problems={problems} />
        <div class="answers">
          <button type="submit" class="button main" disabled={busy || by.trim() === ''}>
            {busy ? weakWords.writing : weakWords.makeItJob}
          </button>
          <button type="button" class="button plain" onClick={() => setAsking(false)}>
            {weakWords.leave}
          </button>
        </div>
      </div>
    </form>
  );
}
