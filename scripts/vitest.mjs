/** Runs groups of the tests and counts what happened, from Vitest's own JSON report. */
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { root } from './root.mjs';
import { run } from './run.mjs';

const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
/** Counts the rows of checks/ by how their value was obtained, and says so in a last line. */
const tally = '--reporter=./checks/tally-reporter.ts';
const report = join(root, 'node_modules', '.cache', 'kartwright', 'tests.json');

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */

/**
 * @param {Readonly<Record<string, (file: string) => boolean>>} groups Vitest project → which file (path from the root) is its
 * @returns {Promise<Record<string, Count>>} a group in which nothing ran counts as one failure: a check must have looked
 */
export async function runVitest(groups) {
  mkdirSync(join(report, '..'), { recursive: true });
  rmSync(report, { force: true });
  const { code } = await run(
    process.execPath,
    [
      vitest,
      'run',
      ...Object.keys(groups).flatMap(group => ['--project', group]),
      '--reporter=default',
      ...('checks' in groups ? [tally] : []),
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { cwd: root },
  );
  return countReport(existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : undefined, code, groups);
}

/** Runs checks/ alone; its last line is the count of rows. Returns Vitest's exit code. */
export async function runChecks() {
  const args = [vitest, 'run', '--project', 'checks', '--reporter=default', tally];
  return (await run(process.execPath, args, { cwd: root })).code;
}

/** Counts a report (undefined when Vitest wrote none), given Vitest's exit code. */
export function countReport(json, code, groups, base = root) {
  const files = (json?.testResults ?? []).map(result => ({
    ...result,
    path: relative(base, result.name).split(sep).join('/'),
  }));
  const counts = Object.fromEntries(
    Object.entries(groups).map(([group, isOurs]) => [group, countFiles(files.filter(file => isOurs(file.path)))]),
  );
  const first = Object.values(counts)[0];
  // Vitest saw something no test carries: an error between tests, a configuration that does not load.
  if (code !== 0 && first && Object.values(counts).every(count => count.failed === 0)) first.failed += 1;
  return counts;
}

function countFiles(files) {
  const count = { passed: 0, failed: 0, skipped: 0 };
  for (const file of files) {
    for (const test of file.assertionResults) {
      if (test.status === 'passed') count.passed += 1;
      else if (test.status === 'failed') count.failed += 1;
      else count.skipped += 1;
    }
    const told = file.assertionResults.some(test => test.status === 'failed');
    if (file.status === 'failed' && !told) count.failed += 1; // it did not even load, or its set-up failed
  }
  if (count.passed + count.failed + count.skipped === 0) count.failed = 1;
  return count;
}
