/** What is wrong with a fact or a book that came from outside: what was expected, what came, where, and what to do. */
export type Problem = {
  readonly kind: 'problem';
  readonly code: 'not a fact' | 'newer format' | 'unknown kind' | 'damaged' | 'broken chain' | 'torn' | 'not a book';
  readonly message: string;
  readonly remedy: string;
  readonly fact?: string; // id
  readonly line?: number; // 1 is the header
};

export function isProblem(value: { readonly kind: string }): value is Problem {
  return value.kind === 'problem';
}
