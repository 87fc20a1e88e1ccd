/** Compares two laps beside the page: a long log and its smoothing take seconds on a phone. */
import '../no-eval.ts';

import { type CompareAsk, type CompareTell, compareLaps } from './comparing.ts';

const say = (tell: CompareTell): void => self.postMessage(tell);

self.addEventListener('message', ({ data }: MessageEvent<CompareAsk>) => {
  compareLaps(data, bytes => say({ kind: 'reading', bytes })).then(say, (error: unknown) =>
    say({ kind: 'not compared', say: error instanceof Error ? `${error.message}.` : String(error) }),
  );
});
