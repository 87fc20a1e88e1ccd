import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { libraryFiles, openDataFolder, packageRoot } from './index.ts';

const made: string[] = [];
const temp = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-host-'));
  made.push(folder);
  return folder;
};
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

test('the data folder is the one named in KARTWRIGHT_DATA, made when missing and closed to others', () => {
  const path = join(temp(), 'a', 'b');
  const folder = openDataFolder({ KARTWRIGHT_DATA: path });
  expect(folder.path).toBe(path);
  expect(folder.book).toBe(join(path, 'book.sqlite'));
  if (process.platform !== 'win32') expect(statSync(path).mode & 0o077).toBe(0);
});

test('a device keeps its name, and two folders are two devices', () => {
  const one = temp();
  const first = openDataFolder({ KARTWRIGHT_DATA: one });
  expect(openDataFolder({ KARTWRIGHT_DATA: one }).device).toBe(first.device);
  expect(openDataFolder({ KARTWRIGHT_DATA: temp() }).device).not.toBe(first.device);
});

test('a device name whose writing was cut off is made anew', () => {
  const path = temp();
  writeFileSync(join(path, 'device'), '');
  expect(openDataFolder({ KARTWRIGHT_DATA: path }).device).not.toBe('');
});

test('a data folder that cannot be made names the way out', () => {
  const file = join(temp(), 'file');
  writeFileSync(file, '');
  expect(() => openDataFolder({ KARTWRIGHT_DATA: join(file, 'below') })).toThrow(/Set KARTWRIGHT_DATA/);
});

test('the library is found from the package root, wherever the module was bundled to', () => {
  const files = libraryFiles(packageRoot());
  for (const part of [files.kinds, files.templates, files.rules]) expect(Object.keys(part).length).toBeGreaterThan(0);
});
