// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { drawn } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import { type Keep, keepIn } from '../place.ts';
import type { Session } from '../session.ts';
import { Press } from './press.tsx';
import type { Typed } from './said.ts';
import { useTyped, useWriting } from './writing.ts';

/** One field and one press, with what is likely in it. */
function Form(props: { readonly session: Session; readonly keep: Keep; readonly likely: Typed }) {
  const writing = useWriting({
    form: 'one',
    entry: useTyped(props.keep, 'one', props.likely),
    session: props.session,
    read: ({ minutes }) => ({ ok: true, value: [{ kind: 'ran', minutes }] }),
    fieldOf: () => undefined,
    again: (drafts, _, asks) => (asks ? drafts : undefined),
    onWritten: () => undefined,
  });
  return (
    <Press writing={writing} button="Write">
      <input
        id="minutes"
        value={writing.asking.typed.minutes}
        onInput={e => writing.asking.put('minutes', e.currentTarget.value)}
      />
    </Press>
  );
}

test('what was asked again is recorded only as it stands in the fields, though they say something else by themselves', async () => {
  const { session, said, asks } = slowBook();
  const [page, keep] = [drawn(), keepIn(undefined)];
  const show = (minutes: string) => page.show(<Form {...{ session, keep }} likely={{ minutes }} />);
  await show('900');
  await page.submit();
  await asks();
  expect(page.button(/It is so/)).toBe('ready');
  await show('800'); // a session that came from another phone
  expect(page.button(/It is so/)).toBe('none');
  await page.submit();
  expect(said.at(-1)).toEqual({ drafts: [{ kind: 'ran', minutes: '800' }], sure: false });

  await page.type('#minutes', '700'); // while it is being asked
  await asks();
  expect(page.button(/It is so/)).toBe('none');
  for (let n = 0; n < 2; n++) {
    await page.submit(); // a key that is held down
    await asks();
  }
  expect(said.every(({ sure }) => !sure)).toBe(true);
  await page.press(/It is so/);
  expect(said.at(-1)).toEqual({ drafts: [{ kind: 'ran', minutes: '700' }], sure: true });
});

test('a run that is in the book stands in no form any more, not even in one that was opened while it was being written', async () => {
  const { session, said, takes } = slowBook();
  const [page, later, keep] = [drawn(), drawn(), keepIn(undefined)];
  const show = (on: typeof page) => on.show(<Form {...{ session, keep }} likely={{ minutes: '12' }} />);
  await show(page);
  await page.type('#minutes', '14');
  await page.submit();
  await page.show(null); // a look at another sheet
  await show(later);
  expect(later.value('#minutes')).toBe('14');
  await takes();
  await later.submit(); // pressed before it is drawn again
  expect(said).toHaveLength(1);
  await show(later);
  expect(later.value('#minutes')).toBe('12');
});

test('what is typed in a form that was opened meanwhile stays, and brings nothing back of what is in the book', async () => {
  const { session, takes } = slowBook();
  const [page, later, keep] = [drawn(), drawn(), keepIn(undefined)];
  const show = (on: typeof page) => on.show(<Form {...{ session, keep }} likely={{ minutes: '12', laps: '' }} />);
  await show(page);
  await page.type('#minutes', '14');
  await page.submit();
  await show(later);
  await later.type('#minutes', '15');
  await takes();
  expect(later.value('#minutes')).toBe('15');

  await later.submit();
  await takes();
  keep.set('one', ''); // in another tab
  await later.type('#minutes', '9');
  expect(keep.get('one')).toBe('{"minutes":"9"}');
});
