/** `calc removal`: what must come off for a list of jobs, in which steps, and what to do when there are only so many minutes. */
import { type Budget, chooseUnderBudget, leastRemoval, steps, type Work } from '../prep/index.ts';
import { bareProblem, type Solution } from './bare-problem.ts';
import {
  type RemovalQuestion,
  removalAskOf,
  removalProblems,
  removalQuestion,
  workOf,
} from './bare-removal-question.ts';

export const bareRemoval = bareProblem<RemovalQuestion>({
  name: 'removal',
  title: 'What must come off, in which steps, and what to do in a short window',
  how: [
    'One team, one thing at a time: take off, job, put back and check, change of posture. Crew and tools are not looked at.',
    'minutes, off and steps are a whole plan for all jobs that ends closed; no plan takes less than bound.',
    'removal is the cheapest set of parts that opens all jobs, each part taken off, put back and checked once; its bound likewise.',
    'Small work (30 parts, 30 jobs) is searched to the end; larger work is planned on the cheapest set with few changes of posture.',
    'With budget: safety first, by number done of each class of severity, or by value where none is stated; then the value of each',
    'tier; then the fewest minutes. Of each job left out: what it adds, and a window in which it enters.',
  ],
  sources: [
    'Koc, Sabuncuoglu and Erel 2009, exact formulations on AND/OR graphs (abstract read)',
    'Goldwasser and Motwani 1997, how hard it is (abstract read)',
    'Knuth 1977, A generalization of Dijkstra’s algorithm; Hart, Nilsson and Raphael 1968, A* (memory)',
    'every state of small work walked through, and an integer programme: the figures in checks/rows/removal.json',
  ],
  example: {
    parts: [
      { id: 'wheel', removeMin: 2, refitMin: 3, verifyMin: 1 },
      { id: 'hub', access: [['wheel']], removeMin: 3, refitMin: 4, verifyMin: 2 },
    ],
    jobs: [{ id: 'bearing', minutes: 10, needsRemoved: [['hub']] }],
  },
  schema: removalQuestion,
  check: removalProblems,
  solve: solution,
});

function solution(asked: RemovalQuestion): Solution {
  const work = workOf(asked);
  const id = asked.id === undefined ? {} : { id: asked.id };
  const plan = steps(work);
  if (plan.kind === 'no plan')
    return { ...id, noPlan: plan.why, ...(asked.budget === undefined ? {} : budgetOf(work, asked.budget)) };
  const removal = leastRemoval(removalAskOf(work));
  return {
    ...id,
    minutes: plan.minutes,
    off: plan.off,
    steps: plan.steps,
    bound: plan.bound,
    ...(removal.kind === 'found'
      ? { removal: { minutes: removal.minutes, off: removal.off, bound: removal.bound } }
      : {}),
    ...(asked.budget === undefined ? {} : budgetOf(work, asked.budget)),
  };
}

const budgetOf = (work: Work, window: number): Solution => ({
  budget: inWords(work, window, chooseUnderBudget(work, window)),
});

const inWords = (work: Work, window: number, found: Budget): Solution => {
  if (found.kind === 'no plan') return { window, noPlan: found.why };
  if (found.kind === 'too short')
    return { window, tooShort: `To close up alone takes ${found.needs} minutes.`, needs: found.needs };
  const { kind, safetyNeeds, ...rest } = found;
  const done = new Set(found.chosen);
  const tiers = [...new Set(work.jobs.map(one => one.tier))].sort((a, b) => a - b);
  return {
    window,
    ...rest,
    valueByTier: tiers.map(tier =>
      work.jobs.reduce((sum, one) => sum + (one.tier === tier && done.has(one.id) ? one.value : 0), 0),
    ),
    ...(safetyNeeds === undefined ? {} : { safetyNeeds }),
  };
};
