/** Nothing lost, as a person in a terminal sees to it: is the book whole, a backup, and back again. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enter, NOBODY, type RegisterState, withCode } from '../../src/app/index.ts';
import { type Postgres, postgresBinaries, startPostgres } from '../postgres.ts';
import { runCli } from './run-cli.ts';

let folder = '';
const kw = (words: readonly string[], how: Parameters<typeof runCli>[2] = {}) => runCli(folder, words, how);
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-keeping-'));
  expect((await kw(['book', 'import'], { input: (await kw(['book', 'export', '--demo'])).out })).code).toBe(0);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a backup', () => {
  test('is a book of its own that proves whole, and restores byte for byte into an empty one', async () => {
    const made = await kw(['backup', 'stick/one.sqlite']);
    expect(made).toMatchObject({ code: 0, err: '' });
    expect(made.out).toMatch(/^\d+ facts and \d+ files? are in stick\/one\.sqlite, each as it is in the book\.\n$/);
    expect(readdirSync(join(folder, 'stick'))).toEqual(['one.sqlite']);
    expect((await kw(['verify', 'stick/one.sqlite'])).out).toMatch(/none is missing/);
    const back = await kw(['restore', 'stick/one.sqlite'], { data: 'new' });
    expect(back).toMatchObject({ code: 0, err: '' });
    expect((await kw(['book', 'export'], { data: 'new' })).out).toBe((await kw(['book', 'export'])).out);
    expect((await kw(['log', 'note', 'after the restore'], { data: 'new' })).code).toBe(0);
    expect((await kw(['verify'], { data: 'new' })).code).toBe(0);
  });

  test('is not written over, and does not go into a book that holds another', async () => {
    expect((await kw(['backup', 'stick/one.sqlite'])).err).toContain('nothing was overwritten');
    expect((await kw(['new', 'own.yaml', '--template', 'six-speed gearbox', '--name', '7'])).code).toBe(0);
    const event = ['log', 'event', 'Round 1', '--from', '2099-05-01 08:00', '--minutes', '60', '--kart', 'own.yaml'];
    expect((await kw(event, { data: 'other' })).code).toBe(0);
    const before = (await kw(['book', 'export'], { data: 'other' })).out;
    const refused = await kw(['restore', 'stick/one.sqlite'], { data: 'other' });
    expect([refused.code, refused.err]).toEqual([3, expect.stringContaining('holds another one')]);
    expect((await kw(['book', 'export'], { data: 'other' })).out).toBe(before);
    expect((await kw(['restore', 'stick/none.sqlite'], { data: 'other' })).err).toContain('no such file');
  });

  test('torn or with a letter changed is found out, and none of it is restored', async () => {
    const whole = readFileSync(join(folder, 'stick/one.sqlite'));
    writeFileSync(join(folder, 'torn.sqlite'), whole.subarray(0, whole.length / 2));
    const hurt = Buffer.from(whole);
    const at = whole.lastIndexOf('"kind":"checked"') + 9;
    hurt[at] = (hurt[at] ?? 0) ^ 1;
    writeFileSync(join(folder, 'hurt.sqlite'), hurt);
    for (const file of ['torn.sqlite', 'hurt.sqlite']) {
      expect((await kw(['verify', file])).code).toBe(3);
      expect((await kw(['restore', file], { data: 'into' })).code).toBe(3);
      expect((await kw(['verify'], { data: 'into' })).out).toMatch(/^0 facts/);
    }
    expect((await kw(['verify', 'hurt.sqlite'])).err).toMatch(/row \d+, fact [\w-]+: .*(Expected|must)/);
  });

  test('of before a person was taken out still holds the name, and is dropped when that is asked for', async () => {
    const more = { KARTWRIGHT_BACKUPS: join(folder, 'of-before'), KARTWRIGHT_BY: 'O. Owner' };
    const from = { data: 'forgetting', more };
    const note = ['log', 'note', 'seen by R. Stranger', '--kart', 'own.yaml', '--by', 'R. Stranger'];
    expect((await kw(note, from)).code).toBe(0);
    expect((await kw(['backup'], from)).code).toBe(0);
    const dry = await kw(['forget', 'R. Stranger', '--dry-run'], from);
    expect([dry.code, dry.out]).toEqual([0, expect.stringContaining('Nothing was changed.')]);
    const done = await kw(['forget', 'r. stranger', '--drop-backups'], from);
    expect([done.code, done.out]).toEqual([0, expect.stringMatching(/1 older backup removed/)]);
    expect((await kw(['book', 'export'], from)).out).not.toMatch(/stranger/i);
    expect((await kw(['verify'], from)).out).toMatch(/redacted: signed by somebody/);
    expect(readdirSync(join(folder, 'of-before')).length).toBe(1);
    expect((await kw(['forget', 'R. Stranger'], from)).code).toBe(3);
  });

  test('a person taken out of the book of a team gives no name to its devices either', async () => {
    const from = { data: 'crew/teams/red', more: { KARTWRIGHT_BY: 'O. Owner' } };
    const note = ['log', 'note', 'seen by R. Stranger', '--kart', 'own.yaml', '--by', 'R. Stranger'];
    expect((await kw(note, from)).code).toBe(0);
    const now = new Date();
    const paired = (state: RegisterState, team: string): RegisterState =>
      enter(withCode(state, { code: `${team}1234`, role: 'mechanic', team, now }), {
        ...{ code: `${team}1234`, name: 'phone of R. Stranger', token: `token of ${team}`.padEnd(40, '.'), now },
        id: team.length.toString(16).padStart(8, '0'),
      }).state;
    const file = join(folder, 'crew', 'devices.json');
    writeFileSync(file, JSON.stringify(paired(paired(NOBODY, 'red'), 'blue')));
    expect((await kw(['forget', 'R. Stranger'], from)).code).toBe(0);
    const { devices } = JSON.parse(readFileSync(file, 'utf8')) as RegisterState;
    expect(devices.map(({ team, name }) => [team, name])).toEqual([
      ['red', expect.stringMatching(/^device of somebody [0-9a-f]{6}$/)],
      ['blue', 'phone of R. Stranger'], // another team's book still holds the name
    ]);
  });

  test('of before a person was taken out says so when it is restored: surely when a later one tells, else that it may', async () => {
    const more = { KARTWRIGHT_BACKUPS: join(folder, 'later'), KARTWRIGHT_BY: 'O. Owner' };
    const from = { data: 'taken', more };
    const note = ['log', 'note', 'seen by R. Stranger', '--kart', 'own.yaml', '--by', 'R. Stranger'];
    expect((await kw(note, from)).code).toBe(0);
    expect((await kw(['backup', 'stick/before.sqlite'], from)).code).toBe(0);
    expect((await kw(['forget', 'R. Stranger'], from)).code).toBe(0);
    const may = await kw(['restore', 'stick/before.sqlite'], { ...from, data: 'restored' });
    expect(may.code).toBe(0);
    expect(may.out).toMatch(/Whoever else was taken out after \d{4}-\d\d-\d\d \d\d:\d\d UTC .*kartwright forget\.\n$/);
    expect(may.out).not.toContain('Somebody');
    expect((await kw(['backup'], from)).code).toBe(0);
    const surely = { ...from, data: 'restored-again' };
    expect((await kw(['restore', 'stick/before.sqlite'], surely)).out).toMatch(
      /Somebody who was taken out since, as "somebody [0-9a-f]{6}", stands again in \d facts?, among them [\w-]+: kartwright forget/,
    );
    expect((await kw(['forget', 'R. Stranger'], surely)).code).toBe(0); // what it says to do does it
    expect((await kw(['book', 'export'], surely)).out).not.toMatch(/stranger/i);
    const [kept = ''] = readdirSync(join(folder, 'later'));
    const after = await kw(['restore', join('later', kept)], { ...from, data: 'restored-after' });
    expect(after.out).not.toContain('Somebody'); // made after it
  });

  test('of every team is made beside that of the book, and one that fails keeps no other back', async () => {
    const team = (name: string) => ({ data: join('club', 'teams', name) });
    for (const name of ['red', 'blue']) {
      const note = ['log', 'note', `of ${name}`, '--kart', 'own.yaml'];
      expect((await kw(note, team(name))).code).toBe(0);
    }
    const made = await kw(['backup', '--teams'], { data: 'club' });
    expect([made.code, made.err]).toEqual([0, '']);
    expect(made.out).toContain('2 teams too');
    const [red = ''] = readdirSync(join(folder, 'club', 'teams', 'red', 'backups'));
    expect((await kw(['verify', join('club', 'teams', 'red', 'backups', red)])).code).toBe(0);
    writeFileSync(join(folder, 'club', 'teams', 'blue', 'book.sqlite'), 'no book');
    const apart = await kw(['backup', '--teams'], {
      data: 'club',
      more: { KARTWRIGHT_BACKUPS: join(folder, 'club-kept') },
    });
    expect([apart.code, apart.err]).toEqual([3, expect.stringMatching(/team blue: /)]);
    expect(readdirSync(join(folder, 'club-kept', 'teams', 'red')).length).toBe(1);
    expect(readdirSync(join(folder, 'club-kept')).length).toBe(2); // its own, and teams
  });

  test('without a name goes into the folder of backups, where the rules say which stay', async () => {
    const more = { KARTWRIGHT_BACKUPS: join(folder, 'kept') };
    expect((await kw(['backup'], { more })).code).toBe(0);
    const [today = ''] = readdirSync(join(folder, 'kept'));
    expect(today).toMatch(/^book-\d{4}-\d\d-\d\dT\d\d-\d\d-\d\dZ\.sqlite$/);
    for (const day of ['2020-01-05', '2020-01-06', '2020-02-01'])
      writeFileSync(join(folder, 'kept', `book-${day}T03-00-00Z.sqlite`), '');
    await new Promise(done => setTimeout(done, 1100)); // names tell seconds
    const made = await kw(['backup', '--json'], { more: { ...more, KARTWRIGHT_KEEP: '1 daily, 3 monthly' } });
    expect(made.code).toBe(0);
    expect(JSON.parse(made.out).dropped.length).toBe(2); // today's first, and 5 January
    const list = JSON.parse((await kw(['backup', '--list', '--json'], { more })).out) as { backups: { at: string }[] };
    expect(list.backups.slice(1).map(({ at }) => at)).toEqual(['2020-02-01T03:00:00Z', '2020-01-06T03:00:00Z']);
    expect((await kw(['backup', '--keep', 'all'], { more })).err).toContain('Expected rules such as');
  });
});

const bin = postgresBinaries();
describe.skipIf(bin === undefined)('a backup of a book in a database', () => {
  let server: Postgres;
  beforeAll(async () => {
    server = await startPostgres(bin ?? '');
  }, 120_000);
  afterAll(() => server?.stop(), 60_000);

  test('is the same kind of file, and restores into another database', async () => {
    const [from, to] = [await server.newDatabase(), await server.newDatabase()];
    expect((await kw(['book', 'move', from])).code).toBe(0);
    expect(await kw(['backup', 'database.sqlite'], { more: { DATABASE_URL: from } })).toMatchObject({
      code: 0,
      err: '',
    });
    expect(await kw(['restore', 'database.sqlite'], { more: { DATABASE_URL: to } })).toMatchObject({
      code: 0,
      err: '',
    });
    expect((await kw(['book', 'export'], { more: { DATABASE_URL: to } })).out).toBe((await kw(['book', 'export'])).out);
    expect((await kw(['verify'], { more: { DATABASE_URL: to } })).code).toBe(0);
  });
});
