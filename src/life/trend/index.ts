export {
  type EndedBy,
  type NoTrend,
  type PowerLaw,
  powerLaw,
  powerLawOf,
  shapeLimits,
  type Watched,
} from './power-law.ts';
export { laplaceByLuck, type Trend, trendOf } from './trend-test.ts';
