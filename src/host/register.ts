/** The register of paired devices as a file beside the book, for its owner's eyes only. */
import { randomBytes, randomInt } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { NOBODY, type Register, type RegisterState, registerShape } from '../app/index.ts';

/** How long one program waits for another that is changing it; a lock older than that was left by one that was killed. */
const LOCK_MS = 5000;

export function fileRegister(folder: string): Register {
  const file = join(folder, 'devices.json');
  let known: { readonly mark: string; readonly state: RegisterState } | undefined;

  const read = (): RegisterState => {
    const mark = markOf(file);
    if (mark === undefined) return NOBODY;
    if (known?.mark !== mark) known = { mark, state: parsed(file) };
    return known.state;
  };
  return {
    read: async () => read(),
    async change(step) {
      const unlock = await locked(`${file}.lock`);
      try {
        known = undefined; // what another program wrote within one tick of the file's clock counts too
        const now = read();
        const { state, give } = step(now);
        if (state !== now) write(file, state);
        return give;
      } finally {
        unlock();
      }
    },
  };
}

/** 256 bits: nothing to guess. */
export const newToken = (): string => randomBytes(32).toString('base64url');
export const newDeviceId = (): string => randomBytes(4).toString('hex');

/** Crockford's base 32 has no I, L, O and U, so that a code is read out loud and typed with gloves on. 40 bits. */
const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
export function newCode(): string {
  const signs = Array.from({ length: 8 }, () => SIGNS[randomInt(SIGNS.length)]).join('');
  return `${signs.slice(0, 4)}-${signs.slice(4)}`;
}

function parsed(file: string): RegisterState {
  let raw: unknown;
  try {
    raw = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    raw = undefined;
  }
  const found = registerShape.safeParse(raw);
  if (found.success) return found.data;
  const [issue] = found.error.issues;
  throw Object.assign(
    new Error(
      `${file}: expected the register of devices, got ${issue?.path.join('.') || 'the file'}: ${issue?.message}`,
    ),
    { remedy: 'Move the file away, start again, and pair the devices anew; nobody comes in until then.' },
  );
}

/** Whole or not at all, whatever happens while it is written. */
function write(file: string, state: RegisterState): void {
  const part = `${file}.part`;
  const handle = openSync(part, 'w', 0o600);
  try {
    writeSync(handle, `${JSON.stringify(state, undefined, 2)}\n`);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(part, file);
}

function markOf(file: string): string | undefined {
  const found = statSync(file, { bigint: true, throwIfNoEntry: false });
  return found && `${found.ino} ${found.mtimeNs} ${found.size}`;
}

async function locked(lock: string): Promise<() => void> {
  const from = Date.now();
  for (;;) {
    try {
      closeSync(openSync(lock, 'wx', 0o600));
      return () => rmSync(lock, { force: true });
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      if (Date.now() - from > LOCK_MS) rmSync(lock, { force: true });
      await wait(20);
    }
  }
}
