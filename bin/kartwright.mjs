#!/usr/bin/env node
/** `npx kartwright ...`: builds what is stale, then runs the command line. */
const { ensureBuilt } = await import('../scripts/ensure.mjs');
try {
  await ensureBuilt();
} catch (error) {
  console.error(`kartwright: ${error instanceof Error ? error.message : error}`);
  process.exit(3);
}
await import('../dist/cli.js');
