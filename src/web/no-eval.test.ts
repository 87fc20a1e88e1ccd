import './no-eval.ts';

import { expect, test } from 'vitest';
import { globalConfig } from 'zod/v4/core';

test('zod, loaded afterwards, makes no code from text', () => {
  expect(globalConfig.jitless).toBe(true);
});
