/** `npm run checks`: our numbers against printed ones, alone. Ends with the count of rows by how each value was obtained. */
import { ensureInstalled } from './ensure.mjs';
import { toldAndDone } from './told.mjs';
import { runChecks } from './vitest.mjs';

await toldAndDone(async () => {
  await ensureInstalled();
  process.exitCode = await runChecks();
});
