/** Drag: a kart rolling out, and what its air and rolling do to its speed. */
export { airForce, balanceSpeed, type Powered, rollingForce } from './balance-speed.ts';
export { bothWays, type CoastResult, type Known } from './both-ways.ts';
export { coastSpeed, coastTime, type Drag, dragOf, type Rolling, type Slowing, slowingOf } from './coast.ts';
export { drag } from './drag.ts';
export { type CoastFit, fitCoast, type TracePoint } from './fit.ts';
