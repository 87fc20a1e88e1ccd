export { type Exposure, type KartBook, livesOf, type PartLife } from './part-lives.ts';
export { type Priors, priorOfKind, readPriors } from './priors.ts';
