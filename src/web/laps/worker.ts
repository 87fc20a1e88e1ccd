/** Reads a log beside the page, so that it never stands still. To cancel, the page ends this worker: nothing is kept of it. */
import '../no-eval.ts';

import type { Ask } from './log.ts';
import { LogReading } from './reading.ts';

const log = new LogReading(tell => self.postMessage(tell));
let turn: Promise<void> = Promise.resolve();

self.addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  turn = turn.then(() => log.hear(data));
  // A fault is the worker's own: the page hears of it by its error event.
  turn.catch(error => setTimeout(() => Promise.reject(error)));
});
