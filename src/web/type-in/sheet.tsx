/** A printed work list, typed back: a line a step, judged while it is typed, written all at once. */
import './type-in.css';
import { useMemo, useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Glyph } from '../glyph.tsx';
import { useBeingWritten, useKept } from '../kept.ts';
import { Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { useToRefused } from '../to-refused.ts';
import { dateOf, timeOf } from '../words/reads.ts';
import { typeInWords } from '../words/type-in.tsx';
import { type Line, linesOf } from './lines.ts';
import { numbered, type PrintedList, printedLists, typedFrom, withList } from './printed.ts';

export type TypeInProps = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly who: string;
};

const NOTHING = { problems: [], again: '' };

export function TypeIn({ snapshot, session, keep, who }: TypeInProps) {
  const { kart, plan } = snapshot;
  const kept = useKept(keep, `typed list ${kart.name}`);
  // The lines stay with the list they were begun with, whatever is printed or planned since.
  const { text, list: begunWith } = typedFrom(kept.text);
  const [chosen, choose] = useState<string>();
  const printed = printedLists(keep, kart.name);
  const asPlanned: PrintedList = { at: '', steps: numbered(plan.steps) };
  const listAt = (at = printed[0]?.at): PrintedList => printed.find(one => one.at === at) ?? asPlanned;
  const list = begunWith ?? listAt(chosen);
  const lists = [...printed, ...(printed.some(({ at }) => at === list.at) || list.at === '' ? [] : [list])];
  const [refused, setRefused] = useState<{ problems: readonly Problem[]; again: string }>(NOTHING);
  const [said, setSaid] = useState('');
  const lines = useMemo(
    () => linesOf(text, { list: list.steps, steps: plan.steps, kart }),
    [text, JSON.stringify(list), plan, kart],
  );
  const good = lines.filter(line => line.ok);
  const bad = lines.length - good.length;
  // In the order of the plan, so that what a step waits for stands before it, however the lines were typed.
  const inOrder = good.toSorted((a, b) => a.step.n - b.step.n);
  const drafts = inOrder.flatMap(line => line.drafts);
  const now = JSON.stringify(drafts);
  const busy = session.view().writing;
  const [isSent, isWritten] = useBeingWritten(session);
  const { form, pressed } = useToRefused(busy);
  const setText = (next: string): void => {
    kept.put(withList(next, list));
    setRefused(NOTHING);
    setSaid('');
  };
  const write = async (sure: boolean): Promise<void> => {
    if (!kept.stands()) return;
    const recorded = (): void => kept.written(kept.text);
    const written = await isWritten(session.write(drafts, { ...(sure && { sure }), id: kept.id(), recorded }));
    if (written.kind === 'refused') {
      const owner = inOrder.flatMap(line => line.drafts.map(() => line));
      setRefused({ problems: written.problems.map(p => named(p, owner)), again: written.asksAgain ? now : '' });
      return;
    }
    setRefused(NOTHING);
    setSaid(typeInWords.stepsWrittenEachEntry(inOrder.length));
  };
  return (
    <>
      <p>
        <a class="back" href={hashOf({ sheet: 'work' })}>
          {typeInWords.theWork}
        </a>
      </p>
      <h1>{typeInWords.typeInList}</h1>
      <p class="soft">{typeInWords.lineForEachStep()}</p>
      <form
        ref={form}
        inert={isSent}
        onSubmit={e => {
          e.preventDefault();
          pressed();
          void write(false);
        }}
      >
        {lists.length > 0 && (
          <>
            <label for="which-list">{typeInWords.whichList}</label>
            <select
              id="which-list"
              class="field"
              value={list.at}
              onChange={e => {
                choose(e.currentTarget.value);
                if (text !== '') kept.put(withList(text, listAt(e.currentTarget.value)));
              }}
            >
              {lists.map(({ at, steps }) => (
                <option key={at} value={at}>
                  {typeInWords.printedSteps(dateOf(at), timeOf(at), steps.length)}
                </option>
              ))}
              <option value="">{typeInWords.planAsItIsNumbered}</option>
            </select>
          </>
        )}
        {lists.length === 0 && <p class="note need">{typeInWords.thisDevicePrinted}</p>}
        <div class="type-in">
          <div>
            <label for="lines">{typeInWords.lines}</label>
            <textarea
              id="lines"
              rows={10}
              spellcheck={false}
              autocomplete="off"
              value={text}
              onInput={e => setText(e.currentTarget.value)}
            />
          </div>
          <section aria-label={typeInWords.asItWillBeWritten} aria-live="polite">
            <h2>{typeInWords.asItWillBeWritten}</h2>
            {lines.length === 0 && <p class="soft">{typeInWords.nothingTypedYet}</p>}
            <ol class="rows">
              {lines.map(line => (
                <Row key={line.line} line={line} />
              ))}
            </ol>
          </section>
        </div>
        <Refused problems={refused.problems}>
          {refused.again === now && bad === 0 && (
            <button type="button" class="button wide" disabled={busy} onClick={() => write(true)}>
              {typeInWords.itIsSoRecord}
            </button>
          )}
        </Refused>
        {said !== '' && (
          <p class="note" role="status">
            {said}
          </p>
        )}
        <p class="note">{typeInWords.eachIsWrittenAsDone(who)}</p>
        <div class="answers">
          <button type="submit" class="button main big full" disabled={busy || good.length === 0 || bad > 0}>
            {busy ? typeInWords.writing : typeInWords.putLinesRightFirst(bad, good.length)}
          </button>
        </div>
      </form>
    </>
  );
}

function Row({ line }: { readonly line: Line }) {
  return (
    <li class={line.ok ? undefined : 'wrong'}>
      <Glyph sign={line.ok ? 'done' : 'caution'} />
      <div>
        <b>{line.title}</b>
        {line.step?.part != null && line.step.item !== null && <span class="soft"> {line.step.part}</span>}
        <p>
          {line.says}
          {line.notes.map(note => (
            <span key={note}>. {note}</span>
          ))}
        </p>
      </div>
      <span class="side">{typeInWords.line(line.line)}</span>
    </li>
  );
}

/** 'facts[3].reading' is of the fourth that was sent: said by the line it was typed in. */
function named(problem: Problem, owner: readonly Line[]): Problem {
  const at = /\[(\d+)\]/.exec(problem.where)?.[1];
  const line = at === undefined ? (owner.length === 1 ? owner[0] : undefined) : owner[Number(at)];
  return line === undefined
    ? problem
    : { ...problem, message: typeInWords.lineRefused(line.line, line.title, problem.message) };
}
