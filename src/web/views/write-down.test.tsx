// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn, settled } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import { keepIn, keepOf } from '../place.ts';
import type { PhotoKept, Session } from '../session.ts';
import { WriteDown } from './write-down.tsx';
import { beginFind, slotOf } from './writing.ts';

const none = () => {
  throw new Error('the demo must have a find, got none');
};
const snapshot = await snapshotOf(await demoApp(), '41');

/** A find that was typed and pressed, and is being written. */
async function findPressed() {
  const book = slowBook();
  const keep = keepIn(undefined);
  beginFind(keep, '41', 'rear axle', 'safety');
  const form = <WriteDown {...{ snapshot, keep }} session={book.session} />;
  const [page, later] = [drawn(), drawn()];
  await page.show(form);
  await page.type('#entry-defect', 'bent');
  await page.submit();
  return { ...book, keep, form, page, later };
}

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
  const { session, asks } = slowBook();
  const keep = keepIn(undefined);
  beginFind(keep, '41', 'rear axle', 'safety');
  const page = drawn();
  await page.show(<WriteDown {...{ snapshot, session, keep }} />);
  for (const meanwhile of [undefined, 'cracked']) {
    await page.type('#entry-defect', 'bent');
    await page.submit();
    if (meanwhile) await page.type('#entry-defect', meanwhile);
    await asks();
    expect(page.button(/It is so/)).toBe(meanwhile ? 'none' : 'ready');
  }
});

test('what is in the book stands in no form any more, not even in one that was opened while it was being written', async () => {
  const { keep, said, takes, caughtUp, form, page, later } = await findPressed();
  await page.show(null); // a look at another sheet
  await later.show(form);
  expect(later.value('#entry-defect')).toBe('bent');
  await takes();
  await later.submit(); // pressed before it is drawn again
  expect(said).toHaveLength(1);
  expect(later.value('#entry-defect')).toBe('');
  expect(later.text()).toContain('What stood here is in the book');
  expect(keepOf(keep, '41').get(slotOf('found'))).toBe('');
  await later.type('#entry-defect', 'and cracked');
  expect(later.value('#entry-defect')).toBe('and cracked');
  expect(later.text()).not.toContain('What stood here is in the book');
  await later.press(/^Leave it/);

  expect(keep.get('writing down')).toBe('');

  beginFind(keep, '41', 'brake push rod', 'safety'); // the next one, before the page is worked out again
  await caughtUp();
  const next = drawn();
  await next.show(form);
  expect(keepOf(keep, '41').get(slotOf('found'))).toContain('brake push rod');
  await next.type('#entry-defect', 'cracked');
  await next.submit();
  beginFind(keep, '41', 'rear axle', 'safety'); // and one before the book has it
  await takes();
  const last = drawn();
  await last.show(form);
  expect(last.button(/Write it down/)).toBe('ready');
  expect(keepOf(keep, '41').get(slotOf('found'))).toContain('rear axle');
});

test('while it is being written nothing in the form can be changed, and while something else is it can', async () => {
  const session = { ...slowBook().session, view: () => ({ writing: true }) } as unknown as Session;
  const keep = keepIn(undefined);
  beginFind(keep, '41', 'rear axle', 'safety');
  const page = drawn();
  const rests = async (): Promise<boolean> => {
    await page.show(<WriteDown {...{ snapshot: { ...snapshot }, session, keep }} />);
    return page.has('form[inert]');
  };
  expect(await rests()).toBe(false);
  await page.type('#entry-defect', 'bent');
  await page.submit();
  expect(await rests()).toBe(true);
});

test('a photo that comes after its entry was written from elsewhere begins no other one', async () => {
  let kept: (photo: PhotoKept) => void = () => undefined;
  const { session, takes } = slowBook();
  const here = {
    ...session,
    keepPhoto: () => new Promise<PhotoKept>(done => (kept = done)),
    ask: { file: async () => undefined },
  } as unknown as Session;
  const keep = keepIn(undefined);
  beginFind(keep, '41', 'rear axle', 'safety');
  const form = <WriteDown {...{ snapshot, keep }} session={here} />;
  const [page, later] = [drawn(), drawn()];
  await page.show(form);
  await page.type('#entry-defect', 'bent');
  await page.photo();
  await later.show(form); // another tab, or the sheet once more
  await later.submit();
  keep.set('writing down', 'event'); // and an event that comes is begun from Today meanwhile
  await takes();
  kept({ kind: 'kept', hash: 'a'.repeat(64) });
  await settled();
  expect(keepOf(keep, '41').get(slotOf('found'))).toBe('');
  expect(keep.get('writing down')).toBe('event');
});

test('what is typed in one tab in the moment in which the other one writes what stood here is what is written then', async () => {
  const { session, said, takes } = slowBook();
  const keep = keepIn(undefined);
  keep.set('writing down', 'note');
  const form = <WriteDown {...{ snapshot, session, keep }} />;
  const [left, right] = [drawn(), drawn()];
  await right.show(form);
  await right.type('#entry-text', 'from the right');
  await left.show(form); // with what the other one has typed
  await right.submit();
  await takes();
  await left.type('#entry-text', 'from the left');
  await left.submit();
  expect(said.map(({ drafts }) => drafts[0]?.text)).toEqual(['from the right', 'from the left']);
});

test('a press whose end the page did not hear is said once more under the same id, and shown to be the one of then', async () => {
  const { ids, takes, caughtUp, form, later } = await findPressed();
  await later.show(form); // the first one was put out
  await later.submit();
  expect(ids[0]).toBeDefined();
  expect(ids).toEqual([ids[0], ids[0]]);
  await takes();
  const [{ fact } = none()] = snapshot.facts.filter(line => line.fact.kind === 'found');
  await caughtUp({ kind: 'written', before: true, facts: [fact] });
  expect(later.text()).toMatch(/In the book since .*\d\d:\d\d, from an earlier press: .*If this was another one/);
});
