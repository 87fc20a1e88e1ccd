/** What a plate is drawn from: the question as it was asked and what came back. */
import type { VNode } from 'preact';
import type { Answer } from '../../../numbers/index.ts';
import { type Dimension, parseQuantity } from '../../../quantity/index.ts';
import { ownFigure } from '../../choice/choice.ts';

export type Asked = {
  readonly question: Readonly<Record<string, unknown>>;
  readonly answer: Answer;
};

/** A drawing, what it shows in a sentence, and the same as a table. */
export type Drawn = {
  readonly title: string;
  readonly drawing: VNode;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

/** A plate draws what it can; undefined where the answer does not hold what it would show. */
export type DrawPlate = (asked: Asked) => Drawn | undefined;

export const figureOf = ({ answer }: Asked, name: string): number => answer.figures[name]?.si ?? Number.NaN;
export function wordsOf({ answer }: Asked, name: string): string {
  const figure = answer.figures[name];
  return figure === undefined ? 'not known' : ownFigure(figure);
}

/** A size of the question in SI, without its limits; not a number where none was given. */
export function askedSize({ question }: Asked, key: string, dimension: Dimension): number {
  const text = question[key];
  const bare = typeof text === 'string' ? text.split(/±|\+\/-|\+-/)[0]?.trim() : undefined;
  const parsed = parseQuantity(bare ?? '', dimension);
  return parsed.ok ? parsed.value.si : Number.NaN;
}

export const saidText = ({ question }: Asked, key: string): string => {
  const text = question[key];
  return typeof text === 'string' ? text : '';
};

/** `146.05 mm (5 3/4 in)` → both parts, for two short lines. */
export function twoLines(text: string): readonly [string, string] {
  const at = text.indexOf(' (');
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
}
