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
const draft = (n: number): Draft => ({
  id: `f${n}`,
  kart: '41',
  at: at(n),
  recorded: at(n),
  by: 'A. Sample',
  device: 'bench',
  kind: 'note',
  text: `note ${n}`,
});
const facts = sealAll(CHAIN_START, [1, 2, 3].map(draft));
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

  it('B23 a byte order mark within a text stays there', () => {
    const noted = sealAll(CHAIN_START, [{ ...draft(1), text: 'a\uFEFFb' } as Draft]);
    expect(importLines(exportLines(noted))).toEqual({ kind: 'facts', facts: noted });
  });

  it('B24 a line that is no fact is shown as it came, cut where it is long, and says what to do', () => {
    const bad = (last: string): string => [line(1), line(2), last, line(4)].join('\n');
    const problem = {
      kind: 'problem',
      code: 'not a fact',
      line: 3,
      remedy: 'export the book again; nothing was imported',
    };
    expect(problems(bad('{'))).toEqual([{ ...problem, message: 'a line must be one fact as JSON, got {' }]);
    expect(problems(bad(''))).toEqual([{ ...problem, message: 'a line must be one fact as JSON, got an empty line' }]);
    const short = [line(1), line(2), line(3), '{', ''].join('\n'); // its last line is ended, so it was not cut off there
    expect(problems(short)).toEqual([{ ...problem, line: 4, message: 'a line must be one fact as JSON, got {' }]);
    expect(problems(text.slice(0, -20))).toEqual([
      {
        kind: 'problem',
        code: 'torn',
        line: 4,
        message: `a line must be one fact as JSON, got ${line(4).slice(0, 80)}, and the file ends there`,
        remedy: 'the file was cut off: copy or export it again; nothing was imported',
      },
    ]);
  });

  it('B24 a file that holds fewer or more facts than it promises is not whole', () => {
    expect(problems([line(1), line(2), ''].join('\n'))).toEqual([
      {
        kind: 'problem',
        code: 'torn',
        line: 2,
        message: 'line 1 promises 3 facts, got 1',
        remedy: 'the file is not whole: copy or export it again; nothing was imported',
      },
    ]);
  });

  it('B24 a hole in a chain is told at the line after it', () => {
    const holed = ['{"facts":2,"kartwright":1}', line(2), line(4), ''].join('\n');
    expect(problems(holed)).toMatchObject([{ code: 'broken chain', line: 3, fact: 'f3' }]);
  });

  it('B22 an export of a newer format is refused', () => {
    expect(problems(text.replace('"kartwright":1', '"kartwright":2'))).toEqual([
      {
        kind: 'problem',
        code: 'newer format',
        line: 1,
        message: 'this version reads exports up to format 1, got format 2',
        remedy: 'update this program, then import again; nothing was imported',
      },
    ]);
  });

  it.each([
    ['', 'nothing'],
    ['hello', 'hello'],
    ['[]', '[]'],
    ['{"facts":-1,"kartwright":1}', '{"facts":-1,"kartwright":1}'],
    ['{"facts":1.5,"kartwright":1}', '{"facts":1.5,"kartwright":1}'],
    ['{"facts":"3","kartwright":1}', '{"facts":"3","kartwright":1}'],
    ['{"facts":3,"kartwright":0}', '{"facts":3,"kartwright":0}'],
    ['{"facts":3,"kartwright":"2"}', '{"facts":3,"kartwright":"2"}'],
    ['{"kartwright":1}', '{"kartwright":1}'],
    ['x'.repeat(100), 'x'.repeat(80)],
  ])('B24 %j is no book', (broken, shown) => {
    expect(problems(broken)).toEqual([
      {
        kind: 'problem',
        code: 'not a book',
        line: 1,
        message: `line 1 must be like {"facts":12,"kartwright":1}, got ${shown}`,
        remedy: 'give a file that was written by the export of the book; nothing was imported',
      },
    ]);
  });
});
