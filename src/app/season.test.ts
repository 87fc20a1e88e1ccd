import { expect, test } from 'vitest';
import { SMALL_KART, smallBench } from '../../test/fixtures/small-bench.ts';
import { seasonOf, sessionSheetOf } from './index.ts';

const minute = (n: number): string => new Date(Date.parse('2026-03-14T09:00:00.000Z') + n * 60_000).toISOString();

/** Two sessions dry and one wet on one track, with a change of set-up between the first two. */
async function weekend() {
  const { app, say, pass } = await smallBench();
  pass(3 * 3_600_000);
  const hand = (times: string, session: string, n: number, more = {}) =>
    app.lapsByHand('small', times, {
      by: 'A',
      at: minute(n),
      event: 'Round 1',
      session,
      track: 'Loop',
      minutes: 6,
      ...more,
    });
  const put = (fact: object, n: number) => say(fact, { at: minute(n) });
  await put({ kind: 'set-up', changes: { caster: '18°' } }, 70);
  await put({ kind: 'weather', celsius: 12, note: 'calm' }, 71);
  await hand('52.40 52.10', 'Heat 1', 80);
  await put({ kind: 'set-up', changes: { caster: '16°' } }, 85);
  await hand('51.80 52.00', 'Heat 2', 90);
  await put({ kind: 'note', text: 'understeer' }, 95);
  await hand('58.80', 'Final', 100, { wet: true });
  await put({ kind: 'ran', minutes: 2, laps: 1, event: 'Round 1', session: 'Way home' }, 110);
  return app;
}

test('a session sheet holds its laps, its air, its set-up and what changed since the session before', async () => {
  const app = await weekend();
  const sheet = await sessionSheetOf(app, 'small', { session: 'round 1 heat 2' });
  expect(sheet).toMatchObject({
    session: { label: 'Round 1 › Heat 2', minutes: 6, wet: false },
    laps: { laps: 2, best: { number: 1, time: 51.8 } },
    weather: { celsius: 12, note: 'calm' },
    before: { label: 'Round 1 › Heat 1' },
    changed: [{ name: 'caster', was: '18°', now: '16°' }],
    notes: ['understeer'],
  });
  expect(sheet.settings.map(({ name, value }) => `${name} ${value}`)).toEqual(['caster 16°']);
  const first = await sessionSheetOf(app, 'small', { session: 'Heat 1' });
  expect(first).toMatchObject({ before: null, changed: [] });
  expect(await sessionSheetOf(app, 'small')).toMatchObject({ session: { label: 'Round 1 › Way home' }, laps: null });
  await expect(sessionSheetOf(app, 'small', { session: 'Heat 9' })).rejects.toThrow(/The last sessions: .*Heat 2/);
});

test('laps that no run was written down for have a sheet too, which says so; what has no name goes by its day and time', async () => {
  const { app, say } = await smallBench();
  const laps = { kind: 'laps', name: 'stopwatch', laps: 2, timed: 'by hand' } as const;
  const times = [
    { time: 52.4, spread: 0.06 },
    { time: 52.1, spread: 0.06 },
  ];
  await say({ kind: 'set-up', changes: { caster: '18°' } });
  const [alone = ''] = await say({ ...laps, times, track: 'Loop' });
  const [ran = ''] = await say({ kind: 'ran', minutes: 6, laps: 2 });
  await say({ ...laps, times, run: ran });
  const unnamed = expect.stringMatching(/^2026-03-14 › session of 10:00 UTC$/);
  expect(await sessionSheetOf(app, 'small', { session: alone })).toMatchObject({
    session: { label: unnamed, track: 'Loop', minutes: 1.74, laps: 2 },
    ran: false,
    laps: { best: { time: 52.1 } },
    settings: [{ name: 'caster' }],
    before: null,
  });
  const withRun = await sessionSheetOf(app, 'small');
  expect(withRun).toMatchObject({ session: { label: unnamed, minutes: 6 }, ran: true, before: { fact: alone } });
  await say({ kind: 'struck', fact: ran, why: 'counted twice' });
  expect(await sessionSheetOf(app, 'small')).toMatchObject({ ran: false, laps: { laps: 2 } });
  expect(await seasonOf(app, 'small')).toMatchObject({ minutes: 0, sessions: 0 });
});

test('a season holds hours, laps and the best of each track, dry apart from wet, and says what it does not know', async () => {
  const season = await seasonOf(await weekend(), 'small');
  expect(season).toMatchObject({ minutes: 20, laps: 6, sessions: 4, cost: null });
  expect(season.events).toMatchObject([
    { event: 'Round 1', track: 'Loop', sessions: 4, minutes: 20, laps: 6, best: 51.8 },
  ]);
  expect(season.best).toMatchObject([
    { track: 'Loop', wet: false, lap: { time: 51.8 }, session: 'Round 1 › Heat 2', celsius: 12, sessions: 2 },
    { track: 'Loop', wet: true, lap: { time: 58.8 }, sessions: 1 },
  ]);
  expect(season.say).toEqual([
    '1 of 4 sessions have no lap times; they count for hours and laps.',
    'Costs are not known: the kart file holds no prices.',
  ]);
  const empty = await seasonOf((await smallBench()).app, 'small');
  expect(empty).toMatchObject({ minutes: 0, sessions: 0, events: [], best: [] });
});

test('a season costs what was put on new since its first session, where the kart file has a price', async () => {
  const { app, say } = await smallBench();
  await app.fileKart(`${SMALL_KART}costs: { spares: { wheel: { price: 50, source: invented } } }\n`, { by: 'A' });
  const renew = async (part: string) => {
    await say({ kind: 'taken off', part });
    await say({ kind: 'fitted', part, fresh: true });
  };
  await renew('wheel'); // before anything ran: no cost of the season
  expect((await seasonOf(app, 'small')).cost).toEqual({ money: 0, parts: 0, unpriced: [] });
  await say({ kind: 'ran', minutes: 6, laps: 5 });
  await renew('wheel');
  await say({ kind: 'taken off', part: 'wheel' });
  await renew('hub');
  await say({ kind: 'fitted', part: 'wheel' }); // the same one again costs nothing
  const season = await seasonOf(app, 'small');
  expect(season.cost).toEqual({ money: 50, parts: 1, unpriced: ['hub'] });
  expect(season.say.at(-1)).toContain('1 for 50 of your own money');
});
