/** Plans beside the page, so that it never stands still: the best so far goes out as it is found, the last one as done. */
import '../no-eval.ts';

import { planningOf, Refusal } from '../../app/index.ts';
import type { Heard, Job } from './search.ts';

/** The page draws hundreds of rows for each; more often than this [ms] nobody can read them. */
const APART = 250;

self.addEventListener('message', ({ data }: MessageEvent<Job>) => {
  const say = (heard: Heard): void => self.postMessage(heard);
  try {
    const { facts, ask, ...standing } = data;
    const plans = planningOf(standing, facts, ask);
    let last = Number.NEGATIVE_INFINITY;
    for (;;) {
      const { done = false, value: plan } = plans.next();
      if (done || performance.now() - last > APART) {
        say({ plan, done });
        last = performance.now();
      }
      if (done) return;
    }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    say({ problems: error.problems });
  }
});
