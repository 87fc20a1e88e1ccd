/** How a command ends: what it says when it cannot, one line a problem, and the code a script reads. */
import { ASKS_AGAIN, type Problem, Refusal } from '../app/index.ts';
import type { World } from './world.ts';

export const EXIT = { done: 0, notFit: 1, notKnown: 2, error: 3 } as const;

/** Ends a command with problems of its own. */
export const fail = (code: Problem['code'], where: string, message: string, remedy: string): never => {
  throw new Refusal([{ code, where, message, remedy }]);
};

/** Tells an error on one line a problem, or as JSON, and gives the exit code. */
export function tell(error: unknown, world: Pick<World, 'out' | 'err'>, json: boolean): number {
  const problems = problemsOf(error);
  if (json) world.out(`${JSON.stringify({ problems })}\n`);
  else for (const problem of problems) world.err(`${oneLine(problem)}\n`);
  return EXIT.error;
}

const oneLine = ({ code, where, message, remedy }: Problem): string => {
  const again = ASKS_AGAIN.includes(code) ? ' (--sure)' : '';
  const text = `kartwright: ${where === '' ? '' : `${where}: `}${message} ${remedy}${again}`;
  return text.replace(/\s*\n\s*/g, ' ');
};

function problemsOf(error: unknown): readonly Problem[] {
  if (error instanceof Refusal) return error.problems;
  if (!(error instanceof Error)) return [{ code: 'book', where: '', message: String(error), remedy: '' }];
  // A store's error carries its own code and remedy; the code of the face stays one of its own.
  const { remedy } = error as Error & { remedy?: unknown };
  return [{ code: 'book', where: '', message: error.message, remedy: typeof remedy === 'string' ? remedy : '' }];
}
