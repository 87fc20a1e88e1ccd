// @vitest-environment happy-dom
import { expect, test } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import { keepIn } from '../place.ts';
import { keepPrinted } from './printed.ts';
import { TypeIn } from './sheet.tsx';

const snapshot = await snapshotOf(await demoApp(), '41');
const { plan } = snapshot;
const [one, two] = plan.steps.filter(({ state, item, unit }) => state === 'ready' && item !== null && unit === null);
if (one === undefined || two === undefined) throw new Error('the plan must hold two steps that are checked by eye');

/** Its numbers stand for other steps than those of the plan. */
const turned = [
  { ...one, n: two.n },
  { ...two, n: one.n },
];

test('lines stay with the list they were begun with, whatever is printed since, and after a reload', async () => {
  const { session, said } = slowBook();
  const keep = keepIn(undefined);
  keepPrinted(keep, '41', turned, '2026-11-26T08:00:00Z');
  const sheet = () => <TypeIn {...{ snapshot: { ...snapshot }, session, keep }} who="A. Sample" />;
  const page = drawn();
  await page.show(sheet());
  await page.type('#lines', `${one.n}`);
  for (let minute = 10; minute < 20; minute++) keepPrinted(keep, '41', plan.steps, `2026-11-26T09:${minute}:00Z`);
  for (const now of [page, drawn()]) {
    await now.show(sheet());
    expect(now.value('#which-list')).toBe('2026-11-26T08:00:00Z');
    await now.submit();
    expect(said.at(-1)?.drafts).toEqual([expect.objectContaining({ item: two.item })]);
  }
});

test('what was asked again is written only as it reads now: of this list, and with every line right', async () => {
  const { session, said, asks } = slowBook();
  const keep = keepIn(undefined);
  keepPrinted(keep, '41', turned, '2026-11-26T08:00:00Z');
  const page = drawn();
  await page.show(<TypeIn {...{ snapshot, session, keep }} who="A. Sample" />);
  await page.type('#lines', `${one.n}`);
  await page.submit();
  await asks();
  expect(page.button(/It is so/)).toBe('ready');
  await page.choose('#which-list', '');
  expect(page.button(/It is so/)).toBe('none');
  await page.choose('#which-list', '2026-11-26T08:00:00Z');
  expect(page.button(/It is so/)).toBe('ready');
  await page.type('#lines', `${one.n}\n9999`);
  expect(page.button(/It is so/)).toBe('none');
  await page.type('#lines', `${one.n}`);
  await page.submit();
  await page.type('#lines', `${one.n}\n9999`); // one that is no step of it, while it is being asked
  await asks();
  expect(page.button(/It is so/)).toBe('none');
  await page.type('#lines', `${two.n}`);
  await page.submit();
  await page.type('#lines', `${one.n}`);
  await asks();
  expect(page.button(/It is so/)).toBe('none');
  expect(said.every(({ sure }) => !sure)).toBe(true);
});

test('lines are gone the moment they are in the book, and with them the list they were of', async () => {
  const { session, takes } = slowBook();
  const keep = keepIn(undefined);
  keepPrinted(keep, '41', turned, '2026-11-26T08:00:00Z');
  const page = drawn();
  await page.show(<TypeIn {...{ snapshot, session, keep }} who="A. Sample" />);
  await page.type('#lines', `${one.n}`);
  await page.submit();
  await takes();
  expect(page.value('#lines')).toBe('');
  keepPrinted(keep, '41', plan.steps, '2026-11-26T09:00:00Z');
  const opened = drawn();
  await opened.show(<TypeIn {...{ snapshot, session, keep }} who="A. Sample" />);
  expect(opened.value('#which-list')).toBe('2026-11-26T09:00:00Z');
});
