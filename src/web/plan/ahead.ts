import { useEffect, useState } from 'preact/hooks';
import type { Plan, Step } from '../../prep/index.ts';
import { afterPaint } from '../later.tsx';
import { finished } from './finished.ts';
import { nextStep } from './next-step.ts';

export type Ahead = { readonly step: Step; readonly plan: Plan };

/** What comes once the step at hand is done, in the plan as it will be then; worked out while the hands are at it. */
export function useAhead(plan: Plan, step: Step | undefined): Ahead | undefined {
  const [ahead, look] = useState<Ahead & { readonly after: string }>();
  const after = step?.state === 'ready' ? step.key : undefined;
  useEffect(() => {
    if (after === undefined) return;
    return afterPaint(() => {
      const then = finished(plan, after);
      const next = nextStep(then, step);
      look(next && { after, step: next, plan: then });
    });
  }, [plan, after]);
  return ahead !== undefined && ahead.after === after ? ahead : undefined;
}
