import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { createServer, get } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { certificateFor, localAddresses } from './index.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-certificate-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const now = new Date();

test('a client that trusts the authority speaks to the server under every name, and one that does not is warned', async () => {
  const { key, cert, ca } = await certificateFor(folder, ['192.168.7.5', 'bench.local'], now);
  const server = createServer({ key, cert }, (_, answer) => answer.end('bench')).listen(0, '127.0.0.1');
  await new Promise(done => server.once('listening', done));
  const { port } = server.address() as AddressInfo;
  const asked = (more: object): Promise<string> =>
    new Promise((done, failed) => {
      get({ host: '127.0.0.1', port, ...more }, answer => answer.on('data', data => done(String(data)))).on(
        'error',
        failed,
      );
    });
  expect(await asked({ ca })).toBe('bench');
  expect(await asked({ ca, servername: 'bench.local' })).toBe('bench');
  await expect(asked({ ca, servername: 'another.local' })).rejects.toThrow(/altnames/);
  await expect(asked({})).rejects.toThrow(/self-signed|unable to/);
  await new Promise(done => server.close(done));
});

test('keys are for their owner alone; the same serves again, a new address or a near end makes a new one under the old authority', async () => {
  for (const name of readdirSync(folder))
    if (process.platform !== 'win32') expect(statSync(join(folder, name)).mode & 0o077).toBe(0);
  const names = ['192.168.7.5', 'bench.local'];
  const first = await certificateFor(folder, names, now);
  expect((await certificateFor(folder, names, now)).cert).toBe(first.cert);
  const moved = await certificateFor(folder, ['192.168.7.99'], now);
  expect(moved.cert).not.toBe(first.cert);
  expect(moved.ca).toBe(first.ca);
  const late = await certificateFor(folder, ['192.168.7.99'], new Date(now.getTime() + 340 * 86_400_000));
  expect(late.cert).not.toBe(moved.cert);
  const leaf = new X509Certificate(late.cert);
  expect((Date.parse(leaf.validTo) - Date.parse(leaf.validFrom)) / 86_400_000).toBeLessThanOrEqual(398);
  expect(late.fingerprint).toMatch(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/);
});

test('the addresses of the machine are such as a browser takes, loopback not among them', () => {
  for (const one of localAddresses()) {
    expect(new URL(`https://${one}:1/`).hostname).toBe(one);
    expect(one).not.toMatch(/^(127\.|\[::1\]|localhost)/);
  }
});
