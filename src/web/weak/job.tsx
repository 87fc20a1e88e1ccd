/** A second retention becomes a job of the plan: one tap, and one that says it again with what follows from it. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { SinglePoint } from '../../risk/index.ts';
import { Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session } from '../session.ts';
import { capital } from '../words.ts';

export type Wanted = { readonly joint: string; readonly retention: string; readonly needs?: string };

/** What was made a job since the page was opened, and how one more becomes one. */
export type Jobs = {
  readonly session: Session;
  readonly who: string;
  readonly made: readonly Wanted[];
  readonly onMade: (wanted: Wanted) => void;
};

/** What could be added to a link that alone is enough. */
export function Job({ point: { joint, couldAdd }, jobs }: { readonly point: SinglePoint; readonly jobs: Jobs }) {
  if (joint === undefined) return null;
  const made = jobs.made.find(one => one.joint === joint);
  if (made) return <Made wanted={made} />;
  return (
    <div class="could-add">
      {couldAdd.map(retention => (
        <Confirm key={retention} wanted={{ joint, retention }} jobs={jobs}>
          Add {retention}
        </Confirm>
      ))}
    </div>
  );
}

export const Made = ({ wanted: { joint, retention } }: { readonly wanted: Wanted }) => (
  <p class="note" role="status">
    {capital(retention)} on {joint.replace('/', ', ')} is in the plan.{' '}
    <a href={hashOf({ sheet: 'work' })}>To the work</a>
  </p>
);

export function Confirm(props: { readonly wanted: Wanted; readonly jobs: Jobs; readonly children: ComponentChildren }) {
  const { wanted, jobs } = props;
  const { session, who } = jobs;
  const { joint, retention, needs = '' } = wanted;
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
        else jobs.onMade(wanted);
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
