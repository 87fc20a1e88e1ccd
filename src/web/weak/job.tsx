/** A second retention becomes a job of the plan: one tap, and one that says it again with what follows from it. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { SinglePoint } from '../../risk/index.ts';
import { Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session } from '../session.ts';
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
          Add {retention}
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
    const why = `${retention} on ${joint} no longer wanted`;
    const written = await session.write(facts.map(fact => ({ kind: 'struck', fact, why })));
    if (written.kind === 'refused') setProblems(written.problems);
  };
  return (
    <div class="note made" role="status">
      <p>
        <b>In the plan:</b> {retention} on {joint.replace('/', ', ')}.
        {takeBack === undefined && ' To take it back, file a kart file that does not name it.'}
      </p>
      <div class="answers">
        <a class="button" href={hashOf({ sheet: 'work', step })}>
          To the step
        </a>
        {takeBack && !asking && (
          <button type="button" class="button plain" onClick={() => setAsking(true)}>
            Take it back
          </button>
        )}
        {takeBack && asking && (
          <>
            <button type="button" class="button" disabled={session.view().writing} onClick={() => strike(takeBack)}>
              It is not wanted
            </button>
            <button type="button" class="button plain" onClick={() => setAsking(false)}>
              Keep it
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
        aria-label={`Make it a job: ${retention} on ${joint}`}
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
          <b>
            Fit {retention} on {part}, {name}.
          </b>{' '}
          {needs !== '' && `It needs ${needs}. `}
          The kart file names it from now on, its check is due, and the kart is not fit until it is there and looked at.
        </p>
        <p class="soft">Never drill, weld or wire what its maker did not make for it.</p>
        <label>
          Who wants it
          <input required maxLength={200} value={by} onInput={e => setBy(e.currentTarget.value)} />
        </label>
        <Refused problems={problems} />
        <div class="answers">
          <button type="submit" class="button main" disabled={busy || by.trim() === ''}>
            {busy ? 'Writing …' : 'Make it a job'}
          </button>
          <button type="button" class="button plain" onClick={() => setAsking(false)}>
            Leave it
          </button>
        </div>
      </div>
    </form>
  );
}
