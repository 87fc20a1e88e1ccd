/** What a kart is, and the reader of the file that says so. */

export { changesKart, type Disturbers, disturbersOf, replacesPart } from './disturb.ts';
export type { Library, LibraryTexts, Packs, ReadLibrary } from './library.ts';
export { packLibrary, readLibrary } from './library.ts';
export * from './model.ts';
export { functionsNeeding, partsOf } from './needs.ts';
export { type NewKartFile, newKartFile } from './new-kart-file.ts';
export { leastPostureMinutes, postureMinutes } from './posture-minutes.ts';
export type { Problem } from './problem.ts';
export { type KartRead, readKart } from './read-kart.ts';
/** The reader, fetched when it is wanted: a page mostly gets its karts finished. */
export const fetchReadKart = async () => (await import('./read-kart.ts')).readKart;
export { jsonSchema } from './shapes.ts';
export { suggest } from './suggest.ts';
export { circleInWork, workOrder } from './work-order.ts';
