/** The built program as a person in a terminal starts it: words in, exit code and text out. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';

const CLI = join(import.meta.dirname, '../../dist/cli.js');
export type Run = { readonly code: number | null; readonly out: string; readonly err: string };

/** Runs in `folder`, on the book in `data` below it, with `input` on standard input and `more` in the environment. */
export function runCli(
  folder: string,
  words: readonly string[],
  {
    input = '',
    data = 'book',
    more = {},
  }: Readonly<{ input?: string; data?: string; more?: Record<string, string> }> = {},
): Promise<Run> {
  return new Promise(done => {
    const env = { ...process.env, KARTWRIGHT_DATA: join(folder, data), KARTWRIGHT_BY: 'A. Bench', TZ: 'UTC', ...more };
    const child = spawn(process.execPath, [CLI, ...words], { cwd: folder, env });
    let [out, err] = ['', ''];
    child.stdout.on('data', (text: Buffer) => {
      out += text.toString();
    });
    child.stderr.on('data', (text: Buffer) => {
      err += text.toString();
    });
    child.stdin.on('error', () => undefined); // a command that reads nothing closes it early
    child.stdin.end(input);
    child.once('close', code => done({ code, out, err }));
  });
}
