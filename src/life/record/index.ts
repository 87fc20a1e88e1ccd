export { type JointRecord, type JointTimes, jointRecords, type LetGo } from './joint-record.ts';
export { type KindRecord, kindRecords, lifeNow, type RecordAsk } from './of-kind.ts';
export { type Exposure, type KartBook, livesOf, type PartLife } from './part-lives.ts';
export { type Priors, priorOfKind, readPriors } from './priors.ts';
