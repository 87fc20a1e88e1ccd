/** Each promise of docs/promises.md, and each test that docs/security.md names, is there to be run. */
import { describe, expect, test } from 'vitest';
import { readText, tracked } from './files.ts';

const rows = readText('docs/promises.md')
  .split('\n')
  .flatMap(line => {
    const [, promise, file, title] = /^\| (.+?) \| `(.+?)` \| (.+?) \|$/.exec(line) ?? [];
    return promise && file && title ? [{ promise, file, title }] : [];
  });

describe('what is promised of a book', () => {
  test('has a test of that title in that file', () => {
    expect(rows.length).toBeGreaterThan(30);
    const titles = (file: string): string => (tracked.includes(file) ? readText(file).replaceAll("\\'", "'") : '');
    expect(rows.filter(({ file, title }) => !titles(file).includes(`'${title}'`))).toEqual([]);
  });

  test('is promised once', () => {
    expect(new Set(rows.map(({ promise }) => promise)).size).toBe(rows.length);
  });

  test('of security is held by files that are there', () => {
    const named = [...readText('docs/security.md').matchAll(/`((?:src|test)\/[\w./-]+)`/g)].map(one => one[1] ?? '');
    expect(named.length).toBeGreaterThan(30);
    expect(named.filter(path => !tracked.some(file => file === path || file.startsWith(path)))).toEqual([]);
  });
});
