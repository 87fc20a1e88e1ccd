/**
 * The plan that the page shows. Alone and with time without end it is the one that came with the answers. For more hands or
 * certain times it is searched beside the page, and kept while only its own steps are done: new things due, or other hands,
 * make a new one, and what that does otherwise is said.
 */
import type { FirstAnswers, Problem } from '../../app/index.ts';
import { type Plan, type PlanDifference, planDifference } from '../../prep/index.ts';
import { carried } from './carried.ts';
import { askOf, type Crew, isAlone } from './crew.ts';
import { finished } from './finished.ts';
import type { Heard, Job } from './search.ts';

export type Planned = {
  readonly plan: Plan;
  readonly crew: Crew;
  /** A better one is being looked for. */
  readonly searching: boolean;
  readonly changed?: PlanDifference | undefined;
  readonly problems: readonly Problem[];
};
export type Planner = {
  /** A step was done as the plan asks: whatever plan is shown before the next answers, it stands there as done. */
  finished(step: string): Planned;
  /** New answers of a kart: what is done, found, due. */
  arrived(answers: FirstAnswers): Planned;
  /** Other hands or times make another plan, other names do not. */
  setCrew(crew: Crew): void;
  /** The plan anew: it is later than was thought. */
  again(): void;
  /** Stops looking; the best so far stays. */
  stop(): void;
  /** What changed has been read. */
  seen(): void;
};

/** @param crewOf what was said for this kart, on this device */
export function createPlanner(
  search: (job: Omit<Job, 'facts'>, hear: (heard: Heard) => void) => () => void,
  crewOf: (kart: string) => Crew,
  show: (planned: Planned) => void,
): Planner {
  let answers: FirstAnswers | undefined;
  let planned: Planned | undefined;
  /** Steps done since the answers were given. */
  let done: readonly string[] = [];
  let stop = (): void => undefined;

  const withDone = (plan: Plan): Plan => done.reduce(finished, plan);
  const put = (part: Partial<Planned>): void => {
    if (planned === undefined) return;
    planned = { ...planned, ...part };
    show(planned);
  };

  /** @param before the plan against which the new one is held; none where nothing was agreed before */
  const begin = (from: FirstAnswers, crew: Crew, before: Plan | undefined): void => {
    stop();
    const now = new Date().toISOString(); // the answers may be of an hour ago
    stop = search({ kart: from.kart, state: from.state, now, ask: askOf(crew, now) }, heard => {
      if ('problems' in heard) return put({ searching: false, problems: heard.problems });
      const plan = withDone(heard.plan);
      const changed = before && ifAny(planDifference(withDone(before), plan));
      put({ plan, searching: !heard.done, ...(changed && { changed }) });
    });
  };

  return {
    finished(step) {
      if (planned === undefined) throw new Error(`planner: answers must have arrived before ${step} is finished`);
      done = [...done, step];
      planned = { ...planned, plan: finished(planned.plan, step) };
      return planned;
    },
    arrived(next) {
      const last = answers?.kart.name === next.kart.name ? answers : undefined;
      answers = next;
      done = [];
      if (last === undefined || planned === undefined) {
        const crew = crewOf(next.kart.name);
        planned = { plan: next.plan, crew, searching: !isAlone(crew), problems: [] };
        stop();
        if (!isAlone(crew)) begin(next, crew, undefined);
        return planned;
      }
      const { crew, plan, searching } = planned;
      const against = planDifference(last.plan, next.plan);
      const other = against.added.length + against.dropped.length > 0;
      const news = other && next.facts[0]?.fact.kind !== 'struck'; // who takes something back knows what changes
      if (isAlone(crew)) {
        const changed = news ? against : undefined;
        planned = { ...planned, plan: next.plan, ...(changed && { changed }) };
        return planned;
      }
      const kept = carried(plan, next.plan, next.state);
      const anew = searching || other;
      planned = { ...planned, plan: kept, searching: anew };
      if (anew) begin(next, crew, news ? kept : undefined);
      return planned;
    },
    setCrew(crew) {
      if (answers === undefined || planned === undefined) return;
      const names = planned.crew.people === crew.people && planned.crew.times === crew.times;
      if (names) return put({ crew });
      stop();
      // Other times show in what is left out; a helper who leaves moves rows of the same work.
      const before = isAlone(planned.crew) || planned.crew.times !== crew.times ? undefined : planned.plan;
      planned = { ...planned, crew, changed: undefined, problems: [], searching: !isAlone(crew) };
      if (isAlone(crew)) return put({ plan: withDone(answers.plan) });
      put({});
      begin(answers, crew, before);
    },
    again() {
      if (answers === undefined || planned === undefined || isAlone(planned.crew)) return;
      put({ searching: true, problems: [] });
      begin(answers, planned.crew, planned.plan);
    },
    stop() {
      stop();
      put({ searching: false });
    },
    seen: () => put({ changed: undefined }),
  };
}

const ifAny = (difference: PlanDifference): PlanDifference | undefined =>
  difference.added.length + difference.dropped.length + difference.moved.length > 0 ? difference : undefined;
