/** Predicts a lap beside the page: the log is read again, and every pair of sprockets in the box is tried. */
import '../no-eval.ts';

import { predictingLaps, Refusal } from '../../app/index.ts';
import type { PredictTell, PredictWith } from './predicting.ts';

const say = (tell: PredictTell): void => self.postMessage(tell);

self.addEventListener('message', ({ data }: MessageEvent<PredictWith>) => {
  predict(data).catch((error: unknown) => {
    if (!(error instanceof Refusal)) setTimeout(() => Promise.reject(error));
    else say({ kind: 'refused', problems: error.problems });
  });
});

async function predict({ log, ...ask }: PredictWith): Promise<void> {
  const steps = predictingLaps({ ...ask, bytes: log && new Uint8Array(await log.arrayBuffer()) });
  for (;;) {
    const next = steps.next();
    if (next.done) return say({ kind: 'predicted', answer: next.value });
    say({ kind: 'trying', ...next.value });
  }
}
