export { type Coming, coming } from './coming.ts';
export { type PlanDifference, planDifference } from './difference.ts';
export { dueList, nextEvent } from './due.ts';
export type {
  Due,
  LeftOut,
  Plan,
  PlanWindow,
  Shown,
  Step,
  StepAction,
  WhileOpen,
  WhyNow,
  WindowShown,
} from './model.ts';
export { MOST_PEOPLE, makePlan, type PlanAsk, planning } from './plan.ts';
export {
  ANY,
  type Budget,
  chooseUnderBudget,
  leastRemoval,
  partMinutes,
  type RemovalAsk,
  steps,
  type Work,
} from './removal/index.ts';
export {
  type Effort,
  problemsOf as scheduleProblems,
  type Schedule,
  type ScheduleProblem,
  solve as solveSchedule,
  solving as solvingSchedule,
} from './schedule/index.ts';
export { amountOf } from './setting-value.ts';
export { readSetupEffects, type SetupEffect, type SetupEffects } from './setup-effects.ts';
export type { Observed, Outing } from './setup-history.ts';
export {
  type Difference,
  type Hint,
  type Moment,
  type Setting,
  type SetupSheet,
  type SheetAsk,
  settingName,
  setupSheet,
} from './setup-sheet.ts';
export { type Aim, aimOf, type Bound, gaugeOf, limitsOf, toward } from './targets/index.ts';
export { asPlanned, learnTiming, type Timing, timed } from './timing/index.ts';
export {
  type AfterSaid,
  type AirPoint,
  afterSession,
  airQuestion,
  coldSet,
  type Lead,
  type Missing,
  type Pressures,
  type PressuresSaid,
  type Since,
  sprockets,
  type TrackAsk,
  type TrackDraft,
  type TrackPart,
  type TrackSession,
  type TrackSheet,
  type TrackSubject,
  trackRecord,
  trackSheet,
} from './track/index.ts';
export { passOf } from './write.ts';
