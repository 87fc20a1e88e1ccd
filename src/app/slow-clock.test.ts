import { describe, expect, it } from 'vitest';
import { smallBench } from '../../test/fixtures/small-bench.ts';

/** What stands in the book counts now, whatever the clock of the device that asks; only a moment asked for hides what came after. */
describe('a device whose clock is two minutes behind', () => {
  const behind = async () => {
    const bench = await smallBench();
    const before = new Date(Date.parse('2026-03-14T10:00:00.500Z')).toISOString();
    await bench.say({ kind: 'checked', item: 'wheel/rim', result: 'fail', why: 'crack' });
    bench.pass(-120_000);
    return { ...bench, before };
  };

  it('B11 shows the fact that was written, and what it says of the item', async () => {
    const { app } = await behind();
    expect((await app.facts('small')).map(line => line.fact.kind)).toContain('checked');
    expect((await app.state('small')).items['wheel/rim']?.fail?.why).toBe('crack');
    expect((await app.due('small')).due.find(due => due.item === 'wheel/rim')?.cause).toBe('failed');
    expect((await app.karts())[0]?.facts).toBe(2);
  });

  it('holds a fail against running, and against a signature', async () => {
    const { app } = await behind();
    expect((await app.fitness('small')).verdict).toBe('not fit');
    const signed = await app.release('small', { signer: 'A' });
    expect(signed.kind).toBe('refused');
    const sure = await app.release('small', { signer: 'A', sure: true });
    expect(sure.kind === 'recorded' && sure.facts[0]).toMatchObject({ verdict: 'not fit' });
  });

  it('does not take a part off twice', async () => {
    const { say, pass } = await smallBench();
    await say({ kind: 'taken off', part: 'wheel' });
    pass(-120_000);
    expect(await say({ kind: 'taken off', part: 'wheel' })).toEqual(['already off']);
  });

  it('still answers a moment that is asked for without what was written after it', async () => {
    const { app, before, pass } = await behind();
    pass(120_000);
    expect((await app.facts('small', { at: before })).map(line => line.fact.kind)).toEqual(['kart filed']);
    expect((await app.fitness('small', { at: before })).verdict).toBe('not known');
  });

  it('counts a fail that was written later, though its clock is a day behind, and leaves alone what is years ahead', async () => {
    const { app, say, pass } = await smallBench();
    await say({ kind: 'checked', item: 'wheel/rim', result: 'pass' });
    pass(-86_400_000);
    await say({ kind: 'checked', item: 'wheel/rim', result: 'fail', why: 'crack' });
    expect((await app.due('small')).due.find(due => due.item === 'wheel/rim')?.cause).toBe('failed');
    pass(-1000 * 86_400_000);
    const [id] = await say({ kind: 'note', text: 'a battery was empty' });
    const written = (await app.facts('small')).find(({ fact }) => fact.id === id)?.fact;
    expect(written?.at).toBe(written?.recorded);
  });
});
