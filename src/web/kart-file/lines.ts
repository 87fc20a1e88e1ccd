/** Where lines of a text begin, and which error comes next after a place in it. */
import type { Problem } from '../../kart/index.ts';

/** @param line from 1 */
export function lineStart(text: string, line: number): number {
  let at = 0;
  for (let n = 1; n < line; n++) {
    const end = text.indexOf('\n', at);
    if (end < 0) return at;
    at = end + 1;
  }
  return at;
}

/** Round and round: after the last comes the first. Errors of the library stand in no line of this text. */
export function nextError(
  problems: readonly Problem[],
  text: string,
  caret: number,
  back: boolean,
): Problem | undefined {
  const own = problems
    .filter(one => one.file === undefined)
    .map(one => ({ one, at: lineStart(text, one.line) + one.column - 1 }))
    .sort((a, b) => a.at - b.at);
  const next = back ? own.findLast(({ at }) => at < caret) : own.find(({ at }) => at > caret);
  return (next ?? (back ? own.at(-1) : own[0]))?.one;
}
