import { expect, test } from 'vitest';
import { NOW, smallBench } from '../../test/fixtures/small-bench.ts';
import { openOnKart } from './open-on-kart.ts';
import { standsOpen } from './release.ts';

const ALL_DONE = [
  { kind: 'checked', item: 'wheel/rim', result: 'pass' },
  { kind: 'checked', item: 'hub/width', result: 'pass', reading: '1390 mm' },
  { kind: 'made', joint: 'wheel/nuts', reading: '20 N·m', second: 'in place' },
];

test('only a person signs: without a name there is no release, and a bare fact is none', async () => {
  const { app, say } = await smallBench();
  expect(await app.release('small', { signer: ' ' })).toMatchObject({ problems: [{ code: 'signature missing' }] });
  const bare = { kind: 'released', signer: 'A', verdict: 'fit', open: [], statement: 'fit' };
  expect(await say(bare)).toEqual(['signature missing']);
});

test('signing what is not known is asked again, and then the verdict and the open list go into the release', async () => {
  const { app } = await smallBench();
  expect(await app.release('small', { signer: 'A' })).toMatchObject({ problems: [{ code: 'not fit' }] });
  const done = await app.release('small', { signer: 'A', sure: true });
  const fact = done.kind === 'recorded' ? done.facts[0] : undefined;
  if (fact?.kind !== 'released') throw new Error('it was not signed');
  const fit = await app.fitness('small');
  expect(fact.verdict).toBe('not known');
  expect(fact.open).toHaveLength(fit.against.length + fit.unknown.length + fit.open.length);
  expect(fact.statement).toContain('Not released');
});

test('a kart with nothing against it in the record is fit, and its release lists what is open below safety', async () => {
  const { app, say } = await smallBench();
  await say(ALL_DONE);
  await say({ ...ALL_DONE[0], secondLook: true }, { by: 'B' });
  expect((await app.fitness('small')).verdict).toBe('fit');
  const done = await app.release('small', { signer: 'A' });
  const fact = done.kind === 'recorded' ? done.facts[0] : undefined;
  if (fact?.kind !== 'released') throw new Error('it was not signed');
  expect(fact).toMatchObject({ signer: 'A', by: 'A', verdict: 'fit' });
  expect(fact.open.join()).toContain('open, performance: Gap to the bearing');
});

test('a fail stands against running until it is passed again', async () => {
  const { app, say } = await smallBench();
  await say(ALL_DONE);
  await say({ kind: 'checked', item: 'wheel/rim', result: 'fail', why: 'crack at the bead' });
  const fit = await app.fitness('small');
  expect(fit.verdict).toBe('not fit');
  expect(fit.against.map(reason => reason.text).join()).toContain('crack at the bead');
});

test('an event that is not in the book is refused and the ones that are in it are named', async () => {
  const { app, say } = await smallBench();
  await say({ kind: 'event', event: 'Round 1', minutes: 60, from: '2026-04-01T08:00:00Z' });
  await expect(app.plan('small', { event: 'Round 2' })).rejects.toThrow(/Did you mean "Round 1"/);
  expect((await app.plan('small')).event).toBe('Round 1');
});

test('a book exported and imported gives the same bytes again, and is whole', async () => {
  const one = await smallBench();
  await one.say(ALL_DONE);
  const text = await one.app.exportBook();
  const { app } = await smallBench();
  expect(await app.importBook(text)).toMatchObject({ kind: 'imported', added: 3, known: 1 });
  expect(await app.exportBook()).toBe(text);
  expect(await app.verifyBook()).toMatchObject({ facts: 4, problems: [] });
  const torn = await app.importBook(text.slice(0, -20));
  expect(torn).toMatchObject({ kind: 'refused' });
});

test('who was shown a list signs for that list: another one by now is refused, and says what came', async () => {
  const { app, say } = await smallBench();
  await say(ALL_DONE);
  await say({ ...ALL_DONE[0], secondLook: true }, { by: 'B' });
  const { kart, state, fitness } = await app.answers('small');
  const seen = standsOpen(fitness, openOnKart(kart, state));
  await say({ kind: 'found', part: 'wheel', defect: 'crack at the bead', grade: 'safety' });
  for (const sure of [false, true]) {
    const refused = await app.release('small', { signer: 'A', seen, sure });
    expect(refused).toMatchObject({ problems: [{ code: 'stands otherwise' }] });
    expect(refused.kind === 'refused' && refused.problems[0]?.message).toContain('crack at the bead');
  }
});

test('a release is judged at the moment it is shown, though the book holds what a phone with a clock ahead wrote', async () => {
  const { app, say, pass } = await smallBench();
  const hour = 3_600_000;
  const from = (hours: number): string => new Date(Date.parse(NOW) + hours * hour).toISOString();
  for (const [event, hours] of [
    ['Round 1', 5],
    ['Round 2', 60],
  ] as const)
    await say({ kind: 'event', event, minutes: 60, from: from(hours) });
  pass(30 * hour);
  await say({ kind: 'note', text: 'from tomorrow' }, { by: 'B' });
  pass(-30 * hour);
  const { kart, state, fitness } = await app.answers('small');
  const seen = standsOpen(fitness, openOnKart(kart, state));
  const signed = await app.release('small', { signer: 'A', seen, sure: true });
  expect(signed).toMatchObject({ kind: 'recorded', facts: [{ event: 'Round 1', open: seen }] });
});
