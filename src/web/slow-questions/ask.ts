/** Questions that take a device seconds, worked out beside the page, which stays alive meanwhile. Another question ends the one that runs. */
import type {
  Problem,
  RiskTexts,
  SparesAnswer,
  SparesQuestion,
  WeakLinksAnswer,
  WeakLinksQuestion,
} from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import type { Session } from '../session.ts';
import { pageWords } from '../words/page.ts';

/** What the whole book holds, of all its karts. */
export type Gathered = {
  readonly facts: readonly Fact[];
  /** Each kart with the text of its file. */
  readonly karts: readonly { readonly text: string; readonly kart: Kart }[];
  readonly now: string;
};
export type Question =
  | { readonly what: 'weak links'; readonly kart: string; readonly ask: WeakLinksQuestion; readonly texts: RiskTexts }
  | { readonly what: 'spares'; readonly kart: string; readonly ask: SparesQuestion; readonly priors: string };
export type Job = { readonly book: Gathered; readonly question: Question };
export type Heard<A> = { readonly answer: A } | { readonly problems: readonly Problem[] };
type AnswerTo<Q extends Question> = Q extends { what: 'spares' } ? SparesAnswer : WeakLinksAnswer;

/** Returns the way to stop it; nothing is heard afterwards. */
export function askBeside<Q extends Question>(
  session: Session,
  question: Promise<Q>,
  hear: (heard: Heard<AnswerTo<Q>>) => void,
): () => void {
  let stopped = false;
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const stop = (): void => {
    stopped = true;
    worker.terminate();
  };
  const told = (heard: Heard<AnswerTo<Q>>): void => {
    if (stopped) return;
    stop();
    hear(heard);
  };
  worker.onmessage = ({ data }: MessageEvent<Heard<AnswerTo<Q>>>) => told(data);
  worker.onerror = ({ message }) => told({ problems: [failed(message)] });
  Promise.all([session.ask.gathered(), question]).then(
    ([book, asked]) => worker.postMessage({ book, question: asked } satisfies Job),
    (error: unknown) => told({ problems: session.ask.problems(error) }),
  );
  return stop;
}

const failed = (message: string | undefined): Problem => ({
  code: 'book',
  where: 'page',
  message: pageWords.thisCouldNotBeWorked(message || pageWords.itsProgramIsMissing),
  remedy: pageWords.nothingWasRecordedLoad,
});
