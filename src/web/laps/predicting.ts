/** A prediction asked for beside the page; another question, or a press, ends the one that runs. */
import { useEffect, useState } from 'preact/hooks';
import type { PredictedWhole, PredictFrom, Problem } from '../../app/index.ts';
import type { SweepProgress } from '../../laps/index.ts';
import type { Session } from '../session.ts';
import { predictWords } from '../words/laps/predict.ts';

export type PredictAsk = Omit<PredictFrom, 'bytes'>;
export type PredictWith = PredictAsk & { readonly log: Blob | undefined };
export type PredictTell =
  | ({ readonly kind: 'trying' } & SweepProgress)
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'predicted'; readonly answer: PredictedWhole };
type Heard = PredictTell | { readonly kind: 'reading' } | { readonly kind: 'cancelled' };

export function usePredicting(
  session: Session,
  ask: PredictAsk | undefined,
): {
  readonly heard: Heard | undefined;
  readonly cancel: () => void;
  readonly again: () => void;
} {
  const [heard, setHeard] = useState<Heard>();
  const [turn, setTurn] = useState(0);
  const [stop, setStop] = useState<() => void>();
  // The record may have grown: what was asked is the same as long as nothing new is in it.
  const asked = ask && [ask.session.fact, ask.gearing, ask.box, ask.facts.length, ask.kart.name].join(' ');
  useEffect(() => {
    if (ask === undefined) return undefined;
    setHeard({ kind: 'reading' });
    const worker = new Worker(new URL('./predict-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<PredictTell>) => setHeard(data);
    worker.onerror = ({ message }) => setHeard({ kind: 'refused', problems: [failed(message)] });
    const { file } = ask.session;
    const log = file === null ? Promise.resolve(undefined) : session.ask.file(file);
    log.then(
      kept => worker.postMessage({ ...ask, log: kept } satisfies PredictWith),
      (error: unknown) => setHeard({ kind: 'refused', problems: session.ask.problems(error) }),
    );
    setStop(() => () => {
      worker.terminate();
      setHeard({ kind: 'cancelled' });
    });
    return () => worker.terminate();
  }, [asked, turn]);
  return { heard, cancel: () => stop?.(), again: () => setTurn(turn + 1) };
}

const failed = (message: string | undefined): Problem => ({
  code: 'book',
  where: 'predict',
  message: predictWords.lapCouldNotBePredicted(message || predictWords.itsProgramIsMissing),
  remedy: predictWords.nothingWasRecordedLoad,
});
