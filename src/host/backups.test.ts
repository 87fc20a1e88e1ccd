import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { backupFile, backupsIn, openDataFolder, removeBackup, renameDevice, writeBackup } from './index.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-backups-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const written = (text: string) => ({
  copy: async (part: string) => writeFileSync(part, text),
  prove: async (part: string) => readFileSync(part, 'utf8'),
});

test('a backup gets its name only after it was proved, and is for its owner alone', async () => {
  const file = join(folder, 'in', 'one.sqlite');
  expect(await writeBackup(file, written('facts'))).toBe('facts');
  expect(readdirSync(join(folder, 'in'))).toEqual(['one.sqlite']);
  if (process.platform !== 'win32') expect(statSync(file).mode & 0o077).toBe(0);
});

test('a full disk, or a copy that does not prove, leaves nothing of it and what was there before', async () => {
  await writeBackup(join(folder, 'old.sqlite'), written('old'));
  const file = join(folder, 'new.sqlite');
  const full = async (part: string): Promise<void> => {
    writeFileSync(part, 'half');
    throw Object.assign(new Error('the disk is full'), { code: 'disk full' });
  };
  await expect(writeBackup(file, { ...written(''), copy: full })).rejects.toThrow('the disk is full');
  const damaged = async (): Promise<string> => Promise.reject(new Error('fact b is damaged'));
  await expect(writeBackup(file, { ...written('x'), prove: damaged })).rejects.toThrow('fact b is damaged');
  expect(readdirSync(folder)).toEqual(['old.sqlite']);
  expect(readFileSync(join(folder, 'old.sqlite'), 'utf8')).toBe('old');
});

test('what was left of one that was cut off is written over; a finished one never', async () => {
  const file = join(folder, 'one.sqlite');
  writeFileSync(`${file}.part`, 'left by a power cut');
  await writeBackup(file, written('one'));
  await expect(writeBackup(file, written('two'))).rejects.toThrow('Expected no file');
  expect(readFileSync(file, 'utf8')).toBe('one');
});

test('two backups of one second have two names, and the later one is the newer', async () => {
  const now = new Date('2026-03-01T10:20:59.400Z');
  const first = backupFile(folder, now);
  await writeBackup(first, written('one'));
  const next = backupFile(folder, now);
  await writeBackup(next, written('two'));
  expect([first, next].map(file => basename(file))).toEqual([
    'book-2026-03-01T10-20-59Z.sqlite',
    'book-2026-03-01T10-21-00Z.sqlite',
  ]);
  expect(backupsIn(folder).map(({ file }) => file)).toEqual([next, first]);
});

test('the backups of a folder are told by their names, the newest first, and nothing else is touched', async () => {
  for (const at of ['2026-05-01T03:00:00Z', '2026-05-02T03:00:00Z'])
    await writeBackup(backupFile(folder, new Date(at)), written(at));
  writeFileSync(join(folder, 'book-of-mine.sqlite'), 'mine');
  const all = backupsIn(folder);
  expect(all.map(({ at }) => at)).toEqual(['2026-05-02T03:00:00Z', '2026-05-01T03:00:00Z']);
  for (const one of all) removeBackup(one);
  expect(readdirSync(folder)).toEqual(['book-of-mine.sqlite']);
  expect(backupsIn(join(folder, 'none'))).toEqual([]);
});

test('a device that is set back to an old copy gets another name, and keeps it', () => {
  const env = { KARTWRIGHT_DATA: folder };
  const before = openDataFolder(env);
  const after = renameDevice(before);
  expect(after).not.toBe(before.device);
  expect(openDataFolder(env).device).toBe(after);
});
