/** Errors as RFC 9457 problem documents: all problems of a request at once, with the codes the command line uses. */
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Problem } from '../app/index.ts';

export type Trouble = {
  readonly code: string;
  readonly where?: string;
  readonly message: string;
  readonly remedy: string;
};

/** Answers with `status` and every trouble. `more` travels beside them, e.g. what a person is asked to confirm. */
export function problem(
  c: Context,
  status: ContentfulStatusCode,
  problems: readonly Trouble[],
  more: Readonly<Record<string, unknown>> = {},
): Response {
  const first = problems[0];
  const body = {
    type: 'about:blank',
    title: first?.code ?? 'error',
    status,
    detail: problems.map(p => `${p.message}; ${p.remedy}`).join('\n'),
    ...more,
    problems,
  };
  return c.body(JSON.stringify(body), status, { 'content-type': 'application/problem+json' });
}

/** What was sent has the wrong shape. */
export const refused = (where: string, message: string, remedy: string): Problem => ({
  code: 'wrong shape',
  where,
  message,
  remedy,
});
