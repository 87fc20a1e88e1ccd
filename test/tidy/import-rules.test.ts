import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from './files.ts';

/** Each file breaks the rule named; together they are a small project in a folder of its own. */
const PLANTED: readonly { rule: string; file: string; imports: string }[] = [
  { rule: 'risk-imports-down-only', file: 'src/risk/wish.ts', imports: '../prep/index.ts' },
  { rule: 'risk-imports-down-only', file: 'src/risk/lap.ts', imports: '../laps/index.ts' },
  { rule: 'quantity-imports-down-only', file: 'src/quantity/up.ts', imports: '../kart/index.ts' },
  { rule: 'core-is-pure', file: 'src/book/disk.ts', imports: 'node:fs' },
  { rule: 'core-uses-pure-packages', file: 'src/kart/server.ts', imports: 'hono' },
  { rule: 'front-doors', file: 'src/app/window.ts', imports: '../prep/plan.ts' },
  { rule: 'stores-know-ports-and-book', file: 'src/store/sqlite/decides.ts', imports: '../../risk/index.ts' },
  { rule: 'stores-apart', file: 'src/store/sqlite/leans.ts', imports: '../memory/index.ts' },
  { rule: 'only-main-wires', file: 'src/server/opens.ts', imports: '../store/memory/index.ts' },
  { rule: 'host-knows-ports-and-readers', file: 'src/host/keeps.ts', imports: '../store/memory/index.ts' },
  { rule: 'faces-apart', file: 'src/web/calls.ts', imports: '../server/index.ts' },
  { rule: 'core-knows-no-face', file: 'src/app/shows.ts', imports: '../web/index.ts' },
  { rule: 'page-runs-in-a-browser', file: 'src/web/reads.ts', imports: 'node:path' },
  { rule: 'found', file: 'src/laps/lost.ts', imports: './nowhere.ts' },
  { rule: 'product-without-test-tools', file: 'src/life/dice.ts', imports: 'fast-check' },
];
const DOORS = [
  'quantity',
  'numbers',
  'kart',
  'book',
  'life',
  'risk',
  'prep',
  'laps',
  'app',
  'store/memory',
  'server',
  'web',
  'host',
];

type Cruise = {
  summary: { totalCruised: number; violations: readonly { from: string; rule: { name: string } }[] };
};

const folder = mkdtempSync(join(tmpdir(), 'kartwright-rules-'));
let cruise: Cruise;

function put(file: string, text: string): void {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
}

beforeAll(() => {
  for (const door of DOORS) put(`src/${door}/index.ts`, 'export const door = 1;\n');
  put('src/prep/plan.ts', 'export const plan = 1;\n');
  put('src/life/a.ts', "import { b } from './b.ts';\nexport const a = () => b;\n");
  put('src/life/b.ts', "import { a } from './a.ts';\nexport const b = () => a;\n");
  put('src/prep/fine.ts', "import type { door } from '../risk/index.ts';\nexport type Fine = typeof door;\n");
  for (const { file, imports } of PLANTED)
    put(file, `import type * as it from '${imports}';\nexport type It = typeof it;\n`);
  for (const name of ['node_modules', 'package.json', 'tsconfig.json', '.dependency-cruiser.cjs']) {
    execFileSync('ln', ['-s', join(root, name), join(folder, name)]);
  }
  const tool = join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
  const done = spawnSync(
    process.execPath,
    [tool, '--config', '.dependency-cruiser.cjs', '--output-type', 'json', 'src'],
    {
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 64 * 1024 * 1024,
    },
  );
  cruise = JSON.parse(done.stdout) as Cruise;
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const caught = (file: string) => cruise.summary.violations.filter(v => v.from === file).map(v => v.rule.name);

describe('the import rules', () => {
  test('look at every planted file', () => {
    expect(cruise.summary.totalCruised).toBeGreaterThan(PLANTED.length + DOORS.length);
  });

  test.each(PLANTED)('$rule catches $file importing $imports, even for a type alone', ({ rule, file }) => {
    expect(caught(file)).toContain(rule);
  });

  test('no-circles catches two files that import each other', () => {
    expect([...caught('src/life/a.ts'), ...caught('src/life/b.ts')]).toContain('no-circles');
  });

  test('let pass what is allowed', () => expect(caught('src/prep/fine.ts')).toEqual([]));

  test('every rule has a planted breach here', () => {
    const require = createRequire(import.meta.url);
    const { forbidden } = require(join(root, '.dependency-cruiser.cjs')) as { forbidden: readonly { name: string }[] };
    const proven = new Set([...PLANTED.map(p => p.rule), 'no-circles']);
    // The layer rules come from one table and one template; two of them stand for all.
    const open = forbidden
      .map(rule => rule.name)
      .filter(name => !proven.has(name) && !name.endsWith('-imports-down-only'));
    expect(open).toEqual([]);
  });
});
