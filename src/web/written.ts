/** What a person says to the book, and what the book makes of it. */
import { ASKS_AGAIN, type Problem, type Recorded, type Signature } from '../app/index.ts';
import type { Fact } from '../book/index.ts';
import { problemsOf } from './problems-of.ts';
import { pageWords } from './words/page.ts';

/** A payload as a face hands it in: readings may still be the text the person typed. */
export type Draft = Readonly<Record<string, unknown>> & { readonly kind: string };

/** `sure`: once it was asked about; `at`: when it happened, where that is not now; `id`: of this press, said twice it is written once. */
export type Saying = { readonly sure?: boolean; readonly at?: string; readonly id?: string };

export type Signed = Required<Pick<Signature, 'statement' | 'signer' | 'sure' | 'seen'>>;

export type Written =
  /** `before`: by an earlier press of the same, which the page did not hear the end of. */
  | { readonly kind: 'written'; readonly facts: readonly Fact[]; readonly before?: true }
  /** `asksAgain`: the same once more with `sure` is recorded as it was said. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly asksAgain: boolean };

export function writtenFrom(recorded: Recorded): Written {
  if (recorded.kind === 'recorded')
    return { kind: 'written', facts: recorded.facts, ...(recorded.before && { before: true }) };
  const { problems } = recorded;
  return { kind: 'refused', problems, asksAgain: problems.every(({ code }) => ASKS_AGAIN.includes(code)) };
}

export const refusedFor = (error: unknown): Written => ({
  kind: 'refused',
  problems: problemsOf(error),
  asksAgain: false,
});

/** It was said of a sheet as things stood before the book was read, and the book says otherwise. */
export const sheetOfBefore = (): Problem => ({ code: 'book', where: 'page', ...pageWords.sheetOfBefore });
