/** From a press to the book: typed text is kept until it is written, what was refused goes back to its field. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { useBeingWritten, useKept } from '../kept.ts';
import { typedFrom } from '../numbers/question.ts';
import type { Keep } from '../place.ts';
import type { Session } from '../session.ts';
import type { Draft } from '../written.ts';
import type { Asking } from './fields.tsx';
import type { Said, Typed } from './said.ts';

/** @param likely what stands there as long as nobody typed */
export function useTyped(keep: Keep, slot: string, likely: Typed) {
  const kept = useKept(keep, slot);
  return {
    typed: { ...likely, ...typedFrom(kept.text) } as Typed,
    put: (key: string, said: string): void => kept.put(JSON.stringify({ ...typedFrom(kept.now()), [key]: said })),
    /** What stands there now is in the book. */
    written: (): void => kept.written(kept.text),
    stands: kept.stands,
    id: kept.id,
  };
}

type Refused = { readonly at: string | undefined; readonly problem: Problem };
export type Form = {
  readonly form: string;
  readonly entry: ReturnType<typeof useTyped>;
  readonly session: Session;
  readonly read: (typed: Typed) => Said<readonly Draft[]>;
  /** The field a refusal of the book is about. */
  readonly fieldOf: (problem: Problem, drafts: readonly Draft[]) => string | undefined;
  /** How the same is written once it was asked about and stays; undefined: it cannot be. */
  readonly again: (
    drafts: readonly Draft[],
    problems: readonly Problem[],
    asks: boolean,
  ) => readonly Draft[] | undefined;
  readonly onWritten: (facts: readonly Fact[]) => void;
};

export function useWriting({ form, entry, session, read, fieldOf, again, onWritten }: Form) {
  const [isSent, isWritten] = useBeingWritten(session);
  const [refused, setRefused] = useState<readonly Refused[]>([]);
  const [anew, setAnew] = useState<{ readonly drafts: readonly Draft[]; readonly of: string }>();
  const now = JSON.stringify(entry.typed);
  // What stands in the fields by now may be something else, and be it only because another session came to the book.
  const asked = anew?.of === now ? anew.drafts : undefined;
  const asking: Asking = {
    form,
    typed: entry.typed,
    problemsAt: key => refused.filter(({ at }) => at === key).map(({ problem }) => problem),
    put(key, text) {
      entry.put(key, text);
      // Something else is said now: what was refused here is judged anew.
      setRefused(refused.filter(({ at }) => at !== key));
    },
  };
  const send = async (drafts: readonly Draft[], sure: boolean): Promise<void> => {
    const written = await isWritten(
      session.write(drafts, { ...(sure && { sure }), id: entry.id(), recorded: entry.written }),
    );
    if (written.kind === 'written') {
      setRefused([]);
      setAnew(undefined);
      return onWritten(written.facts);
    }
    setRefused(written.problems.map(problem => ({ problem, at: fieldOf(problem, drafts) })));
    const anew = again(drafts, written.problems, written.asksAgain);
    setAnew(anew && { drafts: anew, of: now });
  };
  return {
    asking,
    isSent,
    busy: session.view().writing,
    /** Refusals that belong to no field. */
    rest: refused.filter(({ at }) => at === undefined).map(({ problem }) => problem),
    asksAgain: asked !== undefined,
    /** @param again what was asked about, as it was said */
    async press(again: boolean): Promise<void> {
      if (!entry.stands()) return;
      if (again && asked !== undefined) return send(asked, true);
      const heard = read(entry.typed);
      if (heard.ok) return send(heard.value, false);
      setRefused(heard.problems.map(problem => ({ problem, at: problem.where.replace(/^fact\./, '') })));
    },
  };
}
