/** `npm run faults`: every fault of test/faults tried in full, which takes a while; prints what was tried. `npm test` tries a little of each. */
import { join } from 'node:path';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { toldAndDone } from './told.mjs';

await toldAndDone(async () => {
  await ensureInstalled();
  await ensureBuilt(); // what is killed is the built server
  process.env.KARTWRIGHT_FAULTS = 'long';
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
  const tried =
    process.argv.length > 2 ? process.argv.slice(2) : ['test/faults', 'test/journeys/killed', 'src/app/exchange'];
  const args = [
    'run',
    '--project',
    'faults',
    '--project',
    'journeys',
    '--project',
    'unit',
    '--reporter=verbose',
    '--no-file-parallelism',
    ...tried,
  ];
  const { code } = await run(process.execPath, [vitest, ...args], { cwd: root });
  if (code !== 0) throw new Error(`A fault got through: exit ${code}.`);
});
