import { describe, expect, test } from 'vitest';
import { code, linesLike, readText, texts, tracked } from './files.ts';

// Put together from pieces, so that these lines are not found by themselves.
const word = (...pieces: string[]) => pieces.join('');
const others = texts.filter(path => !path.startsWith('test/tidy/'));

describe('the text of the project', () => {
  test('the search looks at the whole project', () => {
    expect(tracked.length).toBeGreaterThan(50);
    expect(code.some(path => path.startsWith('src/'))).toBe(true);
  });

  test('names no path of the machine it was written on', () => {
    const home = new RegExp(
      [word('/ro', 'ot/'), word('/ho', 'me/[a-z]'), word('/Us', 'ers/[a-z]'), '(^|[^a-z.#])/work/'].join('|'),
    );
    expect(linesLike(home, others)).toEqual([]);
  });

  test('leaves nothing for later', () => {
    expect(
      linesLike(new RegExp(`\\b(${word('TO', 'DO')}|${word('FIX', 'ME')}|${word('X', 'XX')})\\b`), others),
    ).toEqual([]);
  });

  test('skips no test and runs none alone', () => {
    const parked = new RegExp(
      `\\b(test|it|describe|suite)\\.(${word('sk', 'ip')}|${word('on', 'ly')}|${word('to', 'do')}|${word('fa', 'ils')})\\b`,
    );
    expect(linesLike(parked, code)).toEqual([]);
  });

  test('has no enum and no default export in the product (Biome sees to `any`)', () => {
    const product = code.filter(path => /^src\/.*\.tsx?$/.test(path));
    expect(linesLike(/^\s*(export )?(const )?enum\b|^export default\b/, product)).toEqual([]);
  });

  test('no file of code is longer than 400 lines', () => {
    const long = code
      .map(path => ({ path, lines: readText(path).split('\n').length }))
      .filter(file => file.lines > 400);
    expect(long).toEqual([]);
  });
});
