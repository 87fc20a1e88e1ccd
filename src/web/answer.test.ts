import { expect, test } from 'vitest';
import { item, smallKart } from '../../test/small-kart.ts';
import type { Step } from '../prep/index.ts';
import { adjustable, draftsOf, dueAgain, isHandling, withUnit } from './answer.ts';

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
  start: 0,
  end: 3,
  people: [1],
  helpers: 0,
  window: null,
  closing: 0,
  timing: null,
  whyNow: [],
  mends: null,
};

test('a pass with a bare number is in the unit that stands beside the field', () => {
  expect(draftsOf(step, { is: 'done', reading: '146' })).toEqual([
    { kind: 'checked', item: 'axle/rear gap', result: 'pass', reading: '146 mm' },
  ]);
  expect(withUnit(' 5 3/4 ', 'in')).toBe('5 3/4 in');
  expect(withUnit('5 3/4 in', 'mm')).toBe('5 3/4 in');
  expect(withUnit('about 146', 'mm')).toBe('about 146');
});

test('a mend says how', () => {
  const mend: Step = { ...step, action: 'mend', writes: 'mended', mends: 'f7' };
  expect(draftsOf(mend, { is: 'done', how: 'new rim' })).toEqual([{ kind: 'mended', found: 'f7', how: 'new rim' }]);
});
test('another one that goes on says what it has run before', () => {
  const refit: Step = { ...step, action: 'refit', writes: 'fitted', part: 'hub', fresh: true };
  expect(draftsOf(refit, { is: 'done', hours: 6.5 })).toEqual([
    { kind: 'fitted', part: 'hub', fresh: true, carriedMinutes: 390 },
  ]);
  expect(draftsOf(refit, { is: 'done' })).toEqual([{ kind: 'fitted', part: 'hub', fresh: true }]);
  expect(draftsOf({ ...refit, fresh: false }, { is: 'done', hours: 6.5 })).toEqual([{ kind: 'fitted', part: 'hub' }]);
  expect(isHandling({ ...refit, action: 'replace', item: 'hub/replace f7' })).toBe(true);
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

test('what was moved is written as set, and says what is due again', () => {
  expect(draftsOf(step, { is: 'set', reading: '5 5/8 in' })).toEqual([
    { kind: 'set', item: 'axle/rear gap', reading: '5 5/8 in' },
  ]);
  const gap = item('hub/gap', [], { action: 'measure', opens: ['hub/bolts'], measure: { unit: 'mm' } });
  const wear = item('hub/wear', [], { action: 'measure', measure: { unit: 'mm' } });
  const kart = smallKart(gap, wear);
  const at = (id: string): Step => ({ ...step, item: id });
  expect(adjustable(at('hub/gap'), kart)?.id).toBe('hub/gap');
  expect(adjustable({ ...at('hub/gap'), action: 'second-look' }, kart)).toBeUndefined();
  expect(adjustable(at('hub/wear'), kart)).toBeUndefined(); // worn is not moved
  expect(dueAgain(gap, kart)).toBe('this reading; bolts (hub)');
});

test('what is put off stands against running with its reason; hand work and a look that passed wait, and the reason is noted', () => {
  const off = { is: 'put off', why: 'too dark' } as const;
  expect(draftsOf(step, off)).toEqual([
    { kind: 'checked', item: 'axle/rear gap', result: 'not possible', why: 'put off: too dark' },
  ]);
  const handling: Step = { ...step, item: null, action: 'refit', title: 'Refit: axle', writes: 'fitted' };
  expect(draftsOf(handling, off)).toEqual([{ kind: 'note', text: 'Put off, Refit: axle: too dark', part: 'axle' }]);
  const look: Step = { ...step, action: 'second-look', title: 'Second look: Rear gap' };
  expect(draftsOf(look, off)).toMatchObject([{ kind: 'note', part: 'axle' }]);
  expect(draftsOf({ ...step, mends: 'f1' }, off)).toMatchObject([{ kind: 'note', part: 'axle' }]);
});

test('a fail with a photo is also a find at its item, of its grade, so that it is mended before the next look', () => {
  const fail = { is: 'fail', defect: 'crack', photo: 'a'.repeat(64) } as const;
  expect(draftsOf(step, fail)).toMatchObject([
    { kind: 'checked', result: 'fail', why: 'crack' },
    { kind: 'found', part: 'axle', item: 'axle/rear gap', defect: 'crack', grade: 'safety', photo: fail.photo },
  ]);
});
