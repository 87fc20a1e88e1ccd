/**
 * Runs models of the MiniZinc language through Chuffed, both from the package `minizinc`, which is made for a browser's
 * worker: each model gets a worker of its own, for what one leaves behind spoils the next, but all share the code compiled
 * once, which costs most. In, as JSON on standard input: [{ model, data, milliseconds }]. Out, a line of JSON each:
 * { status, solution }.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compileFunction } from 'node:vm';

const file = end => fileURLToPath(import.meta.resolve(`minizinc/minizinc${end}`));
const path = file('-worker.js');
const compiled = WebAssembly.compile(readFileSync(file('.wasm')));
const instantiate = async (_, imports) => ({ instance: await WebAssembly.instantiate(await compiled, imports) });
/** What the worker takes from its surroundings. */
const given = ['require', '__filename', '__dirname', 'WebAssembly', 'addEventListener', 'postMessage'];
const worker = compileFunction(readFileSync(path, 'utf8'), given, { filename: path });

for (const { model, data, milliseconds } of JSON.parse(readFileSync(0, 'utf8'))) {
  const { tell, until } = started();
  tell({ wasmURL: file('.wasm'), dataURL: file('.data') });
  await until('ready');
  const files = { 'asked.mzn': model, 'asked.json': JSON.stringify(data) };
  const args = ['--solver', 'chuffed', '-f', '--time-limit', `${milliseconds}`, '--output-mode', 'json'];
  tell({ jsonStream: true, files, args: [...args, ...Object.keys(files)] });
  const all = await until('exit');
  const wrong = all.find(({ type }) => type === 'error' || type === 'stderr');
  if (wrong) throw new Error(`chuffed: the model must be readable, got ${JSON.stringify(wrong)}`);
  const status = all.findLast(({ type }) => type === 'status')?.status ?? 'UNKNOWN';
  const solution = all.findLast(({ type }) => type === 'solution')?.output.json;
  console.log(JSON.stringify({ status, solution }));
}

function started() {
  const told = [];
  let wake = () => {};
  let tell = () => {};
  const listen = (_, listener) => {
    tell = data => listener({ data });
  };
  const post = message => {
    told.push(message);
    wake();
  };
  const assembly = Object.create(WebAssembly, { instantiate: { value: instantiate } });
  worker(createRequire(import.meta.url), path, dirname(path), assembly, listen, post);
  return { tell, until };

  /** All that was said up to a message of this type. */
  async function until(type) {
    while (!told.some(message => message.type === type))
      await new Promise(resolve => {
        wake = resolve;
      });
    return told.splice(0);
  }
}
