import { spawn } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { root } from './root.mjs';

/**
 * The real scripts in a small clone of its own. Only npm's and Vite's work is played: each writes a line into log.txt, npm puts
 * the played Vite in place, and Vite the program.
 */
const PLAYED_VITE = `
const fs = require('node:fs');
fs.appendFileSync('log.txt', 'build\\n');
if (fs.readFileSync('src/a.ts', 'utf8').includes('broken')) { console.error('a.ts: it is broken'); process.exit(1); }
const out = process.argv[process.argv.indexOf('--outDir') + 1];
fs.mkdirSync(out, { recursive: true });
fs.writeFileSync(out + '/cli.js', "console.log('started', process.argv.slice(2).join(' '));\\n");
`;
const PLAYED_NPM = `
const fs = require('node:fs');
fs.appendFileSync('log.txt', process.argv[2] + '\\n');
const failures = Number(process.env.PLAYED_FAILURES ?? 0);
const calls = fs.readFileSync('log.txt', 'utf8').split('\\n').filter(line => line === 'ci').length;
if (calls <= failures) { console.error('the registry does not answer'); process.exit(7); }
fs.rmSync('node_modules', { recursive: true, force: true });
fs.mkdirSync('node_modules/vite/bin', { recursive: true });
fs.writeFileSync('node_modules/vite/bin/vite.js', ${JSON.stringify(PLAYED_VITE)});
`;

let clone;
const file = (...names) => join(clone, ...names);
const log = () => (existsSync(file('log.txt')) ? readFileSync(file('log.txt'), 'utf8').trim().split('\n') : []);

beforeEach(() => {
  clone = mkdtempSync(join(tmpdir(), 'kartwright-start-'));
  cpSync(join(root, 'scripts'), file('scripts'), { recursive: true });
  for (const [name, text] of Object.entries({
    'package.json': '{ "type": "module", "dependencies": { "a": "1.0.0" } }',
    'package-lock.json': '{}',
    'played-npm.cjs': PLAYED_NPM,
  })) {
    writeFileSync(file(name), text);
  }
  mkdirSync(file('src'));
  writeFileSync(file('src', 'a.ts'), 'one');
});
afterEach(() => rmSync(clone, { recursive: true, force: true }));

/** @returns {Promise<{ code: number, said: string }>} */
function start(args = [], env = {}) {
  return new Promise(resolve => {
    const child = spawn(process.execPath, [file('scripts', 'start.mjs'), ...args], {
      cwd: clone,
      env: { ...process.env, npm_execpath: file('played-npm.cjs'), ...env },
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', text => {
        said += text;
      });
    }
    child.on('close', code => resolve({ code, said }));
  });
}

describe('npm start', () => {
  test('installs, builds and starts; a second one only starts', async () => {
    expect(await start(['--port', '0'])).toMatchObject({
      code: 0,
      said: expect.stringContaining('started start --port 0'),
    });
    expect(log()).toEqual(['ci', 'build', 'build']); // the page and the command line
    expect((await start()).said).toBe('started start\n');
    expect(log()).toHaveLength(3);
  });

  test('builds again when a source has changed, but not for a test', async () => {
    await start();
    writeFileSync(file('src', 'a.test.ts'), 'a test');
    await start();
    expect(log()).toHaveLength(3);
    appendFileSync(file('src', 'a.ts'), 'two');
    await start();
    expect(log()).toEqual(['ci', 'build', 'build', 'build', 'build']);
  });

  test('installs again when the lock file has changed, but not for another script in package.json', async () => {
    await start();
    writeFileSync(
      file('package.json'),
      '{ "type": "module", "scripts": { "b": "c" }, "dependencies": { "a": "1.0.0" } }',
    );
    await start();
    expect(log().filter(line => line === 'ci')).toHaveLength(1);
    writeFileSync(file('package-lock.json'), '{ "lockfileVersion": 3 }');
    await start();
    expect(log().filter(line => line === 'ci')).toHaveLength(2);
  });

  test('tries npm once more when it fails', async () => {
    expect((await start([], { PLAYED_FAILURES: '1' })).code).toBe(0);
    expect(log().filter(line => line === 'ci')).toHaveLength(2);
  });

  test("shows npm's own words when it fails twice, says what to do, and starts nothing", async () => {
    const { code, said } = await start([], { PLAYED_FAILURES: '2' });
    expect(code).toBe(1);
    expect(said).toContain('npm ci failed twice (exit 7)');
    expect(said).toContain('the registry does not answer');
    expect(said).toContain('run the same command again');
    expect(said).not.toContain('started');
  });

  test("shows the builder's own words when the build fails, and the next start builds again", async () => {
    writeFileSync(file('src', 'a.ts'), 'broken');
    const { code, said } = await start();
    expect(code).toBe(1);
    expect(said).toContain('a.ts: it is broken');
    writeFileSync(file('src', 'a.ts'), 'mended');
    expect((await start()).said).toContain('started');
  });

  test('two at once install and build once between them', async () => {
    const both = await Promise.all([start(), start()]);
    expect(both.map(({ code }) => code)).toEqual([0, 0]);
    expect(log()).toEqual(['ci', 'build', 'build']);
    expect(existsSync(file('.kartwright', 'start.lock'))).toBe(false);
  });
});
