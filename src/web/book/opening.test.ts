import { expect, test, vi } from 'vitest';
import type { FirstAnswers, KartLine, Opening } from '../../app/index.ts';
import type { Looked } from './open.ts';
import { keepingOpenings, keptOpening } from './opening.ts';

const line: KartLine = { name: '41', invented: true, facts: 2, minutes: 0, last: null, event: null };
const readings = (...si: readonly number[]) => si.map(one => ({ reading: { si: one } }));
const stateWith = (...si: readonly number[]) => ({ items: { toe: { readings: readings(...si) } } });
const answersWith = (state: object) => ({ kart: { name: '41' }, entries: 2, state }) as FirstAnswers;
const answers = answersWith(stateWith(1, 2, 3, 4, 5, 6, 7));
/** What is kept holds as many readings as a sheet draws. */
const opening: Opening = { karts: [line], answers: answersWith(stateWith(3, 4, 5, 6, 7)) };

/** A book of two facts that is looked at, and what was kept beside it. */
function beside(reached = { row: 2 }) {
  const kept: unknown[] = [];
  const looked: Looked = { karts: [line], kart: line, answers };
  const look = keepingOpenings(
    async () => {
      reached.row += reached.row === 2 ? 0 : 1;
      return looked;
    },
    'one',
    { lastRow: async () => reached.row, keep: async one => void kept.push(one) },
  );
  return { kept, look };
}

test('what a look saw is kept a moment later, and is shown the next time', async () => {
  vi.useFakeTimers();
  const { kept, look } = beside();
  await look(['41']);
  await vi.runAllTimersAsync();
  vi.useRealTimers();
  expect(kept).toHaveLength(1);
  expect(keptOpening({ value: kept[0], row: 2 }, 'one', '41')).toEqual(opening);
  expect(keptOpening({ value: kept[0], row: 2 }, 'one', '')).toEqual(opening); // nobody asked for another kart
});

test('it is not shown once the book has grown, for another kart or by another version of the page', () => {
  const value = { build: 'one', row: 2, opening };
  expect(keptOpening({ value, row: 3 }, 'one', '41')).toBeUndefined();
  expect(keptOpening({ value, row: 2 }, 'one', '7')).toBeUndefined();
  expect(keptOpening({ value, row: 2 }, 'two', '41')).toBeUndefined();
  expect(keptOpening({ value: undefined, row: 2 }, 'one', '41')).toBeUndefined();
  expect(keptOpening(undefined, 'one', '41')).toBeUndefined();
});

test('a fact that came amid the look makes it one of before', async () => {
  vi.useFakeTimers();
  const reached = { row: 5 };
  const { kept, look } = beside(reached);
  await look(['41']);
  await vi.runAllTimersAsync();
  vi.useRealTimers();
  expect(keptOpening({ value: kept[0], row: reached.row }, 'one', '41')).toBeUndefined();
});
