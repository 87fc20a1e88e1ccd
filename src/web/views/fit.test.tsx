// @vitest-environment happy-dom
import { expect, test, vi } from 'vitest';
import { alike, demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn, settled } from '../../../test/dom.ts';
import { openOnKart, standsOpen } from '../../app/index.ts';
import { keepIn } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { Fit } from './fit.tsx';

const app = await demoApp();
await app.fileKart(alike('77'), { by: 'J. Moor' });

test('to sign all the same is to sign for what stood open then, not for what came since', async () => {
  const snapshot = await snapshotOf(app, '77');
  const problems = [
    { code: 'not fit' as const, where: 'kart', message: 'The kart is not fit.', remedy: 'Sign all the same.' },
  ];
  const sign = vi.fn(async () => ({ kind: 'refused' as const, problems, asksAgain: true }));
  const session = { view: () => ({ writing: false }), sign } as unknown as Session;
  const [page, keep] = [drawn(), keepIn(undefined)];
  const show = (now: Snapshot) => page.show(<Fit snapshot={now} session={session} keep={keep} who="A. Sample" />);
  await show(snapshot);
  await page.submit();
  await vi.waitFor(() => expect(page.button(/all the same/)).toBe('ready'));
  const find = { kind: 'found', part: 'brake push rod', defect: 'cracked', grade: 'safety' };
  expect(await app.record('77', [find], { by: 'J. Moor' })).toMatchObject({ kind: 'recorded' });
  await show(await snapshotOf(app, '77'));
  expect(page.button(/all the same/)).toBe('none');
});

test('what stood open on the sheet goes with the signature, and who signs next is asked anew', async () => {
  const snapshot = await snapshotOf(app, '77');
  const sign = vi.fn<Session['sign']>(async (_, recorded) => {
    recorded();
    await settled();
    return { kind: 'written', facts: [] };
  });
  const session = { view: () => ({ writing: false }), sign } as unknown as Session;
  const [page, keep] = [drawn(), keepIn(undefined)];
  await page.show(<Fit {...{ snapshot, session, keep }} who="A. Sample" />);
  await page.type('#signer', 'S. Crutin');
  await page.type('#statement', 'walked round twice');
  await page.submit();
  const seen = standsOpen(snapshot.fitness, openOnKart(snapshot.kart, snapshot.state));
  expect(seen.length).toBeGreaterThan(0);
  expect(sign.mock.lastCall?.[0]).toEqual({ statement: 'walked round twice', signer: 'S. Crutin', sure: false, seen });
  const later = drawn(); // opened before the page was worked out again
  await later.show(<Fit {...{ snapshot, session, keep }} who="A. Sample" />);
  for (const one of [page, later]) {
    expect(one.value('#signer')).toBe('A. Sample');
    expect(one.value('#statement')).toBe('');
  }
});
