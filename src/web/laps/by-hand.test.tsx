// @vitest-environment happy-dom
import { expect, test, vi } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn, settled } from '../../../test/dom.ts';
import type { PlainApp } from '../../app/index.ts';
import { keepIn } from '../place.ts';
import type { Session } from '../session.ts';
import { Stopwatch } from './by-hand.tsx';

const snapshot = await snapshotOf(await demoApp(), '41');

/** A book that answers each time as it is told, and takes a while to be worked out again. */
function book(lapsByHand: PlainApp['lapsByHand']) {
  let caughtUp = (): void => undefined;
  const session = {
    view: () => ({ writing: false }),
    async busy(work) {
      const done = await work({ lapsByHand } as PlainApp, '41');
      await new Promise<void>(then => (caughtUp = then));
      return done;
    },
  } as Partial<Session> as Session;
  return { session, caughtUp: () => caughtUp() };
}

test('laps that ask again are recorded as they were only while times and fields are those that were asked about', async () => {
  const asks = {
    kind: 'refused' as const,
    problems: [{ code: 'already ran' as const, where: 'run', message: 'Ran already.', remedy: 'Choose it.' }],
  };
  const lapsByHand = vi.fn<PlainApp['lapsByHand']>(async () => asks);
  const { session, caughtUp } = book(lapsByHand);
  const [page, keep] = [drawn(), keepIn(undefined)];
  await page.show(<Stopwatch {...{ snapshot, session, keep }} onWritten={vi.fn()} />);
  await page.type('#hand-times', '52.31 52.08');
  await page.type('#hand-minutes', '9');
  const press = async (again = false): Promise<void> => {
    await (again ? page.press(/It is so/) : page.submit());
    caughtUp();
    await settled();
  };
  await press();
  expect(page.button(/It is so/)).toBe('ready');
  await page.type('#hand-times', '52.31 52.08 53.0');
  expect(page.button(/It is so/)).toBe('none');
  await press();
  expect(lapsByHand.mock.lastCall?.[2]).not.toHaveProperty('sure');
  await press(); // a key that is held down
  expect(lapsByHand.mock.lastCall?.[2]).not.toHaveProperty('sure');
  await press(true);
  expect(lapsByHand.mock.lastCall?.slice(1)).toMatchObject(['52.31 52.08 53.0', { sure: true }]);
});

test('times are gone from the form the moment they are in the book', async () => {
  const { session } = book(async () => ({ kind: 'recorded', facts: [], say: [] }) as never);
  const [page, keep] = [drawn(), keepIn(undefined)];
  await page.show(<Stopwatch {...{ snapshot, session, keep }} onWritten={vi.fn()} />);
  await page.type('#hand-times', '52.31 52.08');
  await page.submit();
  expect(page.value('#hand-times')).toBe('');
  const opened = drawn();
  await opened.show(<Stopwatch {...{ snapshot, session, keep }} onWritten={vi.fn()} />);
  expect(opened.value('#hand-times')).toBe('');
});

test('times that were typed on in another tab meanwhile stay', async () => {
  const keep = keepIn(undefined);
  const { session } = book(async () => {
    keep.set('laps by hand 41', '52.31 52.08 53.0');
    return { kind: 'recorded', facts: [], say: [] } as never;
  });
  const page = drawn();
  await page.show(<Stopwatch {...{ snapshot, session, keep }} onWritten={vi.fn()} />);
  await page.type('#hand-times', '52.31 52.08');
  await page.submit();
  expect(keep.get('laps by hand 41')).toBe('52.31 52.08 53.0');
});
