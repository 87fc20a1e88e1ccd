import { describe, expect, test } from 'vitest';
import { drive } from '../../../test/drive.ts';
import { csvOf } from '../../../test/drive-files.ts';
import { keepIn } from '../place.ts';
import { createDesk, type Desk, type HandFor, type OnTable } from './desk.ts';
import { LogReading } from './reading.ts';

/** The worker's own reading, here beside the test; every piece of it comes later, as from a worker. */
const hands = (ended: string[] = []): HandFor => {
  let made = 0;
  return (hear, failed) => {
    const name = `hand ${++made}`;
    let turn = Promise.resolve();
    const reading = new LogReading(tell => hear(tell));
    return {
      ask(ask) {
        turn = turn.then(() => reading.hear(ask)).catch((error: unknown) => failed(String(error)));
      },
      end: () => ended.push(name),
    };
  };
};
const file = (name: string, content: BlobPart) => Object.assign(new Blob([content]), { name });
const log = (name: string, laps: number, seed = 1) => file(name, csvOf(drive({ laps, seed }).rows));

function settled(desk: Desk, is: (list: readonly OnTable[]) => boolean): Promise<readonly OnTable[]> {
  return new Promise(done => {
    const look = (): void => {
      if (is(desk.list())) done(desk.list());
    };
    desk.onChange(look);
    look();
  });
}
const isRead = ({ stage }: OnTable): boolean => stage.kind === 'read' && !stage.looking;
const read = (each: OnTable | undefined) => {
  if (each?.stage.kind !== 'read') throw new Error(`the log must be read, is ${each?.stage.kind}`);
  return each.stage;
};
const NOTHING = { gates: [], layouts: {} };
const desk = (more: Partial<{ ended: string[] }> = {}) => createDesk(hands(more.ended), keepIn(undefined));

describe('logs put down', () => {
  test('are read one after the other, each with its laps by the gate that is proposed', async () => {
    const table = desk();
    table.put([log('a.csv', 4), log('b.csv', 6)], NOTHING);
    expect(table.list().map(({ stage }) => stage.kind)).toEqual(['reading', 'waiting']);
    const [a, b] = await settled(table, list => list.every(isRead));
    expect([read(a).found.laps.length, read(b).found.laps.length]).toEqual([4, 6]);
    expect(read(a).log.hash).toMatch(/^[0-9a-f]{64}$/);
    expect(read(a).log.hash).not.toBe(read(b).log.hash);
  });

  test('of a track known before are timed by its gates', async () => {
    const { gates } = drive();
    const table = desk();
    const far = { left: { lat: 0.1, lon: 0.1 }, right: { lat: 0.1, lon: 0.100001 } };
    table.put([log('a.csv', 4)], {
      layouts: {},
      gates: [
        { track: 'Elsewhere', gates: [far] },
        { track: 'Hollow Lane', gates },
      ],
    });
    const [a] = await settled(table, list => list.every(isRead));
    expect(read(a).found.track).toBe('Hollow Lane');
    expect(read(a).found.laps[0]?.sectors).toHaveLength(2);
  });

  test('that are none are refused with what to do, and the next is read', async () => {
    const table = desk();
    table.put([file('page.csv', '<!doctype html><html></html>'), log('a.csv', 3)], NOTHING);
    const [page, a] = await settled(table, list => list.slice(1).every(isRead));
    expect(page?.stage).toMatchObject({ kind: 'refused', problem: { got: 'a web page' } });
    expect(read(a).found.laps).toHaveLength(3);
  });

  test('are gone when cancelled, whatever their worker still says', async () => {
    const ended: string[] = [];
    const table = desk({ ended });
    table.put([log('a.csv', 30), log('b.csv', 3)], NOTHING);
    const id = table.list()[0]?.id ?? 0;
    table.remove(id);
    expect(ended).toEqual(['hand 1']);
    const [b, ...none] = await settled(table, list => list.every(isRead));
    expect(none).toEqual([]);
    expect(read(b).found.laps).toHaveLength(3);
  });

  test('whose columns are in doubt are asked about once, and remembered by their header', async () => {
    const rows = csvOf(drive({ laps: 3 }).rows).replace(/^[^\n]*/, header => header.replace(/^[^,]*/, 'moment'));
    const table = desk();
    table.put([file('a.csv', rows), file('b.csv', rows)], NOTHING);
    const [a] = await settled(table, list => list.every(({ stage }) => stage.kind === 'columns'));
    if (a?.stage.kind !== 'columns') throw new Error('columns must be asked');
    expect(a.stage.asked.layout.columns.time).toBeUndefined();
    expect(a.stage.asked.lines[0]).toMatch(/^moment,/);
    const { layout } = a.stage.asked;
    table.choose(a.id, { ...layout, columns: { ...layout.columns, time: { heading: 'moment', unit: 's' } } });
    await settled(table, ([first]) => first !== undefined && isRead(first));
    table.put([file('c.csv', rows)], NOTHING);
    const list = await settled(table, all => all.length === 3 && isRead(all[2] as OnTable));
    expect(read(list[2]).found.laps).toHaveLength(3);
  });
});

describe('another gate', () => {
  test('finds other laps, and a lap marked stays marked', async () => {
    const table = desk();
    table.put([log('a.csv', 5)], NOTHING);
    const [a] = await settled(table, list => list.every(isRead));
    table.mark(a?.id ?? 0, 2);
    const { gates } = drive();
    table.setGates(a?.id ?? 0, gates);
    expect(read(table.list()[0]).looking).toBe(true);
    const [again] = await settled(table, list => list.every(isRead));
    expect(read(again).found.laps[0]?.sectors).toHaveLength(2);
    expect(read(again).marked.size).toBe(1);
  });

  test('set by two taps is turned the way the track is driven', async () => {
    const table = desk();
    table.put([log('a.csv', 4)], NOTHING);
    const [a] = await settled(table, list => list.every(isRead));
    const [gate] = drive().gates;
    table.setGates(a?.id ?? 0, [{ left: gate.right, right: gate.left }], 0);
    const [again] = await settled(table, list => list.every(isRead));
    expect(read(again).found.laps).toHaveLength(4);
    expect(read(again).found.gates?.[0]).toEqual(gate);
  });
});
