import { type Problem, Refusal } from '../app/index.ts';
import { Answered, OutOfReach } from './book/remote.ts';
import { pageWords } from './words/page.ts';

/** A refusal says what to do by itself; so does a store that cannot do its work. */
export function problemsOf(error: unknown): readonly Problem[] {
  if (error instanceof Refusal || error instanceof Answered) return error.problems;
  const why = error instanceof Error ? error.message : String(error);
  const down = error instanceof OutOfReach;
  const remedy =
    error instanceof Error && 'remedy' in error && typeof error.remedy === 'string'
      ? error.remedy
      : down
        ? pageWords.seeThatItStillRuns
        : pageWords.loadPageAgainWhatWas;
  return [
    {
      code: 'book',
      where: down ? 'server' : 'book',
      message: down ? pageWords.serverDidNotAnswer(why) : pageWords.expectedBookToDo(why),
      remedy: `${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}.`,
    },
  ];
}
