/**
 * `npm test`: everything that must hold, counted, ending with the line `N passed, N failed`.
 * `npm test -- types unit` runs only the named steps.
 */
import { join } from 'node:path';
import { ensureChromium } from './chromium.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { runVitest } from './vitest.mjs';

const bin = (...path) => join(root, 'node_modules', ...path);

/** Steps that count as one each: a name, the program, and what its output must show so that we know it looked. */
const SINGLE = {
  lint: { args: [bin('@biomejs', 'biome', 'bin', 'biome'), 'check', '.'], looked: /Checked (\d+) files?/ },
  'types of the core': { args: [bin('typescript', 'bin', 'tsc'), '-p', 'tsconfig.core.json', '--noEmit'] },
  types: { args: [bin('typescript', 'bin', 'tsc'), '-p', 'tsconfig.json', '--noEmit'] },
  'import rules': {
    args: [
      bin('dependency-cruiser', 'bin', 'dependency-cruise.mjs'),
      '--config',
      '.dependency-cruiser.cjs',
      '--output-type',
      'err-long',
      'src',
    ],
    looked: /(\d+) modules/,
  },
  'dead code': { args: [bin('knip', 'bin', 'knip.js'), '--no-progress'] },
};

/** Groups of tests; those of one entry run in one Vitest. */
const TESTED = [
  {
    unit: file => /^(src|data|scripts|test\/tidy)\//.test(file),
    checks: file => file.startsWith('checks/'),
    store: file => file.startsWith('test/store-contract/'),
    faults: file => file.startsWith('test/faults/'),
  },
  { journeys: file => file.startsWith('test/journeys/') },
];

const known = [...Object.keys(SINGLE), ...TESTED.flatMap(Object.keys)];
const asked = process.argv.slice(2);
const unknown = asked.filter(name => !known.includes(name));
if (unknown.length > 0) {
  console.error(`npm test: expected steps out of: ${known.join(' · ')}; got ${unknown.join(', ')}.`);
  process.exit(1);
}
const wanted = name => asked.length === 0 || asked.includes(name);

/** @type {[string, { passed: number, failed: number, skipped: number }][]} */
const results = [];
const note = (name, count) => {
  results.push([name, count]);
  const words = count.failed > 0 ? `${count.failed} FAILED` : 'ok';
  console.log(`— ${name}: ${words}`);
};
const ONE_FAILED = { passed: 0, failed: 1, skipped: 0 };

/** A step that needs something first; when that cannot be had, the step has failed and says why. */
async function step(names, work) {
  try {
    for (const [name, count] of Object.entries(await work())) note(name, count);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    for (const name of names) note(name, ONE_FAILED);
  }
}

async function single(name) {
  const { args, looked } = SINGLE[name];
  const { code, output } = await run(process.execPath, args, { cwd: root, quiet: true });
  const sawNothing = looked && !(Number(looked.exec(output)?.[1] ?? 0) > 0);
  if (code !== 0 || sawNothing) console.log(output.trimEnd());
  if (code === 0 && sawNothing) console.log(`${name}: the check looked at nothing, so it proves nothing.`);
  return { [name]: code === 0 && !sawNothing ? { passed: 1, failed: 0, skipped: 0 } : ONE_FAILED };
}

await step(['install'], async () => {
  await ensureInstalled();
  return {};
});
if (results.length === 0) {
  for (const name of Object.keys(SINGLE).filter(wanted)) await step([name], () => single(name));
  for (const group of TESTED) {
    const names = Object.keys(group).filter(wanted);
    if (names.length === 0) continue;
    await step(names, async () => {
      if (names.includes('journeys')) {
        process.env.KARTWRIGHT_CHROMIUM = await ensureChromium();
        await ensureBuilt();
      }
      return runVitest(Object.fromEntries(names.map(name => [name, group[name]])));
    });
  }
}

const sum = key => results.reduce((total, [, count]) => total + count[key], 0);
console.log('');
for (const [name, { passed, failed, skipped }] of results) {
  console.log(`${name.padEnd(18)} ${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
}
const skipped = sum('skipped');
if (skipped > 0 && process.env.CI) console.log('Nothing may be skipped in CI: the run counts as failed.');
console.log(`\n${sum('passed')} passed, ${sum('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exitCode = sum('failed') > 0 || (skipped > 0 && process.env.CI) ? 1 : 0;
