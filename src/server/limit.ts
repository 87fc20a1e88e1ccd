import { bodyLimit } from 'hono/body-limit';
import { problem, refused } from './problem.ts';

/** Refuses a longer body before it is read. */
export const tooLarge = (maxSize: number) =>
  bodyLimit({
    maxSize,
    onError: c =>
      problem(c, 413, [refused('body', `Expected at most ${maxSize / 1_000_000} MB, got more.`, 'Send less at once.')]),
  });
