/** A snapshot in a file beside the book. Its last line is the SHA-256 of all before, so that a torn or changed one reads as none. */
import { createHash } from 'node:crypto';
import { open, readFile, rename, rm } from 'node:fs/promises';
import type { Snapshots } from '../app/index.ts';

/** Written at once, characters: between two such bites others have their turn. */
const BITE = 1 << 18;

export function fileSnapshots(path: string): Snapshots {
  const part = `${path}.part`;
  return {
    async read() {
      const bytes = await readFile(path).catch(() => undefined);
      const end = bytes?.lastIndexOf(10) ?? -1;
      if (bytes === undefined || end < 0) return undefined;
      const [body, seal] = [bytes.subarray(0, end), bytes.subarray(end + 1).toString('latin1')];
      if (createHash('sha256').update(body).digest('hex') !== seal) return undefined;
      return body.toString('utf8').split('\n');
    },
    async write(lines) {
      const file = await open(part, 'w', 0o600);
      try {
        const hash = createHash('sha256');
        const put = async (text: string): Promise<void> => {
          hash.update(text);
          await file.writeFile(text);
        };
        let waiting = '';
        let between = '';
        for (const line of lines) {
          waiting += between + line;
          between = '\n';
          if (waiting.length < BITE) continue;
          await put(waiting);
          waiting = '';
        }
        await put(waiting);
        await file.writeFile(`\n${hash.digest('hex')}`);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(part, path);
    },
    remove: () => rm(path, { force: true }),
  };
}
