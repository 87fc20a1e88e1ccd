import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrivals } from '../../test/store-contract/random-facts.ts';
import {
  CHAIN_START,
  canonical,
  type Draft,
  exportLines,
  type Fact,
  hashOf,
  importLines,
  inOrder,
  sealAll,
} from './index.ts';

const at = (second: number): string => new Date(Date.parse('2026-05-01T08:00:00.000Z') + second * 1000).toISOString();
const facts = sealAll(
  CHAIN_START,
  [1, 2, 3].map(
    (n): Draft => ({
      id: `f${n}`,
      kart: '41',
      at: at(n),
      recorded: at(n),
      by: 'A. Sample',
      device: 'bench',
      kind: 'note',
      text: `note ${n}`,
    }),
  ),
);
const text = exportLines(facts);
const line = (n: number): string => text.split('\n')[n - 1] ?? '';
const problems = (broken: string) => {
  const result = importLines(broken);
  return result.kind === 'problems' ? result.problems : [];
};

describe('the book as text', () => {
  it('B23 exported, imported and exported again gives the same bytes, whatever order the facts came in', () => {
    fc.assert(
      fc.property(arrivals, ([facts, arrived]) => {
        const first = exportLines(arrived);
        const read = importLines(first);
        expect(read).toEqual({ kind: 'facts', facts: inOrder(facts) });
        expect(exportLines(read.kind === 'facts' ? read.facts : [])).toBe(first);
      }),
    );
  });

  it('B23 the first line says what it is and how many facts follow', () => {
    expect(line(1)).toBe('{"facts":3,"kartwright":1}');
    expect(importLines(exportLines([]))).toEqual({ kind: 'facts', facts: [] });
  });

  it('B23 a byte order mark, other line ends and a missing last line end change nothing', () => {
    expect(importLines(`\uFEFF${text.trimEnd().replaceAll('\n', '\r\n')}`)).toEqual({ kind: 'facts', facts });
  });

  it('B24 a file cut off at any place is never taken for a whole one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.length - 2 }), end => {
        expect(problems(text.slice(0, end)).length).toBeGreaterThan(0);
      }),
    );
  });

  it('B24 a torn last line is told as torn, with its line', () => {
    expect(problems(text.slice(0, -20))).toMatchObject([
      { code: 'torn', line: 4, remedy: expect.stringContaining('cut off') },
    ]);
    expect(problems([line(1), line(2), ''].join('\n'))).toMatchObject([
      { code: 'torn', line: 2, message: 'line 1 promises 3 facts, got 1' },
    ]);
  });

  it('B24 all problems come at once, each with its line', () => {
    const changed = line(2).replace('note 1', 'note 9');
    const guessed = { ...(facts[2] as Fact), kind: 'guessed' };
    const unknown = canonical({ ...guessed, hash: hashOf(guessed as never) });
    expect(problems([line(1), changed, '{', unknown, ''].join('\n'))).toMatchObject([
      { code: 'damaged', line: 2, fact: 'f1' },
      { code: 'not a fact', line: 3 },
      { code: 'unknown kind', line: 4, fact: 'f3' },
    ]);
  });

  it('B24 a hole in a chain is told at the line after it', () => {
    const holed = ['{"facts":2,"kartwright":1}', line(2), line(4), ''].join('\n');
    expect(problems(holed)).toMatchObject([{ code: 'broken chain', line: 3, fact: 'f3' }]);
  });

  it('B22 an export of a newer format is refused', () => {
    expect(problems(text.replace('"kartwright":1', '"kartwright":2'))).toMatchObject([
      { code: 'newer format', line: 1 },
    ]);
  });

  it.each(['', 'hello', '[]', '{"facts":-1,"kartwright":1}', '{"kartwright":1}'])('B24 %j is no book', broken => {
    expect(problems(broken)).toMatchObject([{ code: 'not a book', line: 1 }]);
  });
});
