export { kaplanMeier, type Survival } from './kaplan-meier.ts';
export { type Ranked, rankedFailures, rankRegression } from './ranks.ts';
export { heightOf, type PaperPoint, type Tick, type WeibullPaper, weibullPaper } from './weibull-paper.ts';
