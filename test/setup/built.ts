/** The journeys run what a user runs: dist/ as built from the sources as they are. */
import { ensureBuilt } from '../../scripts/ensure.mjs';

export async function setup(): Promise<void> {
  await ensureBuilt();
}
