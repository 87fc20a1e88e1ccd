import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { canonical, fold, importLines } from '../book/index.ts';
import { SNAPSHOT_FORMAT } from './snapshot.ts';

test('B34 a snapshot of before is not taken for one of now: what facts fold to belongs to the number of the format', () => {
  const read = importLines(readFileSync(new URL('../../test/fixtures/books/format-1.jsonl', import.meta.url), 'utf8'));
  const state = fold(read.kind === 'facts' ? read.facts : []);
  const hash = createHash('sha256').update(canonical(state)).digest('hex').slice(0, 16);
  // When this fails, facts fold to something else than they did: raise SNAPSHOT_FORMAT and put both here.
  expect([SNAPSHOT_FORMAT, hash]).toEqual([1, '9558fca5894b009a']);
});
