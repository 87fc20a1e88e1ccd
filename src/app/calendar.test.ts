import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { type App, calendarOf, createApp } from './index.ts';

let app: App;
beforeAll(async () => {
  let n = 0;
  const ids = { next: () => `id-${n++}`, salt: () => '0'.repeat(32) };
  const clock = { now: () => new Date('2026-06-20T12:00:00Z') };
  app = createApp({ store: memoryStore(), clock, ids, reader: kartReader(libraryFiles()), device: 'test' });
  await app.seedDemo(demoText());
  const far = 'Münster, weit; „Nebel“ \\ '.repeat(4).trim();
  const said = [{ kind: 'event', event: 'Fog round', from: '2027-05-01T08:00:00.000Z', track: far, minutes: 200 }];
  expect((await app.record('41', said, { by: 'R. Vale' })).kind).toBe('recorded');
});

/** Read by a library that reads RFC 5545 for others (ical.js 2.2). */
const read = async () => new ICAL.Component(ICAL.parse(await calendarOf(app, '41')));

describe('the calendar file', () => {
  test('holds the events ahead at their times, whatever signs their names have', async () => {
    const events = (await read()).getAllSubcomponents('vevent').map(one => new ICAL.Event(one));
    const fog = events.find(({ summary }) => summary.startsWith('Fog round'));
    expect(fog?.startDate.toJSDate().toISOString()).toBe('2027-05-01T08:00:00.000Z');
    expect(fog?.location).toBe('Münster, weit; „Nebel“ \\ '.repeat(4).trim());
    expect(events.every(({ endDate }) => endDate.toJSDate().getTime() >= Date.parse('2026-06-20T12:00:00Z'))).toBe(
      true,
    );
  });

  test('has no line of more than 75 octets, and each ends as RFC 5545 §3.1 asks', async () => {
    const lines = (await calendarOf(app, '41')).split('\r\n');
    expect(lines.pop()).toBe('');
    expect(Math.max(...lines.map(line => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
    expect(lines.some(line => line.includes('\n'))).toBe(false);
  });

  test('says what is due before each, once: what the plan has before the first, and what the running up to it wears out before a later', async () => {
    const todos = (await read()).getAllSubcomponents('vtodo');
    const { due } = await app.due('41');
    expect(todos[0]?.getFirstPropertyValue('summary')).toContain(`${due.length} items due before`);
    const later = String(todos.at(-1)?.getFirstPropertyValue('description'));
    expect(later).toMatch(/h/);
    expect(todos.length).toBeGreaterThan(1);
  });

  test('names its entries the same when it is made again', async () => {
    const uids = async () => (await read()).getAllSubcomponents().map(one => one.getFirstPropertyValue('uid'));
    expect(await uids()).toEqual(await uids());
    expect(new Set(await uids()).size).toBe((await uids()).length);
  });
});
