/** How long work takes on this kart. */
export { asPlanned, learnTiming, type Minutes, type Timing } from './learnt.ts';
export { type Timed, timed } from './observed.ts';
