import { useEffect, useState } from 'preact/hooks';
import type { AlikeAnswer, Problem } from '../../app/index.ts';
import type { AlikeJoint, AlikeOne } from '../../risk/index.ts';
import { Glyph } from '../glyph.tsx';
import { Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session } from '../session.ts';
import { dateOf } from '../words.ts';

/** Once something has failed: what else of its kind is on the karts, and one press that makes a look at each due. */
export function Alike(props: { readonly fact: string; readonly session: Session; readonly onClose: () => void }) {
  const { fact, session, onClose } = props;
  const [found, setFound] = useState<AlikeAnswer>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');
  useEffect(() => {
    session.ask.alike(fact).then(setFound, (error: unknown) => {
      setProblems(session.ask.problems(error));
    });
  }, [fact]);
  const ask = async (all: boolean): Promise<void> => {
    const written = await session.askForLooks(fact, all);
    if (written.kind === 'refused') return setProblems(written.problems);
    const items = written.facts.flatMap(one => (one.kind === 'look asked' ? one.items : []));
    setProblems([]);
    setSaid(`${items.length} ${items.length === 1 ? 'look is' : 'looks are'} due now${onKarts(written.facts.length)}.`);
  };
  return (
    <section class="step head-gap own-sheet" aria-label="What else of this kind">
      <header>
        <b>What else of this kind</b>
        <span>{found ? (found.of.joint ?? found.of.part).replace('/', ': ') : ''}</span>
      </header>
      <div class="step-body">
        <Refused problems={problems} />
        {found === undefined && problems.length === 0 && <p class="loading">Looking through the karts …</p>}
        {found && <Found found={found} busy={session.view().writing} asked={said !== ''} ask={ask} />}
        {said !== '' && (
          <p class="note" role="status">
            {said}
          </p>
        )}
        <div class="answers no-print">
          {found && (
            <button type="button" class="button plain full" onClick={() => window.print()}>
              Print it
            </button>
          )}
          {said !== '' && (
            <a class="button full" href={hashOf({ sheet: 'today' })}>
              To the sheet Today
            </a>
          )}
          <button type="button" class="button plain full" onClick={onClose}>
            Close
          </button>
        </div>
      </div>
    </section>
  );
}

function Found(props: {
  readonly found: AlikeAnswer;
  readonly busy: boolean;
  readonly asked: boolean;
  readonly ask: (all: boolean) => void;
}) {
  const { found, busy, asked, ask } = props;
  const { parts, joints, kind, retention } = found;
  const twins = joints.filter(({ twin }) => twin);
  const others = joints.filter(({ twin }) => !twin);
  const near = [...parts, ...twins].filter(({ items }) => items.length > 0).length;
  return (
    <>
      <h2>{found.why ?? kind}</h2>
      {parts.length + joints.length === 0 && <p>Nothing else of this kind is on the karts of this book.</p>}
      <List title={`Other parts of the kind: ${kind}`} all={parts} name={one => one.part} />
      <List title="The same joint elsewhere" all={twins} name={one => one.joint.replace('/', ': ')} />
      {others.length > 0 && (
        <>
          <details class="group no-print" open={near === 0}>
            <summary>
              {others.length} other {others.length === 1 ? 'joint' : 'joints'} held by {retention}
            </summary>
            <List title="Longest not looked at first" all={others} name={one => one.joint.replace('/', ': ')} />
          </details>
          <div class="only-print">
            <List
              title={`Others held by ${retention}, longest not looked at first`}
              all={others}
              name={one => one.joint.replace('/', ': ')}
            />
          </div>
        </>
      )}
      {!asked && (
        <div class="answers no-print">
          {near > 0 && (
            <button type="button" class="button main big full" disabled={busy} onClick={() => ask(false)}>
              Make a look at {near === 1 ? 'it' : `these ${near}`} due
            </button>
          )}
          {others.length > 0 && (
            <button
              type="button"
              class={near > 0 ? 'button full' : 'button main big full'}
              disabled={busy}
              onClick={() => ask(true)}
            >
              {near > 0 ? 'And at' : 'Make a look at'} the {others.length} {others.length === 1 ? 'joint' : 'joints'}{' '}
              held by {retention} {near > 0 ? 'too' : 'due'}
            </button>
          )}
        </div>
      )}
    </>
  );
}

function List<T extends AlikeOne | AlikeJoint>(props: {
  readonly title: string;
  readonly all: readonly T[];
  readonly name: (one: T) => string;
}) {
  if (props.all.length === 0) return null;
  return (
    <section class="group">
      <h2>{props.title}</h2>
      <ul class="rows">
        {props.all.map(one => (
          <li key={`${one.kart} ${props.name(one)}`}>
            <Glyph sign={one.lastLook ? 'note' : 'not known'} />
            <div>
              {props.name(one)}
              <p>
                Kart {one.kart}, {one.hours.toFixed(1)} h on record{one.on ? '' : ', off the kart'}.{' '}
                {one.lastLook ? `Last look ${dateOf(one.lastLook.at)} by ${one.lastLook.by}.` : 'No look on record.'}
                {one.items.length === 0 ? ' Its kind names nothing to look at.' : ''}
              </p>
            </div>
            <span class="side only-print">☐</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

const onKarts = (karts: number): string => (karts > 1 ? `, on ${karts} karts` : '');
