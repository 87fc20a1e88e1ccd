/** How long the command line takes to be there, against Node doing nothing. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { packageRoot } from '../src/host/index.ts';
import { type Figure, median, ms, times } from './measure.ts';

export async function starts(): Promise<readonly Figure[]> {
  const cli = join(packageRoot(), 'dist', 'cli.js');
  const node = (...args: string[]) => {
    const { status } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(`bench: node ${args.join(' ')} must end with exit 0, got ${status}`);
  };
  const bare = await median(11, () => node('-e', '0'));
  const version = await median(11, () => node(cli, '--version'));
  return [
    { what: 'node -e 0', value: ms(bare) },
    { what: 'kartwright --version', value: ms(version), ratio: times(version, bare, 'node -e 0') },
  ];
}
