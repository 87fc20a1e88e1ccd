/** Optima proven by a general solver that shares nothing with ours: what no plan of ours may be better than. */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A model of this folder with its data. */
export type Asked = { readonly model: 'plain' | 'kart' | 'removal'; readonly data: Readonly<Record<string, unknown>> };
/** What the solver says of it: OPTIMAL_SOLUTION, SATISFIED when time ran out, UNSATISFIABLE; and the best it found. */
export type Proof = { readonly status: string; readonly solution?: Readonly<Record<string, unknown>> };

const MILLISECONDS = 20_000;
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** Is the package of the solver there? It is for development only. */
export const canProve = (): boolean => existsSync(here('../../node_modules/minizinc/dist/minizinc.wasm'));

/** One answer for each, in order. @throws Error with what the solver said, when it could not read a model */
export async function prove(asked: readonly Asked[]): Promise<readonly Proof[]> {
  const input = asked.map(({ model, data }) => ({
    model: readFileSync(here(`${model}.mzn`), 'utf8'),
    data,
    milliseconds: MILLISECONDS,
  }));
  const child = spawn(process.execPath, [here('chuffed.mjs')], { stdio: 'pipe' });
  let [said, wrong] = ['', ''];
  child.stdout.on('data', (text: Buffer) => {
    said += text;
  });
  child.stderr.on('data', (text: Buffer) => {
    wrong += text;
  });
  child.stdin.end(JSON.stringify(input));
  const code = await new Promise(resolve => child.on('close', resolve));
  if (code !== 0) throw new Error(`prove: the solver must end with 0, got ${code}: ${wrong.slice(0, 2000)}`);
  return said
    .trim()
    .split('\n')
    .map(line => JSON.parse(line) as Proof);
}
