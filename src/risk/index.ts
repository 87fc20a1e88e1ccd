export { type Fitness, fitness, type Reason } from './fitness.ts';
