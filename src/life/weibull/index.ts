export { type Between, type Evidence, evidenceOf } from './evidence.ts';
export { type Covariance, type NoFit, type WeibullFit, weibullFit } from './fit.ts';
export { type FixedShape, scaleForShape } from './fixed-shape.ts';
export { logLikelihood } from './likelihood.ts';
export { CONFIDENCE, type FitLimits, type Limits, likelihoodLimits, waldLimits, waldShare } from './limits.ts';
export { ageAtShare, chanceBetween, hazardBetween, hazardRate, meanLife, type Weibull } from './weibull.ts';
