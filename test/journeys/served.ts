/** The built program, started as `npm start` starts it, on a book of its own in a folder that is removed afterwards. */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Kart } from '../../src/kart/index.ts';
import type { Step } from '../../src/prep/index.ts';
import { formatQuantity } from '../../src/quantity/index.ts';

export type Served = {
  readonly url: string;
  /** Where its book lies. */
  readonly folder: string;
  get<T>(path: string): Promise<T>;
  post(
    path: string,
    body: unknown,
  ): Promise<{ status: number; body: { problems?: { code: string; message: string }[] } }>;
  /** Ends the program at once, as a pulled plug does; its book stays. */
  kill(): Promise<void>;
  /** Starts it again at the same address, on the same book. */
  again(program?: string): Promise<void>;
  stop(): Promise<void>;
};

const START_MS = 60_000;

type Running = { readonly url: string; end(signal: 'SIGTERM' | 'SIGKILL'): Promise<void> };

type Start = { readonly program: string; readonly command: readonly string[]; readonly more: NodeJS.ProcessEnv };

async function start({ program, command, more }: Start, folder: string, port: string): Promise<Running> {
  const child = spawn(process.execPath, [program, ...command, '--port', port], {
    env: { ...process.env, KARTWRIGHT_DATA: folder, ...more },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>(done => child.once('exit', () => done()));
  const url = await new Promise<string>((found, failed) => {
    let said = '';
    const timer = setTimeout(
      () => failed(new Error(`the server did not say where it is within 60 s:\n${said}`)),
      START_MS,
    );
    const hear = (text: Buffer): void => {
      said += text.toString();
      const at = /http:\/\/[\w.[\]:]+\//.exec(said);
      if (!at) return;
      clearTimeout(timer);
      found(at[0]);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', code => failed(new Error(`the server ended with ${code}:\n${said}`)));
  });
  return {
    url,
    async end(signal) {
      child.kill(signal);
      await ended;
    },
  };
}

/** @param more of the environment */
export async function startBuilt(
  command: readonly string[] = ['start'],
  program = 'dist/cli.js',
  more: NodeJS.ProcessEnv = {},
): Promise<Served> {
  const folder = await mkdtemp(join(tmpdir(), 'kartwright-'));
  let running = await start({ program, command, more }, folder, '0');
  const { url } = running;
  return {
    url,
    folder,
    get: async path => (await fetch(new URL(path, url))).json(),
    async post(path, body) {
      const answer = await fetch(new URL(path, url), {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
      return { status: answer.status, body: await answer.json() };
    },
    kill: () => running.end('SIGKILL'),
    async again(other = program) {
      running = await start({ program: other, command, more }, folder, new URL(url).port);
    },
    async stop() {
      await running.end('SIGTERM');
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** A reading that holds: the target, else an end of what is allowed, else one that can be. Undefined when none is asked. */
export function goodReading(step: Step, kart: Kart): string | undefined {
  if (step.unit === null) return undefined;
  const shown = step.joint === null ? step.target : null;
  const reads = shown ?? step.tolerance?.min ?? step.tolerance?.max;
  // The instrument shows value and unit; the target also says in words which way it is counted.
  if (reads) return formatQuantity(reads.si, reads.unit);
  return step.item === null ? undefined : kart.items[step.item]?.measure?.plausible?.min.text;
}

/** What doing a step well writes, said independently of the page. */
export function payloadOf(step: Step, kart: Kart): Record<string, unknown> {
  const text = step.action === 'second-look' ? undefined : goodReading(step, kart);
  const reading = text === undefined ? {} : { reading: text };
  if (step.action === 'take-off') return { kind: 'taken off', part: step.part };
  if (step.action === 'refit') return { kind: 'fitted', part: step.part, ...(step.fresh ? { fresh: true } : {}) };
  if (step.action === 'posture') return { kind: 'put on', posture: step.posture };
  if (step.action === 'mend') return { kind: 'mended', found: step.mends, how: 'made good as its kind asks' };
  if (step.action === 'second-look') return { kind: 'checked', item: step.item, result: 'pass', secondLook: true };
  if (step.joint !== null) return { kind: 'made', joint: step.joint, ...reading };
  return { kind: 'checked', item: step.item, result: 'pass', ...reading };
}
