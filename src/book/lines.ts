/**
 * The book as text, one fact a line (SPEC B23, B24). The first line says what it is and how many facts follow, so that a
 * torn file is known as one. A whole book only: a chain with holes could not be verified.
 */
import { canonical } from './canonical.ts';
import { brokenChains } from './chain.ts';
import type { Fact } from './fact.ts';
import { inOrder } from './order.ts';
import { isProblem, type Problem } from './problem.ts';
import { upcast } from './upcast.ts';

export const LINES_FORMAT = 1;

export type Imported =
  | { readonly kind: 'facts'; readonly facts: readonly Fact[] }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] };

/** JSON Lines, each line ended by a line feed, facts in their order, each once: the same facts always give the same bytes. */
export function exportLines(facts: readonly Fact[]): string {
  const ordered = inOrder(facts);
  return [{ facts: ordered.length, kartwright: LINES_FORMAT }, ...ordered].map(line => `${canonical(line)}\n`).join('');
}

/** All facts of an exported book, or every problem with its line; then none of it is to be kept. */
export function importLines(text: string): Imported {
  const whole = text.replace(/^\uFEFF/, '');
  const lines = whole.split('\n').map(line => line.replace(/\r$/, ''));
  if (lines.at(-1) === '') lines.pop();
  const [first, ...rest] = lines;
  const header = headerOf(first ?? '');
  if (typeof header !== 'number') return { kind: 'problems', problems: [header] };

  const facts: Fact[] = [];
  const problems: Problem[] = [];
  const lineOf = new Map<string, number>();
  rest.forEach((line, index) => {
    const number = index + 2;
    const read = factIn(line, number === lines.length && !whole.endsWith('\n'));
    if (isProblem(read)) problems.push({ ...read, line: number });
    else {
      facts.push(read);
      lineOf.set(read.id, number);
    }
  });
  if (rest.length !== header) problems.push(torn(header, rest.length, lines.length));
  if (problems.length > 0) return { kind: 'problems', problems };

  const broken = brokenChains(facts).map(problem => ({ ...problem, line: lineOf.get(problem.fact ?? '') ?? 1 }));
  return broken.length > 0 ? { kind: 'problems', problems: broken } : { kind: 'facts', facts };
}

/** The number of facts that follow. */
function headerOf(line: string): number | Problem {
  const header = parsed(line);
  const { kartwright: format, facts } = (header ?? {}) as { kartwright?: unknown; facts?: unknown };
  if (typeof format === 'number' && format > LINES_FORMAT) {
    return {
      kind: 'problem',
      code: 'newer format',
      line: 1,
      message: `this version reads exports up to format ${LINES_FORMAT}, got format ${format}`,
      remedy: 'update this program, then import again; nothing was imported',
    };
  }
  if (format === LINES_FORMAT && typeof facts === 'number' && Number.isInteger(facts) && facts >= 0) return facts;
  return {
    kind: 'problem',
    code: 'not a book',
    line: 1,
    message: `line 1 must be like {"facts":12,"kartwright":1}, got ${line.slice(0, 80) || 'nothing'}`,
    remedy: 'give a file that was written by the export of the book; nothing was imported',
  };
}

function factIn(line: string, tail: boolean): Fact | Problem {
  const raw = parsed(line);
  if (raw !== undefined) return upcast(raw);
  return {
    kind: 'problem',
    code: tail ? 'torn' : 'not a fact',
    message: `a line must be one fact as JSON, got ${line.slice(0, 80) || 'an empty line'}${tail ? ', and the file ends there' : ''}`,
    remedy: tail
      ? 'the file was cut off: copy or export it again; nothing was imported'
      : 'export the book again; nothing was imported',
  };
}

function torn(expected: number, got: number, line: number): Problem {
  return {
    kind: 'problem',
    code: 'torn',
    line,
    message: `line 1 promises ${expected} facts, got ${got}`,
    remedy: 'the file is not whole: copy or export it again; nothing was imported',
  };
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}
