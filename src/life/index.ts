export { changesKart, type Disturbers, disturbersOf } from './disturb.ts';
export {
  CAUSES,
  type Cause,
  disturbedBy,
  type Horizon,
  openedBy,
  type Standing,
  standing,
  standings,
} from './standing.ts';
