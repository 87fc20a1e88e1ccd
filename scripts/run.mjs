/** Runs another program. */
import { spawn } from 'node:child_process';

/**
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, quiet?: boolean, shell?: boolean }} options quiet: keep the output instead of showing it
 * @returns {Promise<{ code: number, output: string }>} 127 when the program is not there
 */
export function run(command, args, { cwd, env, quiet = false, shell = false } = {}) {
  return new Promise(resolve => {
    const child = spawn(command, args, { cwd, env, shell, stdio: quiet ? ['ignore', 'pipe', 'pipe'] : 'inherit' });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream?.setEncoding('utf8').on('data', text => {
        output += text;
      });
    }
    child.on('error', error => resolve({ code: 127, output: `${output}${error.message}\n` }));
    child.on('close', (code, signal) =>
      resolve({ code: code ?? 1, output: signal ? `${output}${command} was stopped by ${signal}\n` : output }),
    );
  });
}
