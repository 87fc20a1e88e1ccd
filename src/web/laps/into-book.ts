/** Laps into the book of this device: what was written, or its refusals as values. */
import { ASKS_AGAIN, type LapsIn, type Problem } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { problemsOf } from '../problems-of.ts';

export type Answered<T> =
  | { readonly kind: 'answered'; readonly value: T }
  /** `asksAgain`: the same once more, and sure, is recorded as it was said. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly asksAgain: boolean };

/** What was written, with what a person should know of it. */
export type LapsWritten = { readonly facts: readonly Fact[]; readonly say: readonly string[] };

export async function intoBook(written: Promise<LapsIn>): Promise<Answered<LapsWritten>> {
  try {
    const done = await written;
    if (done.kind === 'recorded') return { kind: 'answered', value: done };
    const problems = done.kind === 'refused' ? done.problems : [];
    return { kind: 'refused', problems, asksAgain: problems.every(({ code }) => ASKS_AGAIN.includes(code)) };
  } catch (error) {
    return { kind: 'refused', problems: problemsOf(error), asksAgain: false };
  }
}
