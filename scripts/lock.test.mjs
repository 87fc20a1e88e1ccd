import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { withLock } from './lock.mjs';

let folder;
let path;
const quiet = { say: () => {} };
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-lock-'));
  path = join(folder, 'start.lock');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('one start at a time', () => {
  test('two never work at once, and the second says whom it waits for', async () => {
    const log = [];
    const said = [];
    const work = name => async () => {
      log.push(`${name} in`);
      await new Promise(resolve => setTimeout(resolve, 50));
      log.push(`${name} out`);
    };
    await Promise.all([withLock(path, work('a'), quiet), withLock(path, work('b'), { say: text => said.push(text) })]);
    expect(log).toEqual(['a in', 'a out', 'b in', 'b out']);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(`process ${process.pid}`);
  });

  test('is let go of when the work fails', async () => {
    await expect(withLock(path, () => Promise.reject(new Error('no space')), quiet)).rejects.toThrow('no space');
    expect(existsSync(path)).toBe(false);
  });

  test('takes over from a process that is dead', async () => {
    const dead = spawnSync(process.execPath, ['-e', '']).pid;
    writeFileSync(path, `${dead} 1`);
    expect(await withLock(path, () => readFileSync(path, 'utf8'), quiet)).toMatch(new RegExp(`^${process.pid} `));
  });

  test('takes over from a process id that now belongs to a program that does not hold it', async () => {
    writeFileSync(path, `${process.ppid} 1`);
    expect(await withLock(path, () => 'done', { ...quiet, stalePolls: 3 })).toBe('done');
  });
});
