export { type SparesAsk, sparesBox } from './box.ts';
export { type Choice, type Choices, type Chosen, chooseSpares, type SpareBudget } from './choose.ts';
export { countsOf, type Enough, type Exposed, enoughSpares } from './failures.ts';
export { inBox, pileOf } from './in-box.ts';
export type { Pile, Purchase, SparesBox, Told } from './model.ts';
