// @vitest-environment happy-dom
import { afterEach, expect, test, vi } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import { Undo } from './undo.tsx';

afterEach(() => void vi.useRealTimers());

test('what was written this evening is within reach past midnight, and the next day no more', async () => {
  const app = await demoApp();
  await app.record('41', [{ kind: 'note', text: 'bring the rain tyres' }], { by: 'A. Sample' });
  const snapshot = await snapshotOf(app, '41');
  const { session, said } = slowBook();
  const now = Date.now();
  for (const [hours, undo] of [
    [11, 'ready'],
    [13, 'none'],
  ] as const) {
    vi.useFakeTimers({ now: now + hours * 3_600_000, toFake: ['Date'] });
    const page = drawn();
    await page.show(<Undo {...{ snapshot, session }} who="A. Sample" blindTo={undefined} />);
    expect(page.button(/Undo/)).toBe(undo);
    if (undo === 'none') continue;
    await page.press(/Undo/);
    expect(said).toHaveLength(0); // one tap alone strikes nothing
    await page.press(/Strike/);
    expect(said[0]?.drafts).toEqual([expect.objectContaining({ kind: 'struck', fact: snapshot.facts[0]?.fact.id })]);
  }
});
