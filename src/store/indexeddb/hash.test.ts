import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { hashOf } from './hash.ts';

test('a file goes by the same hash whether the browser has one of its own or not', async () => {
  for (const length of [0, 3, 255_999, 256_000, 600_001]) {
    const bytes = Uint8Array.from({ length }, (_, n) => (n * 7) % 251);
    const hash = createHash('sha256').update(bytes).digest('hex');
    expect(await hashOf(bytes)).toBe(hash);
    const { crypto } = globalThis;
    expect(await hashOf(bytes, crypto.subtle)).toBe(hash);
  }
});
