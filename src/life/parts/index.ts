export { type LifeAsk, lifeLines } from './line.ts';
export type { Known, LifeLine, LifeSheet } from './model.ts';
export { lifeSheet } from './sheet.ts';
