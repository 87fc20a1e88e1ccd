import { describe, expect, test } from 'vitest';
import { readText, tracked } from './files.ts';

const folders = [...new Set(tracked.flatMap(path => /^src\/([^/]+)\//.exec(path)?.[1] ?? []))];

describe('the folders of src/', () => {
  test('are there', () => expect(folders.length).toBeGreaterThan(5));

  test('each has a README of about one screen', () => {
    const missing = folders.filter(folder => !tracked.includes(`src/${folder}/README.md`));
    expect(missing).toEqual([]);
    const long = folders.filter(folder => readText(`src/${folder}/README.md`).split('\n').length > 80);
    expect(long).toEqual([]);
  });

  test('each stands in the folder table of ARCHITECTURE.md', () => {
    const picture = readText('ARCHITECTURE.md');
    expect(folders.filter(folder => !picture.includes(`\`${folder}\``))).toEqual([]);
  });
});
