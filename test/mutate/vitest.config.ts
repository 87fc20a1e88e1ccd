/** Runs tests over sources that carry every mutant at once, each behind a switch; scripts/mutate.mjs writes those sources. */
import { existsSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { work } from './work.ts';

const root = process.cwd();

/** The files in the order of the list: what a quick test kills, a slow one need not. */
class AsListed extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number =>
      work.tests.indexOf(relative(root, moduleId).split(sep).join('/'));
    return files.toSorted((a, b) => place(a) - place(b));
  }
}

export default defineConfig({
  plugins: [
    {
      name: 'mutants',
      enforce: 'pre',
      load(id) {
        const mutated = join(work.folder, 'src', relative(join(root, 'src'), id));
        return id.startsWith(join(root, 'src')) && existsSync(mutated) ? readFileSync(mutated, 'utf8') : undefined;
      },
    },
  ],
  test: {
    include: [...work.tests],
    runner: './test/mutate/runner.ts',
    setupFiles: ['./test/mutate/setup.ts'],
    testTimeout: 60_000,
    pool: 'threads', // a thread dies with its process: that is how an endless loop ends
    maxWorkers: 1,
    sequence: { sequencer: AsListed },
  },
});
