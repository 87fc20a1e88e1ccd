import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { Refused } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { dateOf, factWords } from '../words.ts';
import { ENTRIES, type Entry, entryDraft, fieldOf, type Typed } from '../write-down.ts';
import { EntryField } from './entry-field.tsx';

/** Which entry is being written, kept so that another sheet can open it and a reload finds it. */
export const WRITING = 'writing down';

/** What happened outside the plan: a run, a find, an event that comes. One form at a time, kept while it is typed. */
export function WriteDown(props: { readonly snapshot: Snapshot; readonly session: Session; readonly keep: Keep }) {
  const { snapshot, session, keep } = props;
  const [kind, setKind] = useState(keep.get(WRITING));
  const [said, setSaid] = useState('');
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
        onDone={words => {
          choose('');
          setSaid(words);
        }}
      />
    );
  return (
    <section aria-label="Write down" class="no-print head-gap">
      <h2>Write down</h2>
      {said !== '' && (
        <p class="note" role="status">
          {said}
        </p>
      )}
      <div class="entries">
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
  readonly onDone: (said: string) => void;
}) {
  const { entry, snapshot, session, keep } = props;
  const slot = `write ${entry.kind}`;
  const [typed, setTyped] = useState<Typed>(() => typedFrom(keep.get(slot), entry, snapshot));
  const [refused, setRefused] = useState<{ problems: readonly Problem[]; again: boolean }>(NOTHING);
  const busy = session.view().writing;

  const put = (key: string, text: string): void => {
    const next = { ...typed, [key]: text };
    keep.set(slot, JSON.stringify(next));
    setTyped(next);
    // Something else is said now: what was asked again, and what was refused here, is judged anew.
    setRefused({ problems: refused.problems.filter(p => fieldOf(entry, p)?.key !== key), again: false });
  };
  const close = (said: string): void => {
    keep.set(slot, '');
    props.onDone(said);
  };
  const write = async (sure: boolean): Promise<void> => {
    const drafted = entryDraft(entry, typed);
    if (!drafted.ok) return setRefused({ problems: drafted.problems, again: false });
    const due = new Set(snapshot.due.due.map(d => d.item));
    const { at } = drafted;
    const written = await session.write([drafted.draft], { ...(sure ? { sure } : {}), ...(at ? { at } : {}) });
    if (written.kind === 'refused') return setRefused({ problems: written.problems, again: written.asksAgain });
    const more = (session.view().snapshot?.due.due ?? []).filter(d => !due.has(d.item)).length;
    const [fact] = written.facts;
    close(
      `Written: ${fact ? factWords(fact) : entry.title}.${more > 0 ? ` ${more} more due now, on the sheet Today.` : ''}`,
    );
  };
  const rest = refused.problems.filter(p => fieldOf(entry, p) === undefined);
  return (
    <section class="step no-print head-gap" aria-label={entry.title}>
      <header>
        <b>Write down</b>
        <span>{entry.title}</span>
      </header>
      <form
        class="step-body"
        noValidate
        onSubmit={e => {
          e.preventDefault();
          void write(false);
        }}
      >
        {entry.fields
          .filter(f => f.key !== 'corner' || (typed.severity ?? '') !== '')
          .map(field => (
            <EntryField
              key={field.key}
              field={field}
              value={typed[field.key] ?? ''}
              problems={refused.problems.filter(p => fieldOf(entry, p)?.key === field.key)}
              snapshot={snapshot}
              session={session}
              onInput={text => put(field.key, text)}
            />
          ))}
        <Refused problems={rest} />
        <div class="answers">
          {refused.again ? (
            <button type="button" class="button main big full" disabled={busy} onClick={() => write(true)}>
              It is so: record it as I said
            </button>
          ) : (
            <button type="submit" class="button main big full" disabled={busy}>
              {busy ? 'Writing …' : 'Write it down'}
            </button>
          )}
          <button type="button" class="button plain full" onClick={() => close('')}>
            Leave it
          </button>
        </div>
      </form>
    </section>
  );
}

const NOTHING = { problems: [], again: false };

/** What was typed before, else what is likely: a find is taken for a safety one, a run for the event under way. */
function typedFrom(kept: string, entry: Entry, { state, fitness }: Snapshot): Typed {
  try {
    if (kept !== '') return JSON.parse(kept) as Typed;
  } catch {
    // Something else wrote there: begin anew.
  }
  if (entry.kind === 'found') return { grade: 'safety' };
  const event = fitness.event === null ? undefined : state.events[fitness.event];
  const today = event !== undefined && (event.from <= fitness.at || dateOf(event.from) === dateOf(fitness.at));
  return entry.kind === 'ran' && today ? { event: event.event } : {};
}
