import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the package: the nearest one upwards with a package.json. A bundler moves this module, so it is looked for. */
export function packageRoot(from: string = import.meta.url): string {
  let folder = dirname(fileURLToPath(from));
  while (!existsSync(join(folder, 'package.json'))) {
    const up = dirname(folder);
    if (up === folder) throw new Error(`packageRoot: a folder above ${fileURLToPath(from)} must hold package.json`);
    folder = up;
  }
  return folder;
}
