/** What holds joints, what can be added, and which of it under a budget. */
export { type Addition, additionsFor } from './additions.ts';
export { type Catalogue, type Named, namedBy, type Retention, readRetentions, type SharedAmong } from './catalogue.ts';
export { type Budget, type Choice, type ChoiceProblem, type Chooser, chooser, type Option } from './choose.ts';
export { type Pair, pairOf, shareOf } from './pair.ts';
