/** From a press to the book: typed text is kept until it is written, what was refused goes back to its field. */
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { typedFrom } from '../numbers/question.ts';
import type { Keep } from '../place.ts';
import type { Session } from '../session.ts';
import type { Draft } from '../written.ts';
import type { Asking } from './fields.tsx';
import type { Said, Typed } from './said.ts';

/** Text that a locked phone or a reload does not lose. `likely` is what stands there as long as nobody typed. */
export function useTyped(keep: Keep, slot: string, likely: Typed) {
  const [kept, setKept] = useState<Typed>(() => typedFrom(keep.get(slot)) ?? {});
  return {
    typed: { ...likely, ...kept } as Typed,
    put(key: string, text: string): void {
      const next = { ...kept, [key]: text };
      keep.set(slot, JSON.stringify(next));
      setKept(next);
    },
    clear(): void {
      keep.set(slot, '');
      setKept({});
    },
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
  const [refused, setRefused] = useState<readonly Refused[]>([]);
  const [anew, setAnew] = useState<readonly Draft[]>();
  const asking: Asking = {
    form,
    typed: entry.typed,
    problemsAt: key => refused.filter(({ at }) => at === key).map(({ problem }) => problem),
    put(key, text) {
      entry.put(key, text);
      // Something else is said now: what was refused here is judged anew.
      setRefused(refused.filter(({ at }) => at !== key));
      setAnew(undefined);
    },
  };
  const send = async (drafts: readonly Draft[], sure: boolean): Promise<void> => {
    const written = await session.write(drafts, sure ? { sure } : {});
    if (written.kind === 'written') {
      setRefused([]);
      setAnew(undefined);
      entry.clear();
      return onWritten(written.facts);
    }
    setRefused(written.problems.map(problem => ({ problem, at: fieldOf(problem, drafts) })));
    setAnew(again(drafts, written.problems, written.asksAgain));
  };
  return {
    asking,
    busy: session.view().writing,
    /** Refusals that belong to no field. */
    rest: refused.filter(({ at }) => at === undefined).map(({ problem }) => problem),
    asksAgain: anew !== undefined,
    async press(): Promise<void> {
      if (anew !== undefined) return send(anew, true);
      const heard = read(entry.typed);
      if (heard.ok) return send(heard.value, false);
      setRefused(heard.problems.map(problem => ({ problem, at: problem.where.replace(/^fact\./, '') })));
    },
  };
}
