/** Everything of a book or of a person as open files, unpacked by the tar of the system and by nothing of ours. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { smallBench } from '../../test/fixtures/small-bench.ts';
import { importLines } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createApp } from './app.ts';
import { takeAlong } from './take-along.ts';
import { tarOf } from './tar.ts';

let folder = '';
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function unpacked(files: Parameters<typeof tarOf>[0]): Promise<readonly string[]> {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-tar-'));
  const pieces: Uint8Array[] = [];
  for await (const piece of tarOf(files, new Date('2026-05-01T10:00:00Z'))) pieces.push(piece);
  writeFileSync(join(folder, 'all.tar'), Buffer.concat(pieces));
  execFileSync('tar', ['-xf', 'all.tar'], { cwd: folder });
  rmSync(join(folder, 'all.tar'));
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(one => one.isFile())
    .map(one => join(one.parentPath, one.name).slice(folder.length + 1))
    .toSorted();
}
const read = (path: string): string => readFileSync(join(folder, path), 'utf8');

async function bench() {
  const { app, say } = await smallBench();
  const photo = await app.putFile(Uint8Array.of(1, 2, 3), 'image/png');
  await say({ kind: 'found', part: 'hub', defect: 'a mark', grade: 'safety', photo }, { by: 'R. Stranger' });
  await app.lapsByHand('small', '52.31 52.48 52.40', { by: 'R. Stranger', event: '=1+1' });
  await say({ kind: 'note', text: 'nothing of theirs' }, { by: 'A. Helper' });
  return { app, photo };
}

describe('files to take along', () => {
  test('are all of a book: facts that import, kart files, calendars, laps, photos as they were', async () => {
    const { app, photo } = await bench();
    const files = await unpacked(takeAlong(app));
    expect(files).toEqual([
      'README.txt',
      'calendars/1-small.ics',
      'facts.jsonl',
      'karts/1-small.yaml',
      'laps/1-small.csv',
      `photos/${photo}.png`,
    ]);
    const imported = importLines(read('facts.jsonl'));
    expect(imported.kind === 'facts' && imported.facts.length).toBe(5);
    expect(parse(read('karts/1-small.yaml'))).toMatchObject({ name: 'small' });
    expect(read('calendars/1-small.ics')).toMatch(/^BEGIN:VCALENDAR\r\n/);
    const [head, first] = read('laps/1-small.csv').split('\r\n');
    expect(head).toBe('at,session,track,number,lap,time_s,spread_s,marked_not_counting');
    expect(first).toMatch(/,'=1\+1.*,1,full,52\.31,/);
    expect(
      createHash('sha256')
        .update(readFileSync(join(folder, `photos/${photo}.png`)))
        .digest('hex'),
    ).toBe(photo);
    for (const each of ['facts.jsonl', 'karts/', 'calendars/', 'laps/', 'photos/', 'logs/'])
      expect(read('README.txt')).toContain(each);
  });

  test('are of one person only what they wrote, and nothing of another', async () => {
    const { app, photo } = await bench();
    const files = await unpacked(takeAlong(app, { person: 'r. stranger' }));
    expect(files).toEqual(['README.txt', 'facts.jsonl', 'laps/1-small.csv', `photos/${photo}.png`]);
    const facts = read('facts.jsonl')
      .trimEnd()
      .split('\n')
      .map(line => JSON.parse(line));
    expect(new Set(facts.map(({ by }) => by))).toEqual(new Set(['R. Stranger']));
    expect(facts.length).toBe(3);
    expect(await unpacked(takeAlong(app, { person: 'N. Nobody' }))).toEqual(['README.txt', 'facts.jsonl']);
    expect(read('facts.jsonl')).toBe('');
  });

  test('have the size and time that tar reads back, whatever their length', async () => {
    const sizes = [0, 1, 511, 512, 513, 100_000];
    const files = await unpacked(
      (async function* () {
        for (const size of sizes) yield { path: `of/${size}`, bytes: new Uint8Array(size).fill(size % 251) };
      })(),
    );
    expect(files.length).toBe(sizes.length);
    for (const size of sizes) expect(readFileSync(join(folder, `of/${size}`))).toEqual(Buffer.alloc(size, size % 251));
    await expect(tarOf(one('../é'), new Date(0)).next()).rejects.toThrow('letters of ASCII');
  });
});

async function* one(path: string) {
  yield { path, bytes: new Uint8Array() };
}

test('a book is given to an older program only when nothing of it would be lost, and it is said what would be', async () => {
  const { app } = await bench();
  await expect(app.exportBook(1)).rejects.toMatchObject({
    problems: [
      { message: expect.stringContaining('5 of 5 in a newer one'), remedy: expect.stringContaining('Update') },
    ],
  });
  expect(await app.exportBook(2)).toBe(await app.exportBook());
  const text = readFileSync(new URL('../../test/fixtures/books/format-1.jsonl', import.meta.url), 'utf8');
  const old = createApp({
    store: memoryStore(),
    clock: { now: () => new Date(0) },
    ids: { next: () => 'id', salt: () => '0'.repeat(32) },
    reader: { read: async () => ({ ok: false, problems: [] }) as never },
    device: 'desk',
  });
  await old.importBook(text);
  expect(await old.exportBook(1)).toBe(text);
});
