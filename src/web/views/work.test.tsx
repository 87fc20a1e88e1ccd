// @vitest-environment happy-dom
import { expect, test, vi } from 'vitest';
import { alike, demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn, settled } from '../../../test/dom.ts';
import { type Away, createAway } from '../interruption/away.ts';
import { keepIn } from '../place.ts';
import { ALONE } from '../plan/crew.ts';
import type { Session, Snapshot } from '../session.ts';
import type { Written } from '../written.ts';
import { Work } from './work.tsx';

const app = await demoApp();
for (const name of ['77', '78']) await app.fileKart(alike(name), { by: 'J. Moor' });
const seen = '.card:not(.beneath)';
const away = { asks: () => undefined, onChange: () => () => undefined, worked: () => undefined } as unknown as Away;
const sessionOf = (more: Partial<Session> = {}): Session =>
  ({ view: () => ({ writing: false, crew: ALONE, searching: false, sync: {} }), ...more }) as unknown as Session;

/** With that step ready, whatever is to do before it. */
const withReady = (snapshot: Snapshot, key: string): Snapshot => ({
  ...snapshot,
  plan: {
    ...snapshot.plan,
    steps: snapshot.plan.steps.map(step => (step.key === key ? { ...step, state: 'ready', after: [] } : step)),
  },
});
const measured = async (kart: string) =>
  (await snapshotOf(app, kart)).plan.steps.flatMap(({ key, action, unit, item }) =>
    action === 'measure' && unit !== null && item !== null ? [{ key, item }] : [],
  );

test('what is half typed stands there again on its own kart, and until the record says something of that step', async () => {
  const [step] = await measured('77');
  if (step === undefined) throw new Error('the plan must hold a step that is measured');
  const keep = keepIn(undefined);
  const session = sessionOf();
  const reading = async (kart: string, type?: string): Promise<string> => {
    const snapshot = withReady(await snapshotOf(app, kart), step.key);
    const page = drawn();
    await page.show(<Work {...{ snapshot, session, keep, away }} who="A. Sample" step={step.key} go={vi.fn()} />);
    if (type !== undefined) await page.type(`${seen} #reading`, type);
    return page.value(`${seen} #reading`);
  };
  expect(await reading('77', '142.5')).toBe('142.5');
  expect(await reading('77')).toBe('142.5');
  expect(await reading('78')).toBe('');
  await app.record('77', [{ kind: 'checked', item: step.item, result: 'not possible', why: 'no gauge' }], {
    by: 'J. Moor',
  });
  expect(await reading('77')).toBe('');
});

test('a fail that is still being written does not move on somebody who has gone to another step', async () => {
  const [first, second] = await measured('77');
  if (first === undefined || second === undefined) throw new Error('the plan must hold two steps that are measured');
  const snapshot = withReady(withReady(await snapshotOf(app, '77'), first.key), second.key);
  for (const where of ['here', 'at another step', 'at another sheet'] as const) {
    let done: (written: Written) => void = () => undefined;
    const session = sessionOf({ write: () => new Promise<Written>(written => (done = written)) });
    const [keep, go, page] = [keepIn(undefined), vi.fn(), drawn()];
    const at = (step: string) => page.show(<Work {...{ snapshot, session, keep, away, step, go }} who="A. Sample" />);
    await at(first.key);
    await page.press(/fails/i);
    await page.type(`${seen} #words`, 'bent');
    await page.submit();
    if (where === 'at another step') await at(second.key);
    if (where === 'at another sheet') await page.show(null);
    done({ kind: 'written', facts: [] });
    await settled();
    expect(go).toHaveBeenCalledTimes(where === 'here' ? 1 : 0);
  }
});

test('after an interruption the last step on this kart is named, and on a sheet of before not till the book has been read', async () => {
  const [step] = await measured('78');
  if (step === undefined) throw new Error('the plan must hold a step that is measured');
  const checked = { kind: 'checked', item: step.item, result: 'not possible', why: 'no gauge' };
  for (const kart of ['77', '78']) await app.record(kart, [checked], { by: 'A. Sample' });
  const keep = keepIn(undefined);
  createAway(document, keep).worked('78');
  const opened = createAway(document, keep);
  for (const [kart, stood, asks] of [
    ['78', '2026-11-26T08:00:00Z', 'none'],
    ['78', undefined, 'ready'],
    ['77', undefined, 'none'],
  ] as const) {
    const snapshot = withReady(await snapshotOf(app, kart), step.key);
    const view = () => ({ ...sessionOf().view(), stood });
    const page = drawn();
    await page.show(
      <Work
        {...{ snapshot, keep, away: opened, step: step.key }}
        session={sessionOf({ view })}
        who="A. Sample"
        go={vi.fn()}
      />,
    );
    expect(page.button(/I touched it/)).toBe(asks);
    expect(page.button(/fails/i)).toBe(kart === '77' ? 'ready' : 'none');
  }
});
