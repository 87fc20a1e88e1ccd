/** Where this project lies, and whether this Node can run it. Imported first by every script; needs no package. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json, found by walking up: a script may be called from anywhere. */
export const root = (() => {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    if (existsSync(join(at, 'package.json'))) return at;
    if (at === dirname(at)) throw new Error('root: no package.json found above scripts/; clone the repository again');
  }
})();

const OLDEST = [20, 19];

/** True when `version` ('20.19.0') is one the packages of this project run on. */
export function nodeIsNewEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > OLDEST[0] || (major === OLDEST[0] && minor >= OLDEST[1]);
}

if (!nodeIsNewEnough(process.versions.node)) {
  console.error(
    `Kartwright needs Node ${OLDEST.join('.')} or newer (24 is recommended) and this is Node ${process.versions.node}: install a newer one from nodejs.org and run the same command again.`,
  );
  process.exit(1);
}
