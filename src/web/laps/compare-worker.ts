/** Compares two laps beside the page: a long log and its smoothing take seconds on a phone. */
import { type CompareAsk, type CompareTell, compareLaps } from './comparing.ts';

const say = (tell: CompareTell): void => self.postMessage(tell);

async function fetched(hash: string): Promise<Blob> {
  const response = await fetch(`/api/files/${hash}`);
  if (!response.ok) throw new Error(`the book did not give its log: ${response.status} ${response.statusText}`);
  return response.blob();
}

self.addEventListener('message', ({ data }: MessageEvent<CompareAsk>) => {
  compareLaps(data, fetched, bytes => say({ kind: 'reading', bytes })).then(say, (error: unknown) =>
    say({ kind: 'not compared', say: error instanceof Error ? `${error.message}.` : String(error) }),
  );
});
