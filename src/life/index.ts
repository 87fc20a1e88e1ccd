export { changesKart, disturbersOf, type Disturbers } from './disturb.ts';
export { CAUSES, type Cause, disturbedBy, type Horizon, openedBy, type Standing, standing, standings } from './standing.ts';
