// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import type { Fact } from '../../book/index.ts';
import { keepIn } from '../place.ts';
import { keepWritten, LastWritten } from './written.tsx';

test('the second tap strikes what the first one was about, never another press that came between', async () => {
  const app = await demoApp();
  const { session, said } = slowBook();
  const [page, keep] = [drawn(), keepIn(undefined)];
  const write = async (text: string): Promise<Fact> => {
    const done = await app.record('41', [{ kind: 'note', text }], { by: 'A. Sample' });
    const [fact] = done.kind === 'recorded' ? done.facts : [];
    if (fact === undefined) throw new Error('the note must be in the book');
    keepWritten(keep, '41', [fact]);
    await page.show(<LastWritten snapshot={await snapshotOf(app, '41')} {...{ session, keep }} />);
    return fact;
  };
  await write('first');
  await page.press(/Undo/);
  expect(page.button(/Strike it/)).toBe('ready');
  const second = await write('second');
  expect(page.button(/Strike it/)).toBe('none');
  await page.press(/Undo/);
  await page.press(/Strike it/);
  expect(said.map(({ drafts }) => drafts)).toEqual([[expect.objectContaining({ kind: 'struck', fact: second.id })]]);
});
