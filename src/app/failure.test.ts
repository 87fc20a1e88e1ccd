import { describe, expect, test } from 'vitest';
import { smallBench } from '../../test/fixtures/small-bench.ts';

const failed = (more = {}) => ({ kind: 'failed', part: 'wheel', how: 'rim broken', ...more });

describe('a failure written down', () => {
  test('names parts and joints of this kart, a joint of that part, and functions that it has', async () => {
    const { app } = await smallBench();
    const done = await app.record(
      'small',
      [
        failed({ part: 'wheal' }),
        failed({ joint: 'wheel/nutz' }),
        failed({ part: 'hub', joint: 'wheel/nuts' }),
        failed({ lost: ['stop'] }),
        failed({ photo: 'a'.repeat(64) }),
        { kind: 'look asked', items: ['hub/gap', 'hub/gab'], why: 'another one broke' },
      ],
      { by: 'A' },
    );
    if (done.kind !== 'refused') throw new Error('it was recorded');
    expect(done.problems.map(({ code, where }) => [code, where])).toEqual([
      ['unknown part', 'facts[0].part'],
      ['unknown joint', 'facts[1].joint'],
      ['unknown joint', 'facts[2].joint'],
      ['wrong shape', 'facts[3].lost'],
      ['unknown file', 'facts[4]'],
      ['unknown item', 'facts[5].item'],
    ]);
    for (const { message, remedy } of done.problems)
      expect(`${message} ${remedy}`).toMatch(/^Expected .*, got .*\. .*[.?]$/);
  });

  test('of an age far from the record is asked again, and kept as said', async () => {
    const { say } = await smallBench();
    await say({ kind: 'ran', minutes: 120 });
    expect(await say(failed({ afterMinutes: 61 }))).not.toEqual(['far outside']);
    expect(await say(failed({ afterMinutes: 2 }))).toEqual(['far outside']);
    expect(await say(failed({ afterMinutes: 7200 }))).toEqual(['far outside']);
    expect(await say(failed({ afterMinutes: 7200 }), { sure: true })).toHaveLength(1);
  });

  test('makes what the part asks for due, leaves it unfit, and a look that is asked for is due until it is taken', async () => {
    const { app, say } = await smallBench();
    const looked = { kind: 'checked', item: 'wheel/rim', result: 'pass' };
    await say(looked);
    await say({ ...looked, secondLook: true }, { by: 'B' });
    const why = async () => (await app.due('small')).due.find(({ item }) => item === 'wheel/rim')?.why;
    expect(await why()).toBeUndefined();
    await say(failed());
    expect(await why()).toMatch(/failed while it ran .*: rim broken/);
    expect((await app.fitness('small')).against.map(({ text }) => text)).toContain('wheel: rim broken');
    const { steps } = await app.plan('small');
    expect(steps.filter(({ item, state }) => item === 'wheel/rim' && state !== 'done').length).toBe(2);
  });
});
