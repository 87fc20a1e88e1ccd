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
  const { remedy, code, path } = error as Error & { remedy?: unknown; code?: unknown; path?: unknown };
  const because = typeof code === 'string' ? SYSTEM[code] : undefined;
  if (because !== undefined)
    return [
      {
        code: 'book',
        where: typeof path === 'string' && path !== '' ? path : 'FILE',
        message: because.message,
        remedy: because.remedy,
      },
    ];
  // A store's error carries its own code and remedy; the code of the face stays one of its own.
  return [{ code: 'book', where: '', message: sentence(error.message), remedy: sentence(remedy) }];
}

/** What the system says when a file cannot be had, in words. */
const SYSTEM: Readonly<Record<string, { readonly message: string; readonly remedy: string }>> = {
  ENOENT: {
    message: 'Expected a place that is there, got none.',
    remedy: 'Make the folder first, or correct the name.',
  },
  ENOTDIR: { message: 'Expected a folder on the way, got a file.', remedy: 'Correct the name.' },
  EISDIR: { message: 'Expected a file, got a folder.', remedy: 'Name a file in it.' },
  EACCES: {
    message: 'Expected leave to read or write it, got none.',
    remedy: 'Ask for the right, or choose another place.',
  },
  EPERM: {
    message: 'Expected leave to read or write it, got none.',
    remedy: 'Ask for the right, or choose another place.',
  },
  EROFS: { message: 'Expected a disk that can be written, got a read-only one.', remedy: 'Choose another place.' },
  ENOSPC: {
    message: 'Expected room on the disk, got none.',
    remedy: 'Make room, then do it again; the book is whole.',
  },
  ENAMETOOLONG: { message: 'Expected a name the disk can hold, got a longer one.', remedy: 'Choose a shorter name.' },
};

const sentence = (text: unknown): string => {
  if (typeof text !== 'string' || text === '') return '';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
};
