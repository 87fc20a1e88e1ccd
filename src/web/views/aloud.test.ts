import { expect, test } from 'vitest';
import type { Step } from '../../prep/index.ts';
import { aloudOf } from './aloud.ts';

const step = {
  n: 7,
  action: 'measure',
  item: 'rear hub right/rear track',
  part: 'rear hub right',
  title: 'Gap from bearing to hub',
  caution: 'Chock the kart.',
  target: { si: 0.14255, unit: 'mm', text: '142.55 mm (5 5/8 in)' },
  tolerance: { min: null, max: null, text: 'at least 141.55 mm' },
  how: 'Read on a tape in the 2nd groove, 20 N·m first',
  accept: 'within 1 mm, in line',
} as Step;

test('the caution comes before the work, and units are words', () => {
  expect(aloudOf(step)).toBe(
    'Step 7. Measure: Gap from bearing to hub, rear hub right. Caution. Chock the kart. ' +
      'Target: 142.55 millimetres (5 5/8 inches); at least 141.55 millimetres. ' +
      'Read on a tape in the 2nd groove, 20 newton metres first. It holds when: within 1 millimetres, in line.',
  );
});

test('what a step does not have is not said', () => {
  const bare = { ...step, caution: null, target: null, tolerance: null, how: '', accept: '' };
  expect(aloudOf(bare)).toBe('Step 7. Measure: Gap from bearing to hub, rear hub right.');
});
