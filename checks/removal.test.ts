/**
 * What must come off, and what is chosen in a window: instances of our own. Those made by hand carry their arithmetic in
 * the row; for the generated ones every state was walked through outside the project. How stands in each row.
 */
import { describe } from 'vitest';
import { bareRemoval } from '../src/app/bare-removal.ts';
import rows from './rows/removal.json' with { type: 'json' };
import { type Given, type Numbers, type Row, runRows } from './rows.ts';

type Answer = {
  readonly minutes: number;
  readonly budget?: {
    readonly minutes: number;
    readonly chosen: readonly string[];
    readonly valueByTier: readonly number[];
  };
};

describe('removal', () => {
  runRows(rows as readonly Row[], ({ problem }: Given): Numbers => {
    const asked = JSON.parse(String(problem)) as { readonly jobs: readonly { readonly id: string }[] };
    const { minutes, budget } = bareRemoval.ask(asked) as Answer;
    const number = (id: string): number => asked.jobs.findIndex(job => job.id === id);
    return budget
      ? {
          minutes,
          'minutes chosen': budget.minutes,
          'jobs chosen': budget.chosen.map(number),
          'value by tier': budget.valueByTier,
        }
      : { minutes };
  });
});
