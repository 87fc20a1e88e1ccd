export { type Effect, type HelpedAsk, helped, NOT_SEPARATE, type NotTold, type Told, type Verdict } from './helped.ts';
export { holm } from './holm.ts';
export { type RunSpread, runSpreadFrom } from './run-spread.ts';
export type { TestLap, TestRun } from './series.ts';
export { type PlannedRun, smallestEffect } from './smallest.ts';
export { moreFor, type Order, ordersWith, planFor, type TestPlan } from './test-plan.ts';
export { type Advice, adviceFor, effectSay, secondsText, WORTH } from './words.ts';
