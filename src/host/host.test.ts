import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles, openDataFolder, packageRoot, packedLibrary } from './index.ts';

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

describe('the library as the build keeps it', () => {
  const plain = libraryFiles();
  const text = demoText().kart;
  /** A root whose data is a copy of the shipped one, and the pack of it. */
  const packed = (): { readonly root: string; readonly pack: string } => {
    const root = temp();
    cpSync(join(packageRoot(), 'data'), join(root, 'data'), { recursive: true });
    const pack = join(root, 'library.json');
    writeFileSync(pack, packedLibrary(root));
    return { root, pack };
  };

  test('reads every file of it, and each kart file to the same kart', async () => {
    const { root, pack } = packed();
    const library = libraryFiles(root, pack);
    const { packs: _, ...texts } = library;
    const files = Object.values(texts).flatMap(folder => Object.keys(folder));
    expect(Object.keys(library.packs ?? {}).length).toBe(files.length);
    expect(await kartReader(library).read(text)).toEqual(await kartReader(plain).read(text));
  });

  test('tells the same errors at the same places', async () => {
    const { root, pack } = packed();
    const wrong = text.replace('wheelbase: 1045 mm', 'wheelbase: 1045 kg');
    const told = await kartReader(libraryFiles(root, pack)).read(wrong);
    expect(told.ok).toBe(false);
    expect(told).toEqual(await kartReader(plain).read(wrong));
  });

  test('does not stand for a file that was corrected since', async () => {
    const { root, pack } = packed();
    const kinds = join(root, 'data', 'kinds', 'brakes.yaml');
    writeFileSync(kinds, `${readFileSync(kinds, 'utf8')}# corrected\nno such key\n`);
    const library = libraryFiles(root, pack);
    expect(library.packs).not.toHaveProperty(['kinds/brakes.yaml']);
    expect(library.packs).toHaveProperty(['kinds/fuel.yaml']);
    expect((await kartReader(library).read(text)).ok).toBe(false);
  });

  test('is done without where there is none', () => {
    expect(libraryFiles(packageRoot(), join(temp(), 'none.json'))).toEqual(plain);
  });
});
