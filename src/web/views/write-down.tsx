import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { useBeingWritten, useKept } from '../kept.ts';
import { Refused } from '../parts.tsx';
import { type Keep, keepOf } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { useToRefused } from '../to-refused.ts';
import { dateOf, factWords, timeOf } from '../words/reads.ts';
import { recordWords } from '../words/record.ts';
import { ENTRIES, type Entry, entryDraft, fieldOf, fieldsOf, readFields, type Typed } from '../write-down.ts';
import { Alike } from './alike.tsx';
import { EntryField } from './entry-field.tsx';
import { slotOf, WRITING } from './writing.ts';

/** What failed last, until somebody has read what else of its kind there is. */
const FAILED = 'failed last';

/** What happened outside the plan: a run, a find, an event that comes. One form at a time, kept while it is typed. */
export function WriteDown(props: { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep }) {
  const { snapshot, session, keep } = props;
  const [kind, setKind] = useState(keep.get(WRITING));
  const [said, setSaid] = useState('');
  const own = keepOf(keep, snapshot.kart.name);
  const { text: failed, put: look } = useKept(own, FAILED);
  const choose = (next: string): void => {
    keep.set(WRITING, next);
    setKind(next);
    setSaid('');
  };
  const entry = ENTRIES.find(e => e.kind === kind);
  if (entry)
    return (
      <EntryForm
        key={kind}
        entry={entry}
        snapshot={snapshot}
        session={session}
        keep={keep}
        own={own}
        onLeft={() => {
          // From another sheet or tab another one may have been begun meanwhile.
          if (keep.get(WRITING) === kind && own.get(slotOf(kind)) === '') keep.set(WRITING, '');
          setKind('');
        }}
        onWritten={(words, fact) => {
          setSaid(words);
          if (fact?.kind === 'failed') look(fact.id);
        }}
      />
    );
  return (
    <section aria-label={recordWords.writeDown} class="head-gap">
      <h2 class="no-print">{recordWords.writeDown}</h2>
      {said !== '' && (
        <p class="note no-print" role="status">
          {said}
        </p>
      )}
      {failed !== '' && <Alike key={failed} fact={failed} session={session} onClose={() => look('')} />}
      <div class="entries no-print">
        {ENTRIES.map(e => (
          <button key={e.kind} type="button" class="button" onClick={() => choose(e.kind)}>
            {e.title}
          </button>
        ))}
      </div>
    </section>
  );
}

function EntryForm(props: {
  readonly entry: Entry;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  /** Of this kart. */
  readonly own: Keep;
  /** Nothing of it stands here any more: it was left, or is in the book. */
  readonly onLeft: () => void;
  readonly onWritten: (said: string, fact: Fact | undefined) => void;
}) {
  const { entry, snapshot, session, keep, own } = props;
  const slot = slotOf(entry.kind);
  const kept = useKept(own, slot);
  const { text } = kept;
  const typed = typedFrom(text, entry, snapshot);
  const now = JSON.stringify(typed);
  const isLeft = useRef(false);
  const wasTyped = useRef(false);
  wasTyped.current ||= text !== '';
  const [keeping, setKeeping] = useState(false);
  const [refused, setRefused] = useState<Refusal>(NOTHING);
  const [step, putStep] = useState(Number(own.get(`${slot} step`)) || 0);
  const busy = session.view().writing;
  const [isSent, isWritten] = useBeingWritten(session);
  const { form, pressed } = useToRefused(busy);
  const last = step >= (entry.steps?.length ?? 1) - 1;
  const shown = fieldsOf(entry, step, typed);

  const put = (key: string, said: string): void => {
    // A photo comes when it comes; to an entry that was written or left it comes too late.
    if (isLeft.current || (key === 'photo' && text !== '' && kept.now() === '')) return;
    // Another part has other joints.
    const joint = key === 'part' && entry.kind === 'failed' ? { joint: '' } : {};
    kept.put(JSON.stringify({ ...typedFrom(kept.now(), entry, snapshot), [key]: said, ...joint }));
    setInBook(false);
    // Something else is said now: what was refused here is judged anew.
    setRefused(({ problems, again }) => ({ problems: problems.filter(p => fieldOf(entry, p)?.key !== key), again }));
  };
  const setStep = (next: number): void => {
    own.set(`${slot} step`, next === 0 ? '' : String(next));
    putStep(next);
  };
  const close = (): void => {
    setStep(0);
    isLeft.current = true;
    props.onLeft();
  };
  /** Written from where it was pressed before, or from another tab. */
  const [isInBook, setInBook] = useState(false);
  useEffect(() => {
    if (!wasTyped.current || text !== '' || isLeft.current) return;
    wasTyped.current = false;
    setInBook(true);
  });
  const goOn = (): void => {
    const { problems } = readFields(shown, typed);
    setRefused({ problems, again: '' });
    if (problems.length === 0) setStep(step + 1);
  };
  /** Shows what was refused at the step that asked for it. */
  const refuse = ({ problems, again }: Refusal): void => {
    const keys = problems.map(p => fieldOf(entry, p)?.key);
    const at = entry.steps?.findIndex(([, of]) => of.some(key => keys.includes(key))) ?? -1;
    if (at >= 0) setStep(at);
    setRefused({ problems, again });
  };
  const write = async (sure: boolean): Promise<void> => {
    if (!kept.stands()) return;
    const drafted = entryDraft(entry, typed);
    if (!drafted.ok) return refuse({ problems: drafted.problems, again: '' });
    const due = new Set(snapshot.due.due.map(d => d.item));
    const { at } = drafted;
    const recorded = (): void => {
      kept.written(text);
      close();
    };
    const more = { ...(sure && { sure }), ...(at && { at }), id: kept.id(), recorded };
    const written = await isWritten(session.write([drafted.draft], more));
    if (written.kind === 'refused') return refuse({ problems: written.problems, again: written.asksAgain ? now : '' });
    const newlyDue = (session.view().snapshot?.due.due ?? []).filter(d => !due.has(d.item)).length;
    const [fact] = written.facts;
    const what = fact ? factWords(fact) : entry.title;
    const since = written.before && fact && `${dateOf(fact.recorded)}, ${timeOf(fact.recorded)}`;
    props.onWritten(since ? recordWords.inBookSince(what, since) : recordWords.written(what, newlyDue), fact);
  };
  const rest = refused.problems.filter(p => fieldOf(entry, p) === undefined);
  return (
    <section class="step no-print head-gap" aria-label={entry.title}>
      <header>
        <b>{recordWords.writeDown}</b>
        <span>{entry.title}</span>
      </header>
      <form
        ref={form}
        inert={isSent}
        class="step-body"
        noValidate
        onSubmit={e => {
          e.preventDefault();
          pressed();
          if (last) void write(false);
          else goOn();
        }}
      >
        {isInBook && (
          <p class="note" role="status">
            {recordWords.inBookMeanwhile}
          </p>
        )}
        {entry.steps && <h2>{recordWords.of(step + 1, entry.steps.length, entry.steps[step]?.[0] ?? '')}</h2>}
        {shown.map(field => (
          <EntryField
            key={field.key}
            field={field}
            value={typed[field.key] ?? ''}
            problems={refused.problems.filter(p => fieldOf(entry, p)?.key === field.key)}
            snapshot={snapshot}
            session={session}
            keep={keep}
            part={typed.part ?? ''}
            onInput={text => put(field.key, text)}
            keeping={keeping}
            onKeeping={setKeeping}
          />
        ))}
        <Refused problems={rest} />
        <div class="answers">
          {refused.again === now ? (
            <button type="button" class="button main big full" disabled={busy || keeping} onClick={() => write(true)}>
              {recordWords.itIsSoRecord}
            </button>
          ) : (
            <button type="submit" class="button main big full" disabled={busy || keeping}>
              {!last ? recordWords.next : busy ? recordWords.writing : recordWords.writeItDown}
            </button>
          )}
          {step > 0 && (
            <button type="button" class="button full" onClick={() => setStep(step - 1)}>
              {recordWords.back}
            </button>
          )}
          <button
            type="button"
            class="button plain full"
            onClick={() => {
              kept.put('');
              close();
            }}
          >
            {recordWords.leave}
          </button>
        </div>
      </form>
    </section>
  );
}

/** `again`: what was typed then; once more it is recorded as it was said, unless something else is typed by now. */
type Refusal = { readonly problems: readonly Problem[]; readonly again: string };
const NOTHING: Refusal = { problems: [], again: '' };

/** What was typed before, else what is likely: a find is taken for a safety one, a run for the event under way, a failure for the last run. */
function typedFrom(kept: string, entry: Entry, { state, fitness, facts }: Snapshot): Typed {
  try {
    if (kept !== '') return JSON.parse(kept) as Typed;
  } catch {
    // Something else wrote there: begin anew.
  }
  if (entry.kind === 'found') return { grade: 'safety' };
  const event = fitness.event === null ? undefined : state.events[fitness.event];
  const today = event !== undefined && (event.from <= fitness.at || dateOf(event.from) === dateOf(fitness.at));
  if (entry.kind === 'failed') {
    const last = facts.find(line => line.fact.kind === 'ran' && line.struck === null)?.fact;
    const run = last?.kind === 'ran' ? last : undefined;
    return { event: run?.event ?? '', session: run?.session ?? '' };
  }
  return entry.kind === 'ran' && today ? { event: event.event } : {};
}
