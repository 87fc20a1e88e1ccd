import { describe, expect, it } from 'vitest';
import { CHAIN_START, type Draft, type Fact, fold, partAge, type Reading, sealAll } from './index.ts';

type Said = Draft extends infer T
  ? T extends unknown
    ? Omit<T, 'id' | 'kart' | 'at' | 'recorded' | 'by' | 'device'>
    : never
  : never;
const minute = (n: number): string => new Date(Date.parse('2026-05-01T08:00:00.000Z') + n * 60_000).toISOString();
const envelope = (n: number) => ({
  id: `f${n}`,
  kart: '41',
  at: minute(n),
  recorded: minute(n),
  by: 'A. Sample',
  device: 'bench',
});
/** Facts a minute apart, f1, f2, f3 ... */
const log = (...said: readonly Said[]): readonly Fact[] =>
  sealAll(
    CHAIN_START,
    said.map((what, i) => ({ ...what, ...envelope(i + 1) }) as Draft),
  );
const state = (...said: readonly Said[]) => fold(log(...said));
const ran = (minutes: number, laps = 0): Said => ({ kind: 'ran', minutes, laps });
const mm = (value: number): Reading => ({ text: `${value} mm`, si: value / 1000, unit: 'mm' });
/** The mark of the n-th of facts a minute apart, before any run. */
const mark = (n: number) => ({ pos: n, fact: `f${n}`, at: minute(n), by: 'A. Sample', minutes: 0, laps: 0 });
const hub = 'rear hub left';
const seat = 'rear hub left/seat';
const bolts = 'rear hub left/pinch bolts';

describe('clock and age', () => {
  it('B12 a run moves the clock of the kart, and its mark shows the clock after it', () => {
    const { minutes, laps, runs, meterHours } = state(ran(12, 9), {
      kind: 'ran',
      minutes: 8,
      event: 'Heat 1',
      wet: true,
      meterHours: 21.5,
    });
    expect({ minutes, laps, meterHours }).toEqual({ minutes: 20, laps: 9, meterHours: 21.5 });
    expect(runs.map(run => [run.event, run.pos, run.minutes, run.runMinutes, run.runLaps, run.wet])).toEqual([
      ['2026-05-01', 1, 12, 12, 9, false],
      ['Heat 1', 2, 20, 8, 0, true],
    ]);
  });

  it('B12 the hour meter stands as it was read last, also when a later run does not read it', () => {
    expect(state({ kind: 'ran', minutes: 8, meterHours: 21.5 }, ran(5)).meterHours).toBe(21.5);
    expect(state(ran(5))).not.toHaveProperty('meterHours');
  });

  it('B13 a part that no fact mentions is as old as the clock', () => {
    expect(partAge(state(ran(12, 9)), hub)).toEqual({ minutes: 12, laps: 9 });
  });

  it('B13 B15 a part does not age while it is off', () => {
    const said: Said[] = [ran(10), { kind: 'taken off', part: hub }, ran(7), { kind: 'fitted', part: hub }, ran(5)];
    expect(said.map((_, i) => partAge(state(...said.slice(0, i + 1)), hub).minutes)).toEqual([10, 10, 10, 10, 15]);
    const part = state(...said).parts[hub];
    expect(part).toMatchObject({ on: true, off: { pos: 2 }, back: { pos: 4 } });
    expect(part).not.toHaveProperty('fresh');
  });

  it('B14 another part starts with the hours carried in, and the old serial does not stay', () => {
    const after = state(
      { kind: 'fitted', part: hub, serial: 'old' },
      ran(10, 3),
      { kind: 'fitted', part: hub, fresh: true, carriedMinutes: 90 },
      ran(5, 2),
    );
    expect(partAge(after, hub)).toEqual({ minutes: 95, laps: 2 });
    expect(after.parts[hub]).toMatchObject({ on: true, fresh: { pos: 3 }, back: { pos: 3 } });
    expect(after.parts[hub]).not.toHaveProperty('serial');
  });

  it('B14 another part knows when the one before it came off, also after it went off and on itself', () => {
    const said: Said[] = [
      { kind: 'taken off', part: hub },
      { kind: 'fitted', part: hub, fresh: true },
      { kind: 'taken off', part: hub },
      { kind: 'fitted', part: hub },
    ];
    expect(state(...said.slice(0, 2)).parts[hub]?.freshFrom).toEqual(mark(1));
    expect(state(...said).parts[hub]).toMatchObject({ freshFrom: mark(1), off: mark(3) });
    expect(state({ kind: 'fitted', part: hub, fresh: true }).parts[hub]).not.toHaveProperty('freshFrom');
  });

  it('B14 the same part keeps its serial when it goes back on', () => {
    const after = state(
      { kind: 'fitted', part: hub, serial: 'A7' },
      { kind: 'taken off', part: hub },
      { kind: 'fitted', part: hub },
    );
    expect(after.parts[hub]?.serial).toBe('A7');
  });

  it('B15 a part moved to another kart is off and takes its serial along', () => {
    const after = state(
      { kind: 'fitted', part: hub, serial: 'A7' },
      ran(5),
      { kind: 'moved', part: hub, to: '7' },
      ran(5),
    );
    expect(after.parts[hub]).toMatchObject({ on: false, off: { pos: 3 }, ageMinutes: 5 });
    expect(after.parts[hub]).not.toHaveProperty('serial');
  });
});

describe('items and joints', () => {
  const pass: Said = { kind: 'checked', item: seat, result: 'pass' };
  const look: Said = { ...pass, secondLook: true };
  const made: Said = { kind: 'made', joint: bolts };

  it('B16 a second look confirms the pass that stands, and a new pass waits for its own', () => {
    expect(state(pass, look).items[seat]?.pass).toMatchObject({ pos: 1, secondLook: { pos: 2 } });
    const again = state(pass, look, pass).items[seat]?.pass;
    expect(again?.pos).toBe(3);
    expect(again).not.toHaveProperty('secondLook');
  });

  it('B16 a second look without a pass confirms nothing', () => {
    expect(state(look).items[seat]?.pass).toBeUndefined();
  });

  it('B16 a fail stays beside a pass, and the later of the two can be told', () => {
    const item = state(pass, { kind: 'checked', item: seat, result: 'fail', why: 'fretting' }, pass).items[seat];
    expect(item).toMatchObject({ pass: { pos: 3 }, fail: { pos: 2, why: 'fretting' } });
    expect(state({ kind: 'checked', item: seat, result: 'not possible' }).items[seat]?.notPossible?.why).toBe(
      'not said',
    );
  });

  it('B16 a second look that fails is a fail and confirms nothing', () => {
    const item = state(pass, { ...look, result: 'fail' } as Said).items[seat];
    expect(item).toMatchObject({ pass: { pos: 1 }, fail: { pos: 2 } });
    expect(item?.pass).not.toHaveProperty('secondLook');
  });

  it('B17 a joint made passes the item of its id, and one second look confirms both', () => {
    for (const second of [
      { ...made, secondLook: true },
      { kind: 'checked', item: bolts, result: 'pass', secondLook: true },
    ] as Said[]) {
      const after = state(made, second);
      expect(after.joints[bolts]?.made).toMatchObject({ pos: 1, secondLook: { pos: 2 } });
      expect(after.items[bolts]?.pass).toMatchObject({ pos: 1, secondLook: { pos: 2 } });
    }
  });

  it('B17 a joint whose second retention is not fitted is made, but its item fails', () => {
    const after = state({ ...made, second: 'not fitted' } as Said);
    expect(after.joints[bolts]?.made?.pos).toBe(1);
    expect(after.items[bolts]).toMatchObject({ fail: { pos: 1, why: 'second retention not fitted' } });
    expect(after.items[bolts]).not.toHaveProperty('pass');
  });

  it('B17 a joint opened and made again shows both', () => {
    const after = state(made, { kind: 'loosened', joint: bolts }, made);
    expect(after.joints[bolts]).toMatchObject({ made: { pos: 3 }, loosened: { pos: 2 } });
  });

  it('B18 the last twenty readings are kept, newest last, of checks and settings alike', () => {
    const said = Array.from(
      { length: 25 },
      (_, i): Said =>
        i % 2
          ? { kind: 'set', item: seat, reading: mm(i) }
          : { kind: 'checked', item: seat, result: i % 3 ? 'pass' : 'fail', reading: mm(i) },
    );
    const readings = state(...said).items[seat]?.readings ?? [];
    expect(readings.map(r => r.reading.text)).toEqual(Array.from({ length: 20 }, (_, i) => `${i + 5} mm`));
    expect(state(...said).items[seat]?.set).toMatchObject({ pos: 24, reading: mm(23) });
  });
});

describe('readings', () => {
  it('B18 a reading is kept also where its second look confirms nothing', () => {
    const look: Said = { kind: 'checked', item: seat, result: 'pass', secondLook: true, reading: mm(3) };
    expect(state(look).items[seat]).toEqual({ readings: [{ ...mark(1), reading: mm(3) }] });
  });

  it('B18 what was done without an instrument has no reading', () => {
    const { items, joints } = state({ kind: 'set', item: seat }, { kind: 'made', joint: bolts });
    expect(items[seat]).toStrictEqual({ set: mark(1), readings: [] });
    expect(joints[bolts]).toStrictEqual({ made: mark(2) });
  });
});

describe('the rest of the record', () => {
  const found: Said = { kind: 'found', part: hub, defect: 'crack', grade: 'safety' };

  it('B19 a defect stays open until it is mended', () => {
    expect(state(found).defects).toMatchObject([{ fact: 'f1', defect: 'crack', grade: 'safety' }]);
    expect(state(found).defects[0]).not.toHaveProperty('mended');
    expect(state(found, { kind: 'mended', found: 'f1', how: 'new hub' }).defects[0]?.mended).toMatchObject({
      pos: 2,
      how: 'new hub',
    });
  });

  it('B19 what stands before the find in the order mends nothing', () => {
    expect(state({ kind: 'mended', found: 'f2', how: 'new hub' }, found).defects[0]).not.toHaveProperty('mended');
  });

  it('B26 a part that failed has a safety defect, which another one in its place or a mend closes', () => {
    const broke: Said = { kind: 'failed', part: hub, how: 'broke at the slot', lap: 4, stopped: true };
    expect(state(broke).defects).toMatchObject([
      { fact: 'f1', part: hub, defect: 'broke at the slot', grade: 'safety', failed: true },
    ]);
    expect(state(broke, { kind: 'fitted', part: hub }).defects[0]).not.toHaveProperty('mended');
    expect(state(broke, { kind: 'fitted', part: hub, fresh: true }).defects[0]?.mended).toMatchObject({ pos: 2 });
    expect(state(broke, { kind: 'mended', found: 'f1', how: 'sleeved' }).defects[0]?.mended?.how).toBe('sleeved');
    expect(state(found, { kind: 'fitted', part: hub, fresh: true }).defects[0]).not.toHaveProperty('mended');
  });

  it('B26 another part mends only what failed in its own place, and says so', () => {
    const broke: Said = { kind: 'failed', part: hub, how: 'broke at the slot' };
    expect(state(broke, { kind: 'fitted', part: 'chain', fresh: true }).defects[0]).not.toHaveProperty('mended');
    expect(state(broke, { kind: 'fitted', part: hub, fresh: true }).defects[0]?.mended?.how).toBe('another one fitted');
  });

  it('B26 a run without a blow leaves none', () => expect(state(ran(5)).impacts).toEqual([]));

  it('B1 a defect holds what was said and seen, and nothing else', () => {
    const photo = 'a'.repeat(64);
    const seen = { part: hub, defect: 'crack', grade: 'safety' } as const;
    const broke = { kind: 'failed', part: hub, how: 'broke' } as const;
    const failed = { ...mark(1), part: hub, defect: 'broke', grade: 'safety', failed: true };
    expect(state(found).defects).toStrictEqual([{ ...mark(1), ...seen }]);
    expect(state({ ...found, item: seat, photo } as Said).defects).toStrictEqual([
      { ...mark(1), ...seen, item: seat, photo },
    ]);
    expect(state(broke).defects).toStrictEqual([failed]);
    expect(state({ ...broke, photo }).defects).toStrictEqual([{ ...failed, photo }]);
  });

  it('B1 an event, a release and a life expected hold what was said, and nothing else', () => {
    const from = '2026-06-13T07:00:00.000Z';
    const until = '2026-06-14T18:00:00.000Z';
    const dry = { event: 'Round 3', from, until, runMinutes: 60, runLaps: 0, wet: false };
    const event = { kind: 'event', event: 'Round 3', from, until, minutes: 60 } as const;
    expect(state(event).events['Round 3']).toStrictEqual({ ...mark(1), ...dry });
    expect(state({ ...event, laps: 40, track: 'Lower Field', wet: true }).events['Round 3']).toStrictEqual({
      ...mark(1),
      ...dry,
      runLaps: 40,
      track: 'Lower Field',
      wet: true,
    });
    const said = { signer: 'A. Sample', verdict: 'fit', open: [], statement: 'I looked' } as const;
    const released: Said = { kind: 'released', ...said, open: [] };
    expect(state(released, { ...released, event: 'Round 3' } as Said).releases).toStrictEqual([
      { ...mark(1), ...said },
      { ...mark(2), ...said, event: 'Round 3' },
    ]);
    const { expected } = state(
      { kind: 'life expected', of: 'hub', halfHours: 30 },
      { kind: 'life expected', of: 'chain', tenthHours: 8, interval: true, why: 'leaflet' },
    );
    expect(expected.hub).toStrictEqual({ ...mark(1), halfHours: 30, interval: false });
    expect(expected.chain).toStrictEqual({ ...mark(2), tenthHours: 8, interval: true, why: 'leaflet' });
  });

  it('B26 a joint that failed is open and no defect; a blow counts as one of a run; no clock moves', () => {
    const impact = { corner: 'rear left', severity: 'hit' } as const;
    const after = state(
      { kind: 'made', joint: bolts },
      { kind: 'failed', part: hub, joint: bolts, how: 'nuts gone', afterMinutes: 300, impact },
    );
    expect(after.joints[bolts]).toMatchObject({ made: { pos: 1 }, loosened: { pos: 2 } });
    expect(after).toMatchObject({ defects: [], minutes: 0, runs: [], impacts: [{ pos: 2, ...impact }] });
    expect(state({ kind: 'ran', minutes: 5, impact }).impacts).toMatchObject([{ pos: 1, ...impact }]);
  });

  it('B27 a look that is asked for takes no pass away, and the last one asked stands', () => {
    const pass: Said = { kind: 'checked', item: seat, result: 'pass' };
    const asked = (why: string): Said => ({ kind: 'look asked', items: [seat, bolts], why });
    const { items } = state(pass, asked('one cracked'), asked('two cracked'));
    expect(items[seat]).toMatchObject({ pass: { pos: 1 }, asked: { pos: 3, why: 'two cracked' } });
    expect(items[bolts]).toMatchObject({ asked: { pos: 3 }, readings: [] });
  });

  it.each([
    ['2026-06-13T00:00:00.000Z', '2026-06-13T23:59:59.999Z'],
    ['2026-06-13T07:00:00.000Z', '2026-06-13T23:59:59.999Z'],
    ['2026-06-13T16:00:00.000Z', '2026-06-14T04:00:00.000Z'],
  ])('B20 an event from %s without an end lasts until %s', (from, until) => {
    expect(state({ kind: 'event', event: 'Round 3', from, minutes: 60 }).events['Round 3']?.until).toBe(until);
  });

  it('B20 the same name again replaces the event', () => {
    const round: Said = { kind: 'event', event: 'Round 3', from: '2026-06-13T07:00:00.000Z', minutes: 60 };
    const { events } = state(round, { ...round, minutes: 80, wet: true } as Said);
    expect(events).toMatchObject({ 'Round 3': { pos: 2, runMinutes: 80, wet: true } });
  });

  it('B11 the latest posture, settings, tyres and kart file stand, and releases are kept', () => {
    const after = state(
      { kind: 'put on', posture: 'stand' },
      { kind: 'set-up', changes: { toe: '2 mm out', 'rear sprocket': '22' } },
      { kind: 'set-up', changes: { toe: '0 mm' } },
      { kind: 'tyres', set: 'B' },
      { kind: 'kart filed', text: 'kart: 1' },
      { kind: 'released', signer: 'A. Sample', verdict: 'not known', open: ['toe'], statement: 'I looked' },
      { kind: 'put on', posture: 'ground' },
    );
    expect(after).toMatchObject({
      posture: 'ground',
      tyres: { set: 'B', pos: 4 },
      filed: { fact: 'f5' },
      count: 7,
      last: { pos: 7 },
    });
    expect(after.settings).toMatchObject({ toe: { value: '0 mm', pos: 3 }, 'rear sprocket': { value: '22', pos: 2 } });
    expect(after.releases).toMatchObject([{ verdict: 'not known', open: ['toe'] }]);
  });

  it('B11 a past moment is asked again from what had happened and had been written by then', () => {
    const [first, second] = log(ran(5), ran(7)) as [Fact, Fact];
    const late = { ...second, recorded: minute(30) };
    expect(fold([first, late], minute(10)).minutes).toBe(5);
    expect(fold([first, late], minute(30)).minutes).toBe(12);
    expect(fold([first, late], minute(0)).count).toBe(0);
    expect(fold([first], first.at).minutes).toBe(5); // at that very moment too
    const ahead = { ...second, at: minute(30) }; // written down before it is to happen
    expect(fold([first, ahead], minute(10)).minutes).toBe(5);
  });

  it('B11 a part named like a word of the language is a part like any other', () => {
    expect(state().parts.constructor).toBeUndefined();
    expect(partAge(state(ran(3), { kind: 'taken off', part: '__proto__' }, ran(3)), '__proto__').minutes).toBe(3);
  });
});
