/** Brings a log into the book beside the page, which answers from the book and writes. It ends with its answer. */
import '../no-eval.ts';

import { importLaps, type LapBook, Refusal } from '../../app/index.ts';
import type { ImportAsk, ImportTell } from './importing.ts';

type Message = ImportAsk | { readonly answer: unknown };

const say = (tell: ImportTell, transfer: Transferable[] = []): void => self.postMessage(tell, { transfer });
let take: (answer: unknown) => void = () => undefined;

/** One question at a time: the next is asked when this one is answered. */
const asked = <T>(question: Extract<ImportTell, { kind: 'asks' }>['question'], transfer?: Transferable[]): Promise<T> =>
  new Promise(done => {
    take = answer => done(answer as T);
    say({ kind: 'asks', question }, transfer);
  });

const book: LapBook = {
  facts: (...said) => asked({ what: 'facts', said }),
  state: (...said) => asked({ what: 'state', said }),
  // The file goes over as it lies there, not as a copy.
  record: (...said) => asked({ what: 'record', said }, said[3] && [said[3].bytes.buffer as ArrayBuffer]),
  now: () => new Date().toISOString(),
};

self.addEventListener('message', ({ data }: MessageEvent<Message>) => {
  if ('answer' in data) return take(data.answer);
  importLaps(book, data.kart, { chunks: piecesOf(data.file) }, data.said).then(
    done => say({ kind: 'done', done }),
    (error: unknown) => {
      if (error instanceof Refusal) say({ kind: 'refused', problems: error.problems });
      else setTimeout(() => Promise.reject(error)); // the page hears of it by its error event
    },
  );
});

/** A browser's stream cannot be gone through with `for await` everywhere yet. */
async function* piecesOf(file: Blob): AsyncIterable<Uint8Array> {
  const reader = file.stream().getReader();
  for (let piece = await reader.read(); piece.value; piece = await reader.read()) yield piece.value;
}
