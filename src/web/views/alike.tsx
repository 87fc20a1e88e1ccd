import { useEffect, useState } from 'preact/hooks';
import type { AlikeAnswer, Problem } from '../../app/index.ts';
import type { AlikeJoint, AlikeOne } from '../../risk/index.ts';
import { Glyph } from '../glyph.tsx';
import { Refused } from '../parts.tsx';
import { hashOf } from '../place.ts';
import type { Session } from '../session.ts';
import { dateOf } from '../words/reads.ts';
import { recordWords } from '../words/record.ts';

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
    setSaid(recordWords.dueNow(items.length, onKarts(written.facts.length)));
  };
  return (
    <section class="step head-gap own-sheet" aria-label={recordWords.whatElseOfThisKind}>
      <header>
        <b>{recordWords.whatElseOfThisKind}</b>
        <span>{found ? (found.of.joint ?? found.of.part).replace('/', ': ') : ''}</span>
      </header>
      <div class="step-body">
        <Refused problems={problems} />
        {found === undefined && problems.length === 0 && <p class="loading">{recordWords.lookingThroughKarts}</p>}
        {found && <Found found={found} busy={session.view().writing} asked={said !== ''} ask={ask} />}
        {said !== '' && (
          <p class="note" role="status">
            {said}
          </p>
        )}
        <div class="answers no-print">
          {found && (
            <button type="button" class="button plain full" onClick={() => window.print()}>
              {recordWords.print}
            </button>
          )}
          {said !== '' && (
            <a class="button full" href={hashOf({ sheet: 'today' })}>
              {recordWords.toSheetToday}
            </a>
          )}
          <button type="button" class="button plain full" onClick={onClose}>
            {recordWords.close}
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
      {parts.length + joints.length === 0 && <p>{recordWords.nothingElseOfThisKind}</p>}
      <List title={recordWords.otherPartsOfKind(kind)} all={parts} name={one => one.part} />
      <List title={recordWords.sameJointElsewhere} all={twins} name={one => one.joint.replace('/', ': ')} />
      {others.length > 0 && (
        <>
          <details class="group no-print" open={near === 0}>
            <summary>{recordWords.otherHeld(others.length, retention ?? '')}</summary>
            <List title={recordWords.longestNotLooked} all={others} name={one => one.joint.replace('/', ': ')} />
          </details>
          <div class="only-print">
            <List
              title={recordWords.othersHeldByLongest(retention)}
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
              {recordWords.makeLookAtDue(near)}
            </button>
          )}
          {others.length > 0 && (
            <button
              type="button"
              class={near > 0 ? 'button full' : 'button main big full'}
              disabled={busy}
              onClick={() => ask(true)}
            >
              {recordWords.held(near, others.length, retention ?? '')}
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
                {recordWords.kartHOnRecord(
                  one.kart,
                  one.hours.toFixed(1),
                  one.on,
                  one.lastLook
                    ? recordWords.lastLook(dateOf(one.lastLook.at), one.lastLook.by)
                    : recordWords.noLookOnRecord,
                  one.items.length,
                )}
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
