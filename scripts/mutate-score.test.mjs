import { describe, expect, test } from 'vitest';
import { scores, survivors } from './mutate-score.mjs';

const mutant = (fate, file = 'src/a.ts') => ({
  file,
  fate,
  replacement: 'a >= b',
  location: { start: { line: 1, column: 7 }, end: { line: 1, column: 12 } },
});
const all = fates => fates.map(fate => mutant(fate));

describe('the score of mutants', () => {
  test('counts those that no test reaches against it, and leaves out those that were not tried', () => {
    const { score, lines } = scores(
      'a',
      all(['killed', 'killed', 'killed', 'lived', 'unreached', 'at load', 'excluded']),
    );
    expect(score).toBe(60);
    expect(lines.at(-1).trim().split(/\s+/)).toEqual(['a', '60.00', '3', '1', '1', '1', '1']);
  });

  test('is no number, and so reaches nothing, where none was tried', () => {
    expect(scores('a', all(['at load'])).score >= 0).toBe(false);
  });

  test('has a line for each file and one for all', () => {
    const { lines } = scores('a', [mutant('killed', 'src/b.ts'), mutant('lived')]);
    expect(lines.map(line => line.trim().split(/\s+/).slice(0, 2))).toEqual([
      ['%', 'killed'],
      ['src/b.ts', '100.00'],
      ['src/a.ts', '0.00'],
      ['a', '50.00'],
    ]);
  });
});

test('a living mutant is shown with its place, what stands there and what may stand there unnoticed', () => {
  const source = 'let a = 1;\nreturn a > b;\n';
  expect(survivors(all(['killed', 'lived']), () => source)).toEqual(['src/a.ts:2:8 lived: a > b  →  a >= b']);
});
