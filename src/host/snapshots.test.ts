import { mkdtemp, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fileSnapshots } from './snapshots.ts';

let folder: string;
let path: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'kartwright-snapshot-'));
  path = join(folder, 'book.snapshot');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const LINES = ['{"a":1}', 'ä€😀', 'x'.repeat(300_000), ''];

describe('a snapshot in a file', () => {
  it('reads as it was written, the last one', async () => {
    const kept = fileSnapshots(path);
    expect(await kept.read()).toBeUndefined();
    await kept.write(['before']);
    await kept.write(LINES);
    expect(await kept.read()).toEqual(LINES);
    await kept.remove();
    expect(await kept.read()).toBeUndefined();
  });

  it('reads as none when it was torn anywhere or a byte of it was changed', async () => {
    const kept = fileSnapshots(path);
    await kept.write(['{"a":1}', 'two', 'three']);
    const whole = await readFile(path);
    for (let at = 0; at < whole.length; at++) {
      const hurt = Buffer.from(whole);
      hurt[at] = (hurt[at] ?? 0) ^ 1;
      await writeFile(path, hurt);
      expect([at, await kept.read()]).toEqual([at, undefined]);
      await writeFile(path, whole);
      await truncate(path, at);
      expect([at, await kept.read()]).toEqual([at, undefined]);
    }
  });

  it('leaves the one before where writing was cut off', async () => {
    const kept = fileSnapshots(path);
    await kept.write(['before']);
    function* cutOff(): Generator<string> {
      yield 'y'.repeat(400_000);
      throw new Error('the power failed');
    }
    await expect(kept.write(cutOff())).rejects.toThrow('the power failed');
    expect(await kept.read()).toEqual(['before']);
  });
});
