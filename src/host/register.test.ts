import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { enter, type RegisterState, withCode } from '../app/index.ts';
import { fileRegister, newCode, newDeviceId, newToken } from './index.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-register-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));
const now = new Date('2026-05-01T08:00:00Z');
const addCode = (code: string) => (state: RegisterState) => ({
  state: withCode(state, { code, role: 'mechanic', team: '', now }),
  give: undefined,
});

test('what is in it no other user of the machine can read, and neither token nor code stands in it', async () => {
  const register = fileRegister(folder);
  const [code, token] = [newCode(), newToken()];
  await register.change(addCode(code));
  const text = readFileSync(join(folder, 'devices.json'), 'utf8');
  await register.change(state => enter(state, { code, token, name: 'Phone', id: newDeviceId(), now }));
  const after = readFileSync(join(folder, 'devices.json'), 'utf8');
  if (process.platform !== 'win32') expect(statSync(join(folder, 'devices.json')).mode & 0o077).toBe(0);
  for (const secret of [code, code.replace('-', ''), token]) expect(text + after).not.toContain(secret);
  expect((await fileRegister(folder).read()).devices).toMatchObject([{ name: 'Phone', role: 'mechanic' }]);
});

test('changes of many programs at the same time are all kept', async () => {
  const registers = Array.from({ length: 6 }, () => fileRegister(folder));
  await Promise.all(registers.map(one => one.change(addCode(newCode()))));
  expect((await fileRegister(folder).read()).codes.length).toBe(6);
  expect((await registers[0]?.read())?.codes.length).toBe(6);
});

test('one that was damaged lets nobody in, and says so', async () => {
  await fileRegister(folder).change(addCode(newCode()));
  for (const text of ['', '{', '{"register":2,"devices":[],"codes":[]}', '{"register":1,"devices":[{}],"codes":[]}']) {
    writeFileSync(join(folder, 'devices.json'), text);
    await expect(fileRegister(folder).read()).rejects.toThrow('expected the register of devices');
  }
});

test('a lock that a killed program left does not hold for ever', async () => {
  writeFileSync(join(folder, 'devices.json.lock'), '');
  await fileRegister(folder).change(addCode(newCode()));
  expect((await fileRegister(folder).read()).codes.length).toBe(1);
}, 20_000);

test('codes and tokens do not repeat, and a code has no sign that is mistaken for another', () => {
  const codes = Array.from({ length: 2000 }, newCode);
  expect(new Set(codes).size).toBe(2000);
  for (const code of codes) expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
  expect(newToken().length).toBe(43); // 256 bits in base 64
});
