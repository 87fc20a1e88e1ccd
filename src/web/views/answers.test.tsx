// @vitest-environment happy-dom
import { cloneElement } from 'preact';
import { expect, test, vi } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn, settled } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import type { State } from '../../book/index.ts';
import type { Step } from '../../prep/index.ts';
import { keepIn } from '../place.ts';
import type { PhotoKept, Session } from '../session.ts';
import { type Draft, writtenFrom } from '../written.ts';
import { Answers } from './answers.tsx';
import { halfTyped } from './half-typed.ts';

const app = await demoApp();
const snapshot = await snapshotOf(app, '41');

function stepThat(holds: (step: Step) => boolean): Step {
  const step = snapshot.plan.steps.find(holds);
  if (step === undefined) throw new Error('the plan must hold the step');
  return { ...step, state: 'ready' };
}
/** A session that writes into the book; the photo is kept when it is let. */
function at(step: Step) {
  const written: { drafts: readonly Draft[]; sure: boolean }[] = [];
  let kept: (photo: PhotoKept) => void = () => undefined;
  const session = {
    view: () => ({ writing: false }),
    async write(drafts: readonly Draft[], how: { sure?: boolean } = {}) {
      written.push({ drafts, sure: how.sure === true });
      return writtenFrom(await app.record('41', drafts, { by: 'A. Sample', ...how }));
    },
    keepPhoto: () => new Promise<PhotoKept>(done => (kept = done)),
    ask: { file: async () => undefined },
  } as unknown as Session;
  const choices = keepIn(undefined);
  const keep = halfTyped(choices, '41', step, snapshot.state);
  const card = <Answers {...{ step, snapshot, session, keep, choices }} onWritten={vi.fn()} />;
  return { step, card, written, keepPhoto: () => kept({ kind: 'kept', hash: 'a'.repeat(64) }) };
}

test('what is asked again and then said otherwise is judged anew, never recorded as it was said before', async () => {
  const { card, written } = at(
    stepThat(({ unit, action, item }) => unit === 'mm' && action === 'measure' && item !== null),
  );
  const page = drawn();
  await page.show(card);
  await page.press(/fails/i);
  await page.type('#reading', '9999');
  await page.type('#words', 'bent');
  await page.submit();
  await vi.waitFor(() => expect(page.button(/It is so/)).toBe('ready'));

  await page.type('#words', 'cracked at the weld');
  expect(page.button(/It is so/)).toBe('none');
  await page.submit();
  await vi.waitFor(() => expect(page.button(/It is so/)).toBe('ready'));
  await page.press(/It is so/);
  await vi.waitFor(() => expect(written.at(-1)?.sure).toBe(true));
  expect(written.at(-1)?.drafts[0]).toMatchObject({ result: 'fail', why: 'cracked at the weld' });
});

test('a fail waits for the photo that goes with it', async () => {
  const { card, written, keepPhoto } = at(
    stepThat(({ item, state, writes }) => item !== null && state === 'ready' && writes === 'checked'),
  );
  const page = drawn();
  await page.show(card);
  await page.press(/fails/i);
  await page.type('#words', 'hairline crack');
  await page.photo();
  expect(page.button(/Record/)).toBe('waits');
  await page.press(/^Back/); // and come again while it is still being kept
  await page.press(/fails/i);
  expect(page.button(/Record/)).toBe('waits');
  keepPhoto();
  await settled();
  expect(page.button(/Record/)).toBe('ready');
  await page.submit();
  await vi.waitFor(() => expect(written).toHaveLength(1));
  expect(written[0]?.drafts).toContainEqual(expect.objectContaining({ kind: 'found', photo: 'a'.repeat(64) }));
});

test('what stands in the fields is kept with the record as it goes on beneath it, and after a reload stands there again', async () => {
  const { step, card } = at(
    stepThat(({ unit, action, item }) => unit === 'mm' && action === 'measure' && item !== null),
  );
  const keep = keepIn(undefined);
  const marked = (after: string): State => ({
    ...snapshot.state,
    parts: { ...snapshot.state.parts, [step.part ?? '']: { off: { fact: after } } as State['parts'][string] },
  });
  const shown = (after: string) => cloneElement(card, { keep: halfTyped(keep, '41', step, marked(after)) });
  const page = drawn();
  await page.show(shown('taken off'));
  await page.press(/fails/i);
  await page.type('#words', 'bent');
  await page.show(shown('put back')); // ticked a moment ago, and now read from the book
  const opened = drawn();
  await opened.show(shown('put back'));
  expect(opened.value('#words')).toBe('bent');
});

test('a fail that is in the book stands in no field any more, though the page is not worked out again yet', async () => {
  const step = stepThat(({ item, writes, state }) => item !== null && state === 'ready' && writes === 'checked');
  const { session, takes } = slowBook();
  const choices = keepIn(undefined);
  const keep = halfTyped(choices, '41', step, snapshot.state);
  const card = <Answers {...{ step, snapshot, session, keep, choices }} onWritten={vi.fn()} />;
  const [page, later] = [drawn(), drawn()];
  await page.show(card);
  await page.press(/fails/i);
  await page.type('#words', 'hairline crack');
  await page.submit();
  await page.show(null); // a look at another sheet
  await later.show(card);
  expect(later.value('#words')).toBe('hairline crack');
  await takes();
  const anew = halfTyped(choices, '41', step, { ...snapshot.state, items: {} });
  await later.show(cloneElement(card, { keep: anew })); // as the record says it by then
  for (const one of [keep, anew]) expect(one.get(`words ${step.key}`)).toBe('');
  expect(later.button(/^Record fail/)).toBe('none');
});

test('what is put right in a card that was opened while the old text was being written stays, and is not what was written', async () => {
  const step = stepThat(({ item, writes, state }) => item !== null && state === 'ready' && writes === 'checked');
  const { session, said, takes, caughtUp } = slowBook();
  const choices = keepIn(undefined);
  const keep = halfTyped(choices, '41', step, snapshot.state);
  const card = <Answers {...{ step, snapshot, session, keep, choices }} onWritten={vi.fn()} />;
  const [page, later] = [drawn(), drawn()];
  await page.show(card);
  await page.press(/fails/i);
  await page.type('#words', 'crack');
  await page.submit();
  await page.show(null); // a look at another sheet
  await later.show(card);
  await later.type('#words', 'crack, 8 mm long');
  await takes();
  await caughtUp();
  expect(later.value('#words')).toBe('crack, 8 mm long');
  expect(keep.get(`words ${step.key}`)).toBe('crack, 8 mm long');
  expect(said).toHaveLength(1);
});
