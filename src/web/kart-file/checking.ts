/** The page's end of the reader beside it. */
import type { KartChange, KartChoices } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import type { Kart, LibraryTexts, Problem as LineProblem } from '../../kart/index.ts';
import { kartFileWords } from '../words/kart-file.ts';

export type Book = {
  readonly what: 'book';
  readonly library: LibraryTexts;
  readonly retentions: string;
  /** As it is in force. */
  readonly kart: Kart;
  readonly facts: readonly Fact[];
};
export type Text = { readonly what: 'text'; readonly n: number; readonly text: string; readonly now: string };
export type Ask = Book | Text;
export type Told = {
  readonly n: number;
  readonly problems: readonly LineProblem[];
  readonly notes: readonly LineProblem[];
  /** The name it gives, where that is another. */
  readonly renamed?: string;
  readonly choices?: KartChoices;
  /** Comes a moment after the rest. */
  readonly change?: KartChange;
};

/** After so long without a key the text is read. */
const PAUSE_MS = 250;

export type Checking = {
  /** What is known of the kart, or what changed of it. */
  know(book: Omit<Book, 'what'>): void;
  check(text: string): void;
  stop(): void;
};

/** @param hear of the newest text only */
export function startChecking(hear: (told: Told) => void, failed: (message: string) => void): Checking {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  let n = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const send = (ask: Ask): void => worker.postMessage(ask);
  worker.onmessage = ({ data }: MessageEvent<Told>) => {
    if (data.n === n) hear(data);
  };
  worker.onerror = ({ message }) => failed(message || kartFileWords.programMissing);
  return {
    know: book => send({ what: 'book', ...book }),
    check(text) {
      n++;
      clearTimeout(timer);
      timer = setTimeout(() => send({ what: 'text', n, text, now: new Date().toISOString() }), PAUSE_MS);
    },
    stop() {
      clearTimeout(timer);
      worker.terminate();
    },
  };
}
