// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { type Drawn, drawn } from '../../test/dom.ts';
import { type Kept, useKept } from './kept.ts';
import { type Keep, keepIn } from './place.ts';

function Note(props: { readonly keep: Keep; readonly hear: (kept: Kept) => void }) {
  const kept = useKept(props.keep, 'note');
  props.hear(kept);
  return <input id="note" value={kept.text} onInput={e => kept.put(e.currentTarget.value)} />;
}

/** A form of its own over what the device keeps; `kept` as it was drawn last. */
async function form(keep: Keep): Promise<Drawn & { kept: () => Kept; redraw: () => Promise<void> }> {
  const page = drawn();
  let heard: Kept | undefined;
  const redraw = () => page.show(<Note keep={keep} hear={kept => (heard = kept)} />);
  await redraw();
  return { ...page, redraw, kept: () => heard as Kept };
}

test('two tabs type each their own, and only what is in the book leaves the form that shows it', async () => {
  const keep = keepIn(undefined);
  const [left, right] = [await form(keep), await form(keep)];
  await left.type('#note', 'from the left');
  await right.type('#note', 'from the right');
  left.kept().written('from the left');
  await right.type('#note', 'from the right!'); // before the left one is drawn again
  await right.type('#note', 'from the right');
  for (const one of [left, right]) await one.redraw();
  expect([left.value('#note'), right.value('#note')]).toEqual(['', 'from the right']);
  expect(keep.get('note')).toBe('from the right');
  right.kept().written('from the right');
  await right.redraw();
  expect(right.value('#note')).toBe('');
  expect((await form(keep)).value('#note')).toBe('');
});

test('a text that was written from one form leaves the other that shows it, and may be typed once more', async () => {
  const keep = keepIn(undefined);
  const first = await form(keep);
  await first.type('#note', 'rain tyres');
  const other = await form(keep); // after a look at another sheet, or in another tab
  expect(other.value('#note')).toBe('rain tyres');
  first.kept().written('rain tyres');
  expect(other.kept().now()).toBe('');
  await other.redraw();
  expect(other.value('#note')).toBe('');
  await other.type('#note', 'rain tyre');
  await other.type('#note', 'rain tyres');
  expect(other.value('#note')).toBe('rain tyres');
});

test('a press goes by one id till it is known to be in the book, also after the page was put out; another text or another time by another', async () => {
  const keep = keepIn(undefined);
  const first = await form(keep);
  await first.type('#note', 'rain tyres');
  const id = first.kept().id();
  expect(id).toMatch(/^[0-9a-f]{32}$/);
  const after = await form(keep); // it was put out before it heard that it is in the book
  expect(after.kept().id()).toBe(id);
  await after.type('#note', 'slicks');
  const other = after.kept().id();
  expect(other).not.toBe(id);
  expect((await form(keep)).kept().id()).toBe(other);
  after.kept().written('slicks');
  await after.redraw();
  await after.type('#note', 'slicks'); // once more, on another day
  expect(after.kept().id()).not.toBe(other);
});

test('what nobody typed has an id of its own at each press', async () => {
  const note = await form(keepIn(undefined));
  expect(note.kept().id()).not.toBe(note.kept().id());
});
