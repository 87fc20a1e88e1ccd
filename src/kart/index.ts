export { changesKart, type Disturbers, disturbersOf, replacesPart } from './disturb.ts';
export * from './model.ts';
export { circleInWork } from './work-order.ts';
