import { expect, test } from 'vitest';
import type { Step } from '../prep/index.ts';
import { draftsOf, withUnit } from './answer.ts';

const step: Step = {
  n: 1,
  key: 'measure axle/rear gap',
  action: 'measure',
  on: 'axle',
  title: 'Rear gap',
  system: 'axle and hubs',
  item: 'axle/rear gap',
  joint: null,
  part: 'axle',
  grade: 'safety',
  why: '',
  how: '',
  accept: '',
  source: 'common practice',
  minutes: 1,
  posture: 'stand',
  after: [],
  target: null,
  tolerance: null,
  unit: 'mm',
  tools: [],
  consumables: [],
  caution: null,
  secondLook: false,
  state: 'ready',
  writes: 'checked',
  fresh: false,
};

test('a pass with a bare number is in the unit that stands beside the field', () => {
  expect(draftsOf(step, { is: 'done', reading: '146' })).toEqual([
    { kind: 'checked', item: 'axle/rear gap', result: 'pass', reading: '146 mm' },
  ]);
  expect(withUnit(' 5 3/4 ', 'in')).toBe('5 3/4 in');
  expect(withUnit('5 3/4 in', 'mm')).toBe('5 3/4 in');
  expect(withUnit('about 146', 'mm')).toBe('about 146');
});

test('a fail keeps the defect and what was read', () => {
  expect(draftsOf(step, { is: 'fail', defect: 'hub cracked', reading: '99' })).toEqual([
    { kind: 'checked', item: 'axle/rear gap', result: 'fail', why: 'hub cracked', reading: '99 mm' },
  ]);
});

test('a joint that is made writes that it was made, and a joint that fails writes a failed check', () => {
  const joint: Step = { ...step, action: 'torque', joint: 'hub/bolts', item: 'hub/bolts', unit: 'N·m', writes: 'made' };
  expect(draftsOf(joint, { is: 'done' })).toEqual([{ kind: 'made', joint: 'hub/bolts' }]);
  expect(draftsOf(joint, { is: 'fail', defect: 'thread stripped' })).toEqual([
    { kind: 'checked', item: 'hub/bolts', result: 'fail', why: 'thread stripped' },
  ]);
});

test('a second look says that it is one', () => {
  const look: Step = { ...step, action: 'second-look', unit: null };
  expect(draftsOf(look, { is: 'done' })).toEqual([
    { kind: 'checked', item: 'axle/rear gap', result: 'pass', secondLook: true },
  ]);
});

test('a new part that goes on is written as another one', () => {
  const refit: Step = { ...step, action: 'refit', item: null, part: 'axle', writes: 'fitted', fresh: true };
  expect(draftsOf(refit, { is: 'done' })).toEqual([{ kind: 'fitted', part: 'axle', fresh: true }]);
  expect(() => draftsOf(refit, { is: 'fail', defect: 'x' })).toThrow('must be done');
});

test('the kart is put where the step says', () => {
  const posture: Step = { ...step, action: 'posture', item: null, part: null, posture: 'scales', writes: 'put on' };
  expect(draftsOf(posture, { is: 'done' })).toEqual([{ kind: 'put on', posture: 'scales' }]);
});
