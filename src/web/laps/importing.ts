/** A log brought into the book beside the page: it is read, hashed and cut there; the page only answers what its book holds, and writes. */
import { type LapsIn, type LogSaid, type PlainApp, type Problem, Refusal } from '../../app/index.ts';
import { lapsWords } from '../words/laps/sheet.tsx';

export type ImportAsk = { readonly file: Blob; readonly kart: string; readonly said: LogSaid };
/** What importing needs of the book of the page, one after the other. */
type Asked = 'facts' | 'state' | 'record';
type Question = { [K in Asked]: { readonly what: K; readonly said: Parameters<PlainApp[K]> } }[Asked];
export type ImportTell =
  | { readonly kind: 'asks'; readonly question: Question }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'done'; readonly done: LapsIn };

export function importInWorker(app: Pick<PlainApp, Asked>, ask: ImportAsk): Promise<LapsIn> {
  const worker = new Worker(new URL('./import-worker.ts', import.meta.url), { type: 'module' });
  const done = new Promise<LapsIn>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<ImportTell>) => {
      if (data.kind === 'done') resolve(data.done);
      else if (data.kind === 'refused') reject(new Refusal(data.problems));
      else answered(app, data.question).then(answer => worker.postMessage({ answer }), reject);
    };
    worker.onerror = ({ message }) => reject(new Error(message || lapsWords.nothingItsProgramCould));
    worker.postMessage(ask);
  });
  return done.finally(() => worker.terminate());
}

function answered(app: Pick<PlainApp, Asked>, question: Question): Promise<unknown> {
  if (question.what === 'facts') return app.facts(...question.said);
  return question.what === 'state' ? app.state(...question.said) : app.record(...question.said);
}
