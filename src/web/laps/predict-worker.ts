/** Predicts a lap beside the page: the log is read again, and every pair of sprockets in the box is tried. */
import { predictingLaps, Refusal } from '../../app/index.ts';
import type { PredictAsk, PredictTell } from './predicting.ts';

const say = (tell: PredictTell): void => self.postMessage(tell);

self.addEventListener('message', ({ data }: MessageEvent<PredictAsk>) => {
  predict(data).catch((error: unknown) => {
    if (!(error instanceof Refusal)) setTimeout(() => Promise.reject(error));
    else say({ kind: 'refused', problems: error.problems });
  });
});

async function predict(ask: PredictAsk): Promise<void> {
  const steps = predictingLaps({ ...ask, bytes: await logOf(ask.session.file) });
  for (;;) {
    const next = steps.next();
    if (next.done) return say({ kind: 'predicted', answer: next.value });
    say({ kind: 'trying', ...next.value });
  }
}

async function logOf(hash: string | null): Promise<Uint8Array | undefined> {
  const response = hash === null ? undefined : await fetch(`/api/files/${hash}`);
  return response?.ok ? new Uint8Array(await response.arrayBuffer()) : undefined;
}
