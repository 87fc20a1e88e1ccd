/** Counts the rows that ran and agreed, and says so in the last line. */
import { mkdirSync, writeFileSync } from 'node:fs';
import type { Reporter, TestModule } from 'vitest/node';
import { tallyLine } from './tally.ts';

const FOLDER = 'node_modules/.cache';
const FILE = `${FOLDER}/kartwright-checks.json`;

class TallyReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const rows = modules.flatMap(module =>
      [...module.children.allTests('passed')].flatMap(test => test.meta().row ?? []),
    );
    const line = tallyLine(rows);
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(FILE, `${JSON.stringify({ line, rows }, null, 1)}\n`);
    process.stdout.write(`\n${line}\n`);
  }
}

// Vitest loads a reporter by its default export only.
export { TallyReporter as default };
