/** A Chromium for the journeys: the one that is there, else one from the system's packages, else Playwright's download. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { toldAndDone } from './told.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome.exe'];
const USUAL = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Flags for a browser under test: no sandbox where root cannot have one, and no talking to the outside. */
export const chromiumFlags = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** Path of a Chromium that is there, or undefined. KARTWRIGHT_CHROMIUM wins; a wrong one is an error, not passed over. */
export async function findChromium() {
  const asked = process.env.KARTWRIGHT_CHROMIUM;
  if (asked) {
    if (existsSync(asked)) return asked;
    throw new Error(
      `KARTWRIGHT_CHROMIUM: expected the path of a browser, got ${asked}, where no file is: correct or unset it.`,
    );
  }
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const places = NAMES.flatMap(name => folders.map(folder => join(folder, name)));
  return [...places, ...USUAL].find(path => existsSync(path)) ?? (await playwrightsOwn());
}

async function playwrightsOwn() {
  const { chromium } = await import('playwright-core');
  const path = chromium.executablePath();
  return existsSync(path) ? path : undefined;
}

/** As findChromium, but gets one when there is none. Throws, saying what to do, when that fails too. */
export async function ensureChromium() {
  const there = await findChromium();
  if (there) return there;
  const said = (await hasAptAsRoot()) ? await fromApt() : await fromPlaywright();
  const got = await findChromium();
  if (got) return got;
  throw new Error(
    `No Chromium for the tests in a real browser, and getting one failed; it said:\n${said.trim()}\n` +
      'Install Chromium, or set KARTWRIGHT_CHROMIUM to the path of one, and run the same command again.',
  );
}

async function hasAptAsRoot() {
  return process.getuid?.() === 0 && (await run('apt-get', ['--version'], { quiet: true })).code === 0;
}

async function fromApt() {
  console.error('Installing Chromium through apt-get ...');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const update = await run('apt-get', ['update'], { quiet: true, env });
  const install = await run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { quiet: true, env });
  return install.code === 0 ? install.output : `${update.output}\n${install.output}`;
}

async function fromPlaywright() {
  console.error("Fetching Chromium through Playwright's own download ...");
  const cli = join(root, 'node_modules', 'playwright-core', 'cli.js');
  return (await run(process.execPath, [cli, 'install', 'chromium'], { quiet: true })).output;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await toldAndDone(async () => console.log(await ensureChromium()));
}
