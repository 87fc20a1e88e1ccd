/** The built program on the local network: who may come in, over HTTP and HTTPS, and how it stops. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { axeInBothThemes, browserPages, sent, smallTargets } from './pages.ts';
import { runCli } from './run-cli.ts';

let folder = '';
let child: ChildProcess | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-lan-'));
});
afterEach(async () => {
  if (child && child.exitCode === null) {
    child.kill('SIGTERM');
    await once(child, 'exit');
  }
  rmSync(folder, { recursive: true, force: true });
});
const kw = (words: readonly string[]) => runCli(folder, words);
/** A request that comes through a proxy is from outside, on a machine without a network too. */
const OUTSIDE = { 'x-forwarded-for': '192.168.7.20' };

async function serve(...more: string[]): Promise<{ url: URL; said: () => string }> {
  const env = { ...process.env, KARTWRIGHT_DATA: join(folder, 'book'), KARTWRIGHT_NAMES: 'kart.example, 10.9.8.7' };
  const started = spawn(process.execPath, ['dist/cli.js', 'serve', '--port', '0', '--json', '--log', 'info', ...more], {
    env,
  });
  child = started;
  let [out, err] = ['', ''];
  started.stderr.on('data', text => {
    err += String(text);
  });
  const url = await new Promise<string>((found, failed) => {
    started.stdout.on('data', text => {
      out += String(text);
      if (out.includes('\n')) found((JSON.parse(out) as { url: string }).url);
    });
    started.once('exit', code => failed(new Error(`serve ended with ${code}: ${err}`)));
  });
  return { url: new URL(url), said: () => err };
}

async function demoBook(): Promise<void> {
  const demo = (await kw(['book', 'export', '--demo'])).out;
  expect((await runCli(folder, ['book', 'import'], { input: demo })).code).toBe(0);
}

describe('a device from outside', () => {
  test('is let in by a code of the terminal, once, and put out again; what it wrote stays, under its own name', async () => {
    await demoBook();
    const { url, said } = await serve('--lan');
    const from = (path: string, init: RequestInit = {}, cookie = '') =>
      fetch(new URL(path, url), {
        ...init,
        headers: { ...OUTSIDE, 'content-type': 'application/json', ...(cookie && { cookie }) },
      });
    expect((await fetch(new URL('/api/karts', url))).status).toBe(200);
    expect((await from('/api/karts')).status).toBe(401);
    expect((await from('/')).status).toBe(200);
    const { code } = JSON.parse((await kw(['devices', 'pair', '--role', 'driver', '--json'])).out) as { code: string };
    const enter = { method: 'POST', body: JSON.stringify({ code, name: 'Phone of the driver' }) };
    const entered = await from('/api/pair', enter);
    expect(entered.status).toBe(201);
    expect((await from('/api/pair', enter)).status).toBe(403);
    const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    const { id } = (await entered.json()) as { id: string };
    expect((await from('/api/karts', {}, cookie)).status).toBe(200);
    const write = (payload: object) =>
      from(
        '/api/karts/41/facts',
        { method: 'POST', body: JSON.stringify({ payloads: [payload], by: 'D. River' }) },
        cookie,
      );
    expect((await write({ kind: 'note', text: 'slides at the rear' })).status).toBe(201);
    expect((await write({ kind: 'taken off', part: 'chain' })).status).toBe(403);
    expect((await kw(['devices'])).out).toContain(`writes as paired-${id}`);
    expect((await kw(['devices', 'revoke', id])).out).toContain('put out');
    expect((await from('/api/karts', {}, cookie)).status).toBe(401);
    expect((await kw(['facts', '--kind', 'note', '--last', '1', '--json'])).out).toContain(`paired-${id}`);
    expect((await kw(['verify'])).code).toBe(0);
    const lines = said()
      .trim()
      .split('\n')
      .map(line => JSON.parse(line) as { route?: string });
    expect(lines.length).toBeGreaterThan(5);
    expect(said()).not.toMatch(/River|slides|192\.168\.7\.20|karts\/41/);
    for (const secret of [code, cookie.split('=')[1] ?? '?'])
      expect(readFileSync(join(folder, 'book', 'devices.json'), 'utf8')).not.toContain(secret);
  });

  test('of a team has a book of its own, in a folder of its own', async () => {
    await demoBook();
    const { url } = await serve('--lan');
    const { code } = JSON.parse((await kw(['devices', 'pair', '--role', 'owner', '--team', 'red', '--json'])).out) as {
      code: string;
    };
    const headers = { ...OUTSIDE, 'content-type': 'application/json' };
    const entered = await fetch(new URL('/api/pair', url), {
      method: 'POST',
      headers,
      body: JSON.stringify({ code, name: 'red' }),
    });
    const cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    expect(await (await fetch(new URL('/api/karts', url), { headers: { ...OUTSIDE, cookie } })).json()).toEqual({
      karts: [],
    });
    expect(statSync(join(folder, 'book', 'teams', 'red', 'book.sqlite')).size).toBeGreaterThan(0);
    expect((await kw(['devices', 'pair', '--team', '../red'])).err).toContain('Expected small letters');
    expect((await kw(['devices', 'role', '00000000', 'king'])).err).toContain('Expected owner, mechanic');
    expect((await kw(['devices', 'revoke', '00000000'])).err).toContain('id of a paired device');
  });
});

test('with HTTPS a phone that trusts the authority comes in, its cookie is bound to the host, and keys are for their owner', async () => {
  const { url } = await serve('--lan', '--https');
  expect(url.protocol).toBe('https:');
  const ca = readFileSync(join(folder, 'book', 'https', 'authority.pem'));
  for (const name of ['authority-key.pem', 'server-key.pem'])
    if (process.platform !== 'win32') expect(statSync(join(folder, 'book', 'https', name)).mode & 0o077).toBe(0);
  const asked = (
    path: string,
    options: object,
    body?: string,
  ): Promise<{ status: number; cookie: string; hsts: string; text: string }> =>
    new Promise((done, failed) => {
      const sent = request(new URL(path, url), options, answer => {
        let text = '';
        answer.on('data', data => {
          text += String(data);
        });
        answer.on('end', () =>
          done({
            status: answer.statusCode ?? 0,
            cookie: String(answer.headers['set-cookie'] ?? ''),
            hsts: String(answer.headers['strict-transport-security'] ?? ''),
            text,
          }),
        );
      });
      sent.on('error', failed).end(body);
    });
  await expect(asked('/', {})).rejects.toThrow();
  expect(await asked('/', { ca })).toMatchObject({ status: 200, hsts: 'max-age=86400' });
  expect((await asked('/authority.pem', { ca, headers: OUTSIDE })).text).toBe(ca.toString());
  for (const [host, status] of [
    ['kart.example', 200],
    ['10.9.8.7:50271', 200], // the machine around a container
    ['other.example', 421],
  ] as const)
    expect((await asked('/', { ca, servername: 'localhost', headers: { host } })).status).toBe(status);
  expect((await asked('/authority-key.pem', { ca, headers: OUTSIDE })).status).toBe(401);
  const { code } = JSON.parse((await kw(['devices', 'pair', '--json'])).out) as { code: string };
  const headers = { ...OUTSIDE, 'content-type': 'application/json' };
  const { cookie } = await asked('/api/pair', { ca, method: 'POST', headers }, JSON.stringify({ code, name: 'phone' }));
  expect(cookie).toMatch(/^__Host-kartwright=[\w-]{43}; Max-Age=\d+; Path=\/; HttpOnly; Secure; SameSite=Strict$/);
});

test('told to stop it finishes what runs, closes open lines, and ends well within its time', async () => {
  await demoBook();
  const { url } = await serve();
  const live = await fetch(new URL('/api/live', url));
  const lines = live.body?.getReader();
  await lines?.read();
  const running = fetch(new URL('/api/karts/41/plan', url));
  await new Promise(done => setTimeout(done, 50));
  const from = performance.now();
  child?.kill('SIGTERM');
  expect((await running).status).toBe(200);
  const [code] = child ? await once(child, 'exit') : [undefined];
  expect(code).toBe(0);
  expect(performance.now() - from).toBeLessThan(20_000);
  for (let part = await lines?.read(); part && !part.done; part = await lines?.read());
});

test('a register of devices that was damaged lets nobody in, and this machine goes on', async () => {
  await demoBook();
  writeFileSync(join(folder, 'book', 'devices.json'), '{"register":1}');
  const { url } = await serve('--lan');
  const cookie = `kartwright=${'a'.repeat(43)}`;
  expect((await fetch(new URL('/api/karts', url), { headers: { ...OUTSIDE, cookie } })).status).toBe(500);
  expect((await fetch(new URL('/api/karts', url))).status).toBe(200);
});

describe('on the pages', () => {
  const pages = browserPages();
  test('the laptop shows a code and a square for the camera, and sees the device that came in', async () => {
    await demoBook();
    const { url } = await serve('--lan');
    const laptop = await pages.open(`${url.origin}/#/devices`, 'R. Vale', { viewport: { width: 1280, height: 800 } });
    await laptop.getByText('None yet.').waitFor();
    const some = await laptop.getByRole('button', { name: 'Show a code' }).count();
    if (some === 0) return void (await laptop.getByText('Only this machine reaches this page now').waitFor());
    await laptop.getByLabel('driver').check();
    await laptop.getByRole('button', { name: 'Show a code' }).click();
    await laptop.getByRole('img', { name: /for a camera/ }).waitFor();
    const code = (await laptop.locator('.big-code').textContent()) ?? '';
    const phone = await pages.bare(`${url.origin}/#/pair/WRONG`, { extraHTTPHeaders: OUTSIDE });
    await phone.getByLabel('What to call this device').fill('Phone D');
    expect(await smallTargets(phone)).toEqual([]);
    await phone.getByRole('button', { name: 'Let it in' }).click();
    await phone.getByRole('alert').getByText('within the last ten minutes').waitFor();
    expect(await axeInBothThemes(phone)).toEqual([]);
    await phone.getByLabel('The code').fill(code.toLowerCase().replace('-', ' '));
    await phone.getByRole('button', { name: 'Let it in' }).click();
    await phone.getByRole('dialog').getByLabel('Your name').fill('D. River');
    await phone.getByRole('button', { name: 'That is me' }).click();
    await sent(phone); // it has the book now
    expect(await axeInBothThemes(laptop)).toEqual([]);
    expect(await smallTargets(laptop)).toEqual([]);
    await laptop.getByRole('button', { name: /look again/ }).click();
    await laptop.getByText('Phone D').waitFor();
    await laptop.getByLabel('Role of Phone D').selectOption('scrutineer');
    await laptop.getByRole('button', { name: 'Put Phone D out' }).click();
    await laptop.getByRole('button', { name: 'Yes, out' }).click();
    await laptop.getByText('what it wrote stays in the book').waitFor();
  });

  test('a phone is logged out from any sheet, and its token is worth nothing at once', async () => {
    await demoBook();
    const { url } = await serve('--lan');
    const { code } = JSON.parse((await kw(['devices', 'pair', '--json'])).out) as { code: string };
    const phone = await pages.bare(`${url.origin}/#/pair/${code}`, { extraHTTPHeaders: OUTSIDE });
    await phone.getByLabel('What to call this device').fill('Phone M');
    await phone.getByRole('button', { name: 'Let it in' }).click();
    await phone.getByRole('dialog').getByLabel('Your name').fill('M. Ech');
    await phone.getByRole('button', { name: 'That is me' }).click();
    await sent(phone);
    const [cookie] = await phone.context().cookies();
    const asked = () =>
      fetch(new URL('/api/karts', url), { headers: { ...OUTSIDE, cookie: `${cookie?.name}=${cookie?.value}` } });
    expect((await asked()).status).toBe(200);
    const logOut = phone.getByRole('button', { name: 'Log this device out' });
    for (const sheet of ['work', 'kart', 'record', 'fit', 'device', 'today']) {
      await phone.evaluate(to => {
        location.hash = to;
      }, `#/${sheet}`);
      await phone.locator('main h1').first().waitFor();
      await logOut.waitFor();
    }
    await logOut.click();
    expect(await axeInBothThemes(phone)).toEqual([]);
    expect(await smallTargets(phone)).toEqual([]);
    await phone.getByRole('button', { name: 'Yes, log out' }).click();
    await phone.locator('.title-block').getByText('not let in').waitFor();
    expect(await logOut.count()).toBe(0);
    expect((await asked()).status).toBe(401);
    const { code: next } = JSON.parse((await kw(['devices', 'pair', '--json'])).out) as { code: string };
    await phone.locator('.title-block').getByText('not let in').click();
    await phone.getByRole('button', { name: 'Let this device in again' }).click();
    await phone.getByLabel('The code').fill(next);
    await phone.getByLabel('What to call this device').fill('Phone M again');
    await phone.getByRole('button', { name: 'Let it in', exact: true }).click();
    await sent(phone);
  });

  test('a phone that was put out says so, keeps what it wrote, and sends it once when it is let in again', async () => {
    await demoBook();
    const { url } = await serve('--lan');
    const pair = async () => (JSON.parse((await kw(['devices', 'pair', '--json'])).out) as { code: string }).code;
    const phone = await pages.bare(`${url.origin}/#/pair/${await pair()}`, { extraHTTPHeaders: OUTSIDE });
    await phone.getByLabel('What to call this device').fill('Phone L');
    await phone.getByRole('button', { name: 'Let it in' }).click();
    await phone.getByRole('dialog').getByLabel('Your name').fill('M. Ech');
    await phone.getByRole('button', { name: 'That is me' }).click();
    await sent(phone);
    const [, id = ''] = /^(\w+) .*Phone L/m.exec((await kw(['devices'])).out) ?? [];
    expect((await kw(['devices', 'revoke', id])).out).toContain('put out');
    await phone.goto(`${url.origin}/#/record`);
    await phone.getByRole('button', { name: 'A note' }).click();
    await phone.getByLabel('What to remember', { exact: true }).fill('written after it was put out');
    await phone.getByRole('button', { name: 'Write it down' }).click();
    await phone.getByText('Written: Note: written after it was put out').waitFor();
    await phone.locator('.title-block').getByText('not let in, 1 to send').click();
    await phone.getByText('The server does not let this device in any more.').waitFor();
    expect(await axeInBothThemes(phone)).toEqual([]);
    const held = async () =>
      (await kw(['facts', '--kind', 'note'])).out.split('written after it was put out').length - 1;
    expect(await held()).toBe(0);
    await phone.getByRole('button', { name: 'Let this device in again' }).click();
    await phone.getByLabel('The code').fill(await pair());
    await phone.getByLabel('What to call this device').fill('Phone L again');
    await phone.getByRole('button', { name: 'Let it in', exact: true }).click();
    await sent(phone);
    expect(await held()).toBe(1);
  });

  test('a person is taken out of the book on the laptop: first what would go, then for good, and the chain holds', async () => {
    await demoBook();
    const { url } = await serve();
    const laptop = await pages.open(`${url.origin}/#/record`, 'O. Owner', { viewport: { width: 1280, height: 800 } });
    await laptop.getByText('J. Moor').first().waitFor();
    await laptop.evaluate(() => {
      location.hash = '#/devices';
    });
    await laptop.getByLabel('Whom, as the name stands in the book').fill('j. moor');
    await laptop.getByRole('button', { name: 'Show what would go' }).click();
    await laptop.getByText(/Written or signed by them: [1-9]/).waitFor();
    expect((await kw(['book', 'export'])).out).toContain('J. Moor'); // only shown yet
    expect(await axeInBothThemes(laptop)).toEqual([]);
    await laptop.getByRole('button', { name: 'Take it out, for good' }).click();
    await laptop.getByText('It is out.').waitFor();
    expect(await axeInBothThemes(laptop)).toEqual([]);
    await laptop.evaluate(() => {
      location.hash = '#/record';
    });
    await laptop
      .getByText(/somebody [0-9a-f]{6}/)
      .first()
      .waitFor();
    expect(await laptop.locator('main').textContent()).not.toContain('Moor');
    expect((await kw(['book', 'export'])).out).not.toMatch(/moor/i);
    expect((await kw(['verify'])).out).toMatch(
      /every one is as it was written, none is missing\.[\s\S]*redacted: signed by somebody/,
    );
  });
});
