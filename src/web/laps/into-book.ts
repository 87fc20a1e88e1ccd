/** Laps into the book of this device: what was written, or its refusals as values. */
import { ASKS_AGAIN, type LapsIn, type PlainApp, type Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { problemsOf } from '../problems-of.ts';
import type { Session } from '../session.ts';

export type Answered<T> =
  | { readonly kind: 'answered'; readonly value: T }
  /** `asksAgain`: the same once more, and sure, is recorded as it was said. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly asksAgain: boolean };

/** What was written, with what a person should know of it. */
export type LapsWritten = { readonly facts: readonly Fact[]; readonly say: readonly string[] };

/** @param recorded called the moment they are in it, before the page is worked out again */
export async function intoBook(
  session: Pick<Session, 'busy'>,
  work: (book: PlainApp, kart: string) => Promise<LapsIn>,
  recorded: () => unknown,
): Promise<Answered<LapsWritten>> {
  try {
    const done = await session.busy(async (book, kart) => {
      const done = await work(book, kart);
      if (done.kind === 'recorded') recorded();
      return done;
    });
    if (done.kind === 'recorded') return { kind: 'answered', value: done };
    const problems = done.kind === 'refused' ? done.problems : [];
    return { kind: 'refused', problems, asksAgain: problems.every(({ code }) => ASKS_AGAIN.includes(code)) };
  } catch (error) {
    return { kind: 'refused', problems: problemsOf(error), asksAgain: false };
  }
}
