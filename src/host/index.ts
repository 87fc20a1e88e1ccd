import { randomBytes, randomUUID } from 'node:crypto';
import type { Clock, Ids } from '../app/index.ts';

export { localAddresses } from './addresses.ts';
export { type Backup, backupFile, backupsIn, removeBackup, writeBackup } from './backups.ts';
export { type Certificate, certificateFor } from './certificate.ts';
export { everyDay } from './daily.ts';
export { type DataFolder, openDataFolder, renameDevice } from './folder.ts';
export { demoText, kartReader, libraryFiles, packedLibrary } from './library.ts';
export { fileRegister, newCode, newDeviceId, newToken } from './register.ts';
export { packageRoot } from './root.ts';
export { fileSnapshots } from './snapshots.ts';

export const systemClock: Clock = { now: () => new Date() };
export const randomIds: Ids = { next: () => randomUUID(), salt: () => randomBytes(16).toString('hex') };
