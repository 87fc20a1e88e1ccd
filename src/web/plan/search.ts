/** A plan being made in a worker of its own. It ends by itself, or at once when it is stopped; what was heard till then stays. */
import type { PlanAsk, Problem } from '../../app/index.ts';
import type { Fact, State } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import type { Plan } from '../../prep/index.ts';
import { planWords } from '../words/plan.tsx';

export type Job = {
  readonly kart: Kart;
  readonly state: State;
  readonly facts: readonly Fact[];
  readonly now: string;
  readonly ask: PlanAsk;
};
export type Heard = { readonly plan: Plan; readonly done: boolean } | { readonly problems: readonly Problem[] };
/** Returns the way to stop it. */
export type Search = (job: Job, hear: (heard: Heard) => void) => () => void;

export const searchInWorker: Search = (job, hear) => {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<Heard>) => {
    if (!('plan' in data) || data.done) worker.terminate();
    hear(data);
  };
  worker.onerror = ({ message }) => {
    worker.terminate();
    hear({ problems: [notPlanned(message)] });
  };
  worker.postMessage(job);
  return () => worker.terminate();
};

const notPlanned = (message: string | undefined): Problem => ({
  code: 'book',
  where: 'plan',
  message: planWords.planForTheseHands(message || planWords.itsProgramCould),
  remedy: planWords.lastPlanStaysSee,
});
