import { describe, expect, test } from 'vitest';
import { type Figure, readFirst, subjects } from './index.ts';

const figure: Figure = { si: 1, unit: '', text: '1' };

describe('the figures read first', () => {
  test('what is put behind follows, whole names or beginnings; nothing is lost', () => {
    const figures = { hold: figure, 'margin left': figure, margin: figure };
    expect(readFirst({ behind: ['margin *'] }, { figures })).toEqual({
      first: [
        ['hold', figure],
        ['margin', figure],
      ],
      rest: [['margin left', figure]],
    });
    expect(readFirst({}, { figures }).rest).toEqual([]);
  });

  test('where all stand behind, all are read first', () => {
    expect(readFirst({ behind: ['*'] }, { figures: { a: figure } }).first).toHaveLength(1);
  });

  for (const subject of subjects)
    test(`${subject.name}: few are read first, and every name put behind is one of the answer`, () => {
      const answer = subject.ask(subject.example);
      if (answer.kind !== 'answer') throw new Error('the example is refused');
      const { first } = readFirst(subject, answer);
      expect(first.length).toBeGreaterThan(2);
      expect(first.length).toBeLessThan(15);
      for (const pattern of subject.behind ?? [])
        expect(readFirst({ behind: [pattern] }, answer).rest, pattern).not.toEqual([]);
    });
});
