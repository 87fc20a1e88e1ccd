import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NOW, SMALL_KART, smallBench } from '../../test/fixtures/small-bench.ts';

const passed = (item: string, more = {}) => ({ kind: 'checked', item, result: 'pass', ...more });

describe('names', () => {
  test('an unknown part, joint, item and fact are refused at once, each with the nearest name', async () => {
    const { app } = await smallBench();
    const done = await app.record(
      'small',
      [
        { kind: 'taken off', part: 'wheal' },
        { kind: 'made', joint: 'wheel/nutz' },
        passed('hub/gab'),
        { kind: 'struck', fact: 'nothing', why: 'a slip' },
      ],
      { by: 'A' },
    );
    if (done.kind !== 'refused') throw new Error('it was recorded');
    expect(done.problems.map(problem => problem.code)).toEqual([
      'unknown part',
      'unknown joint',
      'unknown item',
      'unknown fact',
    ]);
    expect(done.problems.map(problem => problem.where)).toEqual([
      'facts[0].part',
      'facts[1].joint',
      'facts[2].item',
      'facts[3].fact',
    ]);
    expect(done.problems[0]?.remedy).toContain('"wheel"');
    expect(done.problems[1]?.remedy).toContain('"wheel/nuts"');
    expect(done.problems[2]?.remedy).toContain('"hub/gap"');
  });

  test('nothing of a batch is written when one of it is wrong', async () => {
    const { app, say } = await smallBench();
    expect(await say([{ kind: 'note', text: 'right' }, { kind: 'note' }])).toEqual(['wrong shape']);
    expect(await app.facts('small')).toHaveLength(1);
  });

  test('on several karts all is written at once, or nothing on any of them', async () => {
    const { app } = await smallBench();
    await app.fileKart(SMALL_KART.replace('small', 'other'), { by: 'A' });
    const note = (text: string) => [{ kind: 'note', text }];
    const wrong = [
      { kart: 'small', payloads: note('right') },
      { kart: 'other', payloads: [{ kind: 'taken off', part: 'wheal' }] },
    ];
    expect(await app.recordAll(wrong, { by: 'A' })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'unknown part' }],
    });
    expect(await app.facts('small')).toHaveLength(1);
    const right = ['small', 'other'].map(kart => ({ kart, payloads: note('right') }));
    const done = await app.recordAll(right, { by: 'A' });
    expect(done.kind === 'recorded' && done.facts.map(({ kart, seq }) => [kart, seq])).toEqual([
      ['small', 3],
      ['other', 4],
    ]);
    expect(await app.facts('small')).toHaveLength(2);
    expect(await app.facts('other')).toHaveLength(2);
  });

  test('what is said twice under one id is recorded once, and what was recorded then is told; under another id it is another one', async () => {
    const { app, pass } = await smallBench();
    const say = (id: string, count = 2) =>
      app.record('small', Array<unknown>(count).fill({ kind: 'ran', minutes: 12 }), { by: 'A', id });
    const facts = async () => (await app.facts('small')).length;
    const first = await say('one');
    expect(first.kind === 'recorded' && first.facts.map(({ id }) => id === 'one')).toEqual([true, false]);
    pass(1000);
    expect(await say('two', 1)).toMatchObject({ kind: 'recorded', facts: [{ id: 'two', minutes: 12 }] });
    const count = await facts();
    const again = await say('one');
    expect(again).toEqual({ kind: 'recorded', before: true, facts: first.kind === 'recorded' && first.facts });
    expect(first).not.toHaveProperty('before');
    expect(await facts()).toBe(count);
  });

  test('times of a stopwatch that are said twice under one id are one session', async () => {
    const { app } = await smallBench();
    const say = () => app.lapsByHand('small', '52.31 52.08', { by: 'A', session: 'Heat 1', id: 'one' });
    const first = await say();
    expect(await say()).toEqual(first);
    expect((await app.facts('small')).filter(({ fact }) => fact.kind === 'laps')).toHaveLength(1);
  });

  test('a kart that is not in the book is refused and those that are in it are named', async () => {
    const { app } = await smallBench();
    await expect(app.plan('smal')).rejects.toThrow(/Did you mean "small"/);
    expect(await app.record('smal', [{ kind: 'note', text: 'x' }], { by: 'A' })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'unknown kart' }],
    });
  });

  test('whatever is sent as a fact, it is recorded or refused and never thrown', async () => {
    const { app } = await smallBench();
    const kinds = fc.constantFrom(
      'note',
      'checked',
      'made',
      'ran',
      'event',
      'set-up',
      'found',
      'struck',
      'released',
      'x',
    );
    const odd = fc.oneof(
      fc.anything(),
      fc.tuple(kinds, fc.object({ maxDepth: 1 })).map(([kind, rest]) => ({ ...rest, kind })),
      fc.tuple(kinds, fc.anything()).map(([kind, reading]) => ({ kind, reading, item: 'hub/gap', result: 'pass' })),
    );
    await fc.assert(
      fc.asyncProperty(odd, async raw => {
        const done = await app.record('small', [raw], { by: 'A' });
        expect(['recorded', 'refused']).toContain(done.kind);
      }),
      { numRuns: 300 },
    );
  });
});

describe('time', () => {
  test('what lies more than five minutes ahead of the clock is refused, and less is taken', async () => {
    const { say } = await smallBench();
    const note = { kind: 'note', text: 'x' };
    expect(await say(note, { at: '2026-03-14T10:06:00Z' })).toEqual(['in the future']);
    expect(await say(note, { at: '2026-03-14T10:04:00Z' })).toHaveLength(1);
    expect(await say(note, { at: 'yesterday' })).toEqual(['not a time']);
    expect(await say(note, { at: '2026-02-30T10:00:00' })).toEqual(['not a time']);
  });

  test('an event may lie ahead but may not end before it begins', async () => {
    const { say } = await smallBench();
    const event = { kind: 'event', event: 'Round 1', minutes: 60, from: '2026-04-01T08:00:00Z' };
    expect(await say({ ...event, until: '2026-03-31T08:00:00Z' })).toEqual(['runs backwards']);
    expect(await say({ ...event, until: '2026-04-01T18:00:00+02:00' })).toHaveLength(1);
  });

  test('an hour meter that runs backwards is refused, also when a session is written down late', async () => {
    const { say } = await smallBench();
    const ran = (meterHours: number) => ({ kind: 'ran', minutes: 10, meterHours });
    expect(await say(ran(5), { at: '2026-03-14T09:00:00Z' })).toHaveLength(1);
    expect(await say(ran(4.9))).toEqual(['runs backwards']);
    expect(await say(ran(5.2), { at: '2026-03-14T08:00:00Z' })).toEqual(['runs backwards']);
    expect(await say(ran(4.8), { at: '2026-03-14T08:00:00Z' })).toHaveLength(1);
  });

  test('what happened before the kart file was written down can still be recorded', async () => {
    const { app, say } = await smallBench();
    expect(await say({ kind: 'ran', minutes: 30 }, { at: '2026-01-01T12:00:00Z' })).toHaveLength(1);
    expect((await app.state('small')).minutes).toBe(30);
  });

  test('a past moment is answered from what was known then', async () => {
    const { app, say, pass } = await smallBench();
    await say({ kind: 'ran', minutes: 30 });
    pass(3_600_000);
    await say({ kind: 'ran', minutes: 12 }, { at: NOW });
    expect((await app.state('small', { at: '2026-03-14T10:30:00Z' })).minutes).toBe(30);
    expect((await app.state('small')).minutes).toBe(42);
    await expect(app.state('small', { at: '2027-01-01T00:00:00Z' })).rejects.toThrow(/not after/);
  });
});

describe('parts', () => {
  test('a part comes off once its way in is off, and goes on again before what covers it', async () => {
    const { say } = await smallBench();
    expect(await say({ kind: 'fitted', part: 'hub' })).toEqual(['already on']);
    expect(await say({ kind: 'taken off', part: 'hub' })).toEqual(['way in still on']);
    expect(
      await say([
        { kind: 'taken off', part: 'wheel' },
        { kind: 'taken off', part: 'hub' },
      ]),
    ).toHaveLength(2);
    expect(await say({ kind: 'taken off', part: 'hub' })).toEqual(['already off']);
    expect(await say({ kind: 'made', joint: 'wheel/nuts' })).toEqual(['part is off']);
    expect(await say({ kind: 'fitted', part: 'wheel' })).toHaveLength(1);
    expect(await say({ kind: 'fitted', part: 'hub' })).toEqual(['way in still on']);
    expect(await say({ kind: 'taken off', part: 'frame' })).toEqual(['not removable']);
  });
});

describe('readings', () => {
  test('a reading is kept as it was said, and what it is in SI is worked out here', async () => {
    const { app, say } = await smallBench();
    await say(
      passed('hub/gap', {
        reading: { text: '5 3/4 in', si: 99, unit: 'furlong', instrument: 'rule', resolution: '1 mm' },
      }),
    );
    const [line] = await app.history('small', 'hub/gap');
    // 5 3/4 in = 146.05 mm exactly: 1 in = 25.4 mm (International yard and pound agreement, 1959)
    expect(line?.fact).toMatchObject({
      reading: { text: '5 3/4 in', unit: 'in', instrument: 'rule', resolution: 0.001 },
    });
    expect(line?.fact.kind === 'checked' ? line.fact.reading?.si : undefined).toBeCloseTo(0.14605, 12);
  });

  test.each(['146', '146 N·m', 'NaN mm', '', 146, Number.NaN, null])('%s is no reading of a length', async reading => {
    const { say } = await smallBench();
    expect(await say(passed('hub/gap', { reading }))).toEqual(['reading']);
  });

  test('an item that is measured does not pass without its value', async () => {
    const { say } = await smallBench();
    expect(await say(passed('hub/gap'))).toEqual(['reading missing']);
  });

  test('a value far outside is asked again, and kept as it was said when the person is sure', async () => {
    const { app, say } = await smallBench();
    const slip = { kind: 'checked', item: 'hub/gap', result: 'fail', why: 'hub walked out', reading: '1460 mm' };
    expect(await say(slip)).toEqual(['far outside']);
    expect(await say(slip, { sure: true })).toHaveLength(1);
    expect((await app.history('small', 'hub/gap'))[0]?.fact).toMatchObject({ reading: { text: '1460 mm' } });
  });

  test('a value outside the limits is no pass, whether the item, the joint or the class sets them', async () => {
    const { say } = await smallBench();
    expect(await say(passed('hub/gap', { reading: '147.1 mm' }))).toEqual(['outside limits']);
    expect(await say(passed('hub/width', { reading: '1400.5 mm' }))).toEqual(['outside limits']);
    expect(await say({ kind: 'made', joint: 'wheel/nuts', reading: '25 N·m' })).toEqual(['outside limits']);
    expect(await say(passed('hub/width', { reading: '1400.5 mm' }), { sure: true })).toEqual(['outside limits']);
    expect(await say(passed('hub/width', { reading: '1400 mm' }))).toHaveLength(1);
    expect(await say({ kind: 'checked', item: 'hub/gap', result: 'fail', reading: '147.1 mm' })).toEqual([
      'why missing',
    ]);
  });
});

describe('second looks', () => {
  test('never the same tap twice: the same person needs something else in between, another person does not', async () => {
    const { say } = await smallBench();
    const second = passed('wheel/rim', { secondLook: true });
    expect(await say(second)).toEqual(['no first look']);
    await say(passed('wheel/rim'));
    expect(await say(second)).toEqual(['same tap twice']);
    expect(await say(second, { by: ' a ' })).toEqual(['same tap twice']);
    await say({ kind: 'note', text: 'B was here' }, { by: 'B' });
    expect(await say(second)).toEqual(['same tap twice']);
    expect(await say(second, { by: 'B' })).toHaveLength(1);
  });

  test('alone and with nothing else to do, a note begins a walk-round that counts after minutes; half an hour counts by itself', async () => {
    const second = passed('wheel/rim', { secondLook: true });
    const [walk, wait] = [await smallBench(), await smallBench()];
    const MINUTE = 60_000;
    await walk.say(passed('wheel/rim'));
    await walk.say({ kind: 'note', text: 'Separate walk-round begun' });
    walk.pass(9 * MINUTE);
    expect(await walk.say(second)).toEqual(['same tap twice']);
    walk.pass(MINUTE);
    expect(await walk.say(second)).toHaveLength(1);
    await wait.say(passed('wheel/rim'));
    wait.pass(29 * MINUTE);
    expect(await wait.say(second)).toEqual(['same tap twice']);
    wait.pass(MINUTE);
    expect(await wait.say(second)).toHaveLength(1);
  });

  test('alone, a walk-round of its own later is a second look', async () => {
    const { app, say } = await smallBench();
    const second = passed('wheel/rim', { secondLook: true });
    expect(await say([passed('wheel/rim'), second])).toEqual(['same tap twice']);
    await say([passed('wheel/rim'), passed('hub/gap', { reading: '146 mm' })]);
    expect(await say(second)).toHaveLength(1);
    expect((await app.state('small')).items['wheel/rim']?.pass?.secondLook?.by).toBe('A');
  });

  test('there is no second look at what failed since', async () => {
    const { say } = await smallBench();
    await say([passed('wheel/rim'), { kind: 'checked', item: 'wheel/rim', result: 'fail', why: 'crack' }]);
    expect(await say(passed('wheel/rim', { secondLook: true }), { by: 'B' })).toEqual(['no first look']);
  });
});

describe('strikes and finds', () => {
  test('a fact is struck once, and stays in the record with who struck it and why', async () => {
    const { app, say } = await smallBench();
    const [note = ''] = await say({ kind: 'note', text: 'wrong' });
    const strike = { kind: 'struck', fact: note, why: 'wrong kart' };
    expect(await say(strike, { by: 'B' })).toHaveLength(1);
    expect(await say(strike)).toEqual(['already struck']);
    const lines = await app.facts('small', { kinds: ['note'] });
    expect(lines).toMatchObject([{ fact: { id: note }, struck: { by: 'B', why: 'wrong kart' } }]);
  });

  test('the only kart file cannot be struck from under its kart', async () => {
    const { say } = await smallBench();
    expect(await say({ kind: 'struck', fact: 'f1', why: 'x' })).toEqual(['kart file']);
  });

  test('a find is mended once', async () => {
    const { say } = await smallBench();
    const [found = ''] = await say({ kind: 'found', part: 'wheel', defect: 'dent', grade: 'safety' });
    expect(await say({ kind: 'mended', found: 'f0', how: 'x' })).toEqual(['unknown fact']);
    expect(await say({ kind: 'mended', found, how: 'new rim' })).toHaveLength(1);
    expect(await say({ kind: 'mended', found, how: 'again' })).toEqual(['already mended']);
  });

  test('a photo must be in the book before a find speaks of it', async () => {
    const { app, say } = await smallBench();
    const found = { kind: 'found', part: 'wheel', defect: 'dent', grade: 'cosmetics' };
    expect(await say({ ...found, photo: 'a'.repeat(64) })).toEqual(['unknown file']);
    const photo = await app.putFile(new Uint8Array([1, 2, 3]), 'image/png');
    expect(await say({ ...found, photo })).toHaveLength(1);
  });
});

describe('kart files', () => {
  test('the same text is filed once, a changed one again, and a broken one says every line that is wrong', async () => {
    const { app } = await smallBench();
    expect((await app.fileKart(SMALL_KART, { by: 'A' })).kind).toBe('unchanged');
    const wider = SMALL_KART.replace('1045 mm', '1050 mm');
    expect((await app.fileKart(wider, { by: 'A' })).kind).toBe('recorded');
    expect((await app.kart('small')).dimensions.wheelbase?.text).toBe('1050 mm');
    const broken = SMALL_KART.replace('1045 mm', '1045').replace('kind: hub', 'kind: hup');
    const done = await app.fileKart(broken, { by: 'A' });
    if (done.kind !== 'refused') throw new Error('it was filed');
    expect(done.problems.length).toBeGreaterThanOrEqual(2);
    for (const problem of done.problems)
      expect(problem).toMatchObject({ code: 'kart file', where: expect.stringMatching(/^line \d+/) });
  });
});
