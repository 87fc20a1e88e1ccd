import { expect, test } from 'vitest';
import { type Problem, Refusal } from '../../app/index.ts';
import { StoreError } from '../../store/store-error.ts';
import { problemsOf } from '../problems-of.ts';
import { putTogether, takenApart } from './crossing.ts';
import { Answered, OutOfReach } from './remote.ts';

const problem: Problem = { code: 'reading', where: 'facts[0]', message: 'Expected mm, got 3.', remedy: 'Write 3 mm.' };

test.each([
  ['a refusal', new Refusal([problem])],
  ['a no of the server', new Answered(409, [problem])],
  ['a server out of reach', new OutOfReach('connection refused')],
  ['a full device', new StoreError('disk full', 'there is no room left', 'free some space')],
  ['anything else', new TypeError('x is undefined')],
])('%s tells a person the same on both sides', (_, error) => {
  const there = putTogether(structuredClone(takenApart(error)));
  expect(there.name).toBe(error.name);
  expect(there.message).toBe(error.message);
  expect(problemsOf(there)).toEqual(problemsOf(error));
});

test('what was thrown and is no error arrives as one', () => {
  expect(putTogether(takenApart('gone')).message).toBe('gone');
});
