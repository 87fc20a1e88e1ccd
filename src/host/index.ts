import { randomUUID } from 'node:crypto';
import type { Clock, Ids } from '../app/index.ts';

export { type DataFolder, openDataFolder } from './folder.ts';
export { demoText, kartReader, libraryFiles, packedLibrary } from './library.ts';
export { packageRoot } from './root.ts';

export const systemClock: Clock = { now: () => new Date() };
export const randomIds: Ids = { next: () => randomUUID() };
