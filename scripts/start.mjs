/** `npm start`: installs what is missing, builds what is stale, then starts the built program in this same process. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { root } from './root.mjs';
import { toldAndDone } from './told.mjs';

await toldAndDone(async () => {
  await ensureInstalled();
  await ensureBuilt();
  // The same process, so a signal reaches the server itself and Ctrl-C needs no passing on.
  const cli = join(root, 'dist', 'cli.js');
  process.argv = [process.execPath, cli, 'start', ...process.argv.slice(2)];
  await import(pathToFileURL(cli).href);
});
