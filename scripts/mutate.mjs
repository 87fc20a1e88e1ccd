/**
 * `npm run mutate [book|risk|quantity|src/book/lines.ts ...]`: plants small faults in the sources, one at a time, and counts how many
 * the tests find. Prints those that live, then the score of each file; exits 1 where a folder, or what was asked of it, lies below 85 %.
 * The faults are those of Stryker's instrumenter, fetched on demand beside the packages of this project; test/mutate tries them.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled } from './ensure.mjs';
import { scores, survivors } from './mutate-score.mjs';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { toldAndDone } from './told.mjs';

const LEAST = 85; // % of all mutants, reached by a test or not
const INSTRUMENTER = ['@stryker-mutator/instrumenter', '9.6.1'];
const cache = join(root, 'node_modules', '.cache', 'kartwright', 'mutate');
const instrumenterAt = join(cache, 'node_modules', ...INSTRUMENTER[0].split('/'));
const folder = mkdtempSync(join(tmpdir(), 'kartwright-mutate-'));
const tellings = join(folder, 'told.jsonl');

/** What is scored together, part by part: sources, and the tests that hold them (a file, or all of a folder), quick ones first. */
const SCORED = {
  quantity: [{ of: /^src\/quantity\//, tests: ['src/quantity', 'checks/inch.test.ts', 'checks/unit.test.ts'] }],
  book: [{ of: /^src\/book\//, tests: ['src/book'] }],
  risk: [
    { of: /^src\/risk\/[^/]+$/, tests: ['src/risk'] },
    {
      of: /^src\/risk\/fault-tree\//,
      tests: [
        'src/risk/fault-tree/network.test.ts',
        'src/risk/fault-tree/tables.test.ts',
        'src/risk/fault-tree/readers.test.ts',
        'checks/fault-tree.test.ts',
        'src/risk/fault-tree',
      ],
    },
    {
      of: /^src\/risk\/retentions\//,
      tests: ['src/risk/retentions', 'checks/retention.test.ts'],
    },
    {
      of: /^src\/risk\/weak-links\//,
      tests: ['words', 'joint-look', 'hands', 'told', 'retention-record']
        .map(name => `src/risk/weak-links/${name}.test.ts`)
        .concat('src/risk/weak-links'),
    },
  ],
};

await toldAndDone(async () => {
  const asked = process.argv.slice(2);
  const wanted = (name, file) => asked.length === 0 || asked.some(each => each === name || file.startsWith(each));
  await ensureInstalled();
  await ensureInstrumenter();
  const low = [];
  for (const [name, parts] of Object.entries(SCORED)) {
    const all = sources(join('src', name)).filter(file => wanted(name, file));
    const fates = [];
    for (const { of, tests } of parts)
      fates.push(
        ...(await fatesOf(
          all.filter(file => of.test(file)),
          tests,
        )),
      );
    if (fates.length === 0) continue;
    const { lines, score } = scores(name, fates);
    console.log([...survivors(fates, readSource), ...lines].join('\n'));
    if (!(score >= LEAST)) low.push(name);
  }
  rmSync(folder, { recursive: true, force: true });
  if (low.length > 0)
    throw new Error(
      `npm run mutate: expected ${LEAST} % or more, got less in ${low.join(', ')}: ` +
        'write the test that a living mutant asks for, or delete what it shows to be idle.',
    );
});

function sources(under) {
  return readdirSync(join(root, under), { recursive: true })
    .map(file => join(under, file).replaceAll('\\', '/'))
    .filter(file => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .sort();
}

function testsIn(named) {
  if (named.endsWith('.ts')) return [named];
  const inside = readdirSync(join(root, named)).filter(file => file.endsWith('.test.ts'));
  return inside.sort().map(file => `${named}/${file}`);
}

function readSource(file) {
  return readFileSync(join(root, file), 'utf8');
}

async function ensureInstrumenter() {
  const [name, version] = INSTRUMENTER;
  const manifest = join(instrumenterAt, 'package.json');
  if (existsSync(manifest) && JSON.parse(readFileSync(manifest, 'utf8')).version === version) return;
  console.error(`Fetching ${name}@${version} ...`);
  mkdirSync(cache, { recursive: true });
  const args = ['install', '--prefix', cache, '--no-save', '--ignore-scripts', '--no-audit', '--no-fund'];
  const options = { cwd: cache, quiet: true, shell: process.platform === 'win32' };
  const { code, output } = await run('npm', [...args, `${name}@${version}`], options);
  if (code !== 0)
    throw new Error(
      `npm run mutate: expected ${name}@${version} to install, got exit ${code}:\n${output.trim()}\n` +
        'Check the network and run it again; nothing else of this project needs that package.',
    );
}

/** The mutants of the files, each with what became of it. */
async function fatesOf(files, tests) {
  if (files.length === 0) return [];
  const mutants = await plant(files);
  const told = await tryAll([...new Set(tests.flatMap(testsIn))]);
  for (const { file, failing = [], slow = [] } of told) {
    if (failing.length > 0)
      console.log(`${file}: left out, failing over sources with switches: ${failing.join(' · ')}`);
    if (slow.length > 0) console.log(`${file}: left out, too long for every mutant: ${slow.join(' · ')}`);
  }
  const ids = lines => new Set(lines.flat());
  const killed = ids(told.map(line => (line.end === 'killed' ? line.mutant : [])));
  const reached = ids(told.map(line => line.reached ?? []));
  const atLoad = ids(told.map(line => line.atLoad ?? []));
  return mutants.map(mutant => {
    const { id, fileName, status } = mutant;
    const untried = atLoad.has(id) ? 'at load' : 'unreached';
    const tried = killed.has(id) ? 'killed' : reached.has(id) ? 'lived' : untried;
    const file = fileName.slice(root.length + 1).replaceAll('\\', '/');
    return { ...mutant, file, fate: status === 'Ignored' ? 'excluded' : tried };
  });
}

/** Writes copies of the files that hold all their mutants, and says which mutants there are. */
async function plant(files) {
  const { Instrumenter } = await import(pathToFileURL(join(instrumenterAt, 'dist', 'src', 'instrumenter.js')).href);
  const quiet = () => {};
  const log = { debug: quiet, info: quiet, warn: console.error, error: console.error, isDebugEnabled: () => false };
  const given = files.map(file => ({ name: join(root, file), content: readSource(file), mutate: true }));
  const options = { plugins: null, excludedMutations: [], ignorers: [] };
  const { files: written, mutants } = await new Instrumenter(log).instrument(given, options);
  rmSync(folder, { recursive: true, force: true });
  for (const { name, content } of written) {
    const at = join(folder, name.slice(root.length));
    mkdirSync(dirname(at), { recursive: true });
    writeFileSync(at, content);
  }
  return mutants;
}

/** Runs until every test file is done; a mutant that never ends costs a process, and counts as killed. Returns what was told. */
async function tryAll(tests) {
  let told = [];
  const isDone = file => told.some(line => line.done && line.file === file);
  for (;;) {
    writeFileSync(tellings, told.map(line => `${JSON.stringify(line)}\n`).join(''));
    const { code, output } = await watched(tests.filter(file => !isDone(file)));
    told = readFileSync(tellings, 'utf8')
      .split('\n')
      .filter(Boolean)
      .map(line => JSON.parse(line));
    const last = told.at(-1) ?? {};
    if (code === 'stopped') told.push({ file: last.file, mutant: last.mutant, end: 'killed', by: 'time' });
    else if (last.stale !== undefined) told.pop();
    else if (tests.every(isDone)) return told;
    else throw new Error(`npm run mutate: expected the tests to pass without a mutant, got exit ${code}:\n${output}`);
  }
}

/** One Vitest, stopped where a mutant takes longer than it may. */
function watched(tests) {
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
  const args = [vitest, 'run', '--config', 'test/mutate/vitest.config.ts', '--root', root, '--reporter=dot'];
  const env = { ...process.env, KARTWRIGHT_MUTATE: JSON.stringify({ folder, tests }) };
  const child = spawn(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', text => {
      output += text;
    });
  let seen = '';
  let since = Date.now();
  let stopped = false;
  const look = setInterval(() => {
    const text = readFileSync(tellings, 'utf8');
    if (text !== seen) since = Date.now();
    seen = text;
    const { begun = Number.POSITIVE_INFINITY } = JSON.parse(text.trim().split('\n').at(-1) || '{}');
    if (Date.now() - since < begun) return;
    stopped = true;
    child.kill('SIGKILL');
  }, 1000);
  return new Promise(resolve => {
    child.on('close', code => {
      clearInterval(look);
      resolve({ code: stopped ? 'stopped' : (code ?? 1), output });
    });
  });
}
