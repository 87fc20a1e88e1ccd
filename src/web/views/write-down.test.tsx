// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn, settled } from '../../../test/dom.ts';
import { keepIn, keepOf } from '../place.ts';
import type { PhotoKept, Session } from '../session.ts';
import { WriteDown } from './write-down.tsx';
import { beginFind, slotOf } from './writing.ts';

const snapshot = await snapshotOf(await demoApp(), '41');

test('what is typed while a photo is being kept stays, and the entry waits for the photo; left, it is not begun again', async () => {
  let kept: (photo: PhotoKept) => void = () => undefined;
  const session = {
    view: () => ({ writing: false }),
    keepPhoto: () => new Promise<PhotoKept>(done => (kept = done)),
    ask: { file: async () => undefined },
  } as unknown as Session;
  const keep = keepIn(undefined);
  const typed = () => JSON.parse(keepOf(keep, '41').get(slotOf('found')) || '{}');
  beginFind(keep, '41', 'rear axle', 'safety');
  const page = drawn();
  await page.show(<WriteDown {...{ snapshot, session, keep }} />);
  await page.photo();
  await page.type('#entry-defect', 'hairline crack beside the lower weld');
  expect(page.button(/Write it down/)).toBe('waits');
  kept({ kind: 'kept', hash: 'a'.repeat(64) });
  await settled();
  expect(typed()).toMatchObject({
    part: 'rear axle',
    defect: 'hairline crack beside the lower weld',
    photo: 'a'.repeat(64),
  });
  expect(page.button(/Write it down/)).toBe('ready');

  await page.photo();
  await page.press(/^Leave it$/);
  kept({ kind: 'kept', hash: 'b'.repeat(64) });
  await settled();
  expect(typed()).toEqual({});
});

test('an entry that may be so is asked again, and once it says something else, even while it was asked, judged anew', async () => {
  let refuse: () => void = () => undefined;
  const problems = [{ code: 'far outside' as const, where: 'fact', message: 'Far outside.', remedy: 'Look again.' }];
  const write = () =>
    new Promise(done => {
      refuse = () => done({ kind: 'refused', asksAgain: true, problems });
    });
  const session = { view: () => ({ writing: false }), write } as unknown as Session;
  const keep = keepIn(undefined);
  beginFind(keep, '41', 'rear axle', 'safety');
  const page = drawn();
  await page.show(<WriteDown {...{ snapshot, session, keep }} />);
  for (const meanwhile of [undefined, 'cracked']) {
    await page.type('#entry-defect', 'bent');
    await page.submit();
    if (meanwhile) await page.type('#entry-defect', meanwhile);
    refuse();
    await settled();
    expect(page.button(/It is so/)).toBe(meanwhile ? 'none' : 'ready');
  }
});
