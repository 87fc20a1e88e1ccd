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
