import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fingerprint, readMark } from './fingerprint.mjs';
import { nodeIsNewEnough } from './root.mjs';

let base;
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'kartwright-print-'));
  mkdirSync(join(base, 'src'));
  writeFileSync(join(base, 'src', 'a.ts'), 'one');
});
afterEach(() => rmSync(base, { recursive: true, force: true }));

describe('the fingerprint of the sources', () => {
  test('stays while nothing changes, and a missing file is no error', () => {
    expect(fingerprint(base, ['src', 'none'])).toBe(fingerprint(base, ['src', 'none']));
  });

  test('changes with a text, a name, a new file and what is mixed in', () => {
    const prints = new Set([fingerprint(base, ['src']), fingerprint(base, ['src'], { also: ['linux'] })]);
    writeFileSync(join(base, 'src', 'a.ts'), 'two');
    prints.add(fingerprint(base, ['src']));
    writeFileSync(join(base, 'src', 'b.ts'), '');
    prints.add(fingerprint(base, ['src']));
    expect(prints.size).toBe(4);
  });

  test('does not see what is skipped', () => {
    const before = fingerprint(base, ['src'], { skip: /\.test\.ts$/ });
    writeFileSync(join(base, 'src', 'a.test.ts'), 'a test');
    expect(fingerprint(base, ['src'], { skip: /\.test\.ts$/ })).toBe(before);
  });

  test('a mark that is not there is no mark', () => expect(readMark(join(base, 'mark'))).toBeUndefined());
});

describe('the version of Node', () => {
  test.each(['20.19.0', '20.20.2', '21.0.0', '24.21.0'])('%s will do', version => {
    expect(nodeIsNewEnough(version)).toBe(true);
  });
  test.each(['20.18.9', '18.20.4', '8.0.0'])('%s is refused', version => {
    expect(nodeIsNewEnough(version)).toBe(false);
  });
});
