import type { Plan, Step } from '../../prep/index.ts';

/** The step to offer: the first that can be done after this one, else the first that can be done at all. */
export function nextStep(plan: Plan, after?: Step): Step | undefined {
  const ready = plan.steps.filter(s => s.state === 'ready');
  const place = after === undefined ? undefined : plan.steps.find(s => s.key === after.key && s.state !== 'done');
  const from = place?.n ?? 0;
  return ready.find(s => s.n > from) ?? ready[0] ?? plan.steps.find(s => s.state !== 'done');
}
