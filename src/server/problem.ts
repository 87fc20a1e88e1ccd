/** Errors as RFC 9457 problem documents: all problems of a request at once, with the codes the command line uses. */
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { ASKS_AGAIN, type Code, type Problem } from '../app/index.ts';

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

/** Whoever comes from outside this machine must be known. */
export const notPaired = (c: Context): Response =>
  problem(c, 401, [
    {
      code: 'not paired',
      message: 'Expected a device that was paired with this server, got one that is not.',
      remedy: 'Type the code that the laptop shows under Devices.',
    },
  ]);

/** What was sent has the wrong shape. */
export const refused = (where: string, message: string, remedy: string): Problem => ({
  code: 'wrong shape',
  where,
  message,
  remedy,
});

/** Not there: 404. Stands against what the book holds: 409. Anything else that was sent wrong: 422. */
export function statusOf(problems: readonly Problem[]): ContentfulStatusCode {
  const codes = problems.map(p => p.code);
  if (codes.includes('unknown kart')) return 404;
  if (codes.includes('not allowed')) return 403;
  const conflicts: readonly Code[] = [
    ...ASKS_AGAIN,
    'already on',
    'already off',
    'already struck',
    'already mended',
    'same tap twice',
    'no first look',
    'way in still on',
    'part is off',
  ];
  return codes.length > 0 && codes.every(code => conflicts.includes(code)) ? 409 : 422;
}
