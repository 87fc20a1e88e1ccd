/**
 * Files in one, as every system's own tools unpack them.
 * Source: IEEE Std 1003.1-2017 (POSIX), pax, "ustar Interchange Format": blocks of 512 bytes, a header before each file, two empty blocks at the end.
 */
import { utf8ToBytes } from '@noble/hashes/utils.js';

export type OpenFile = { readonly path: string; readonly bytes: Uint8Array<ArrayBuffer> };

const BLOCK = 512;

/** @param path in ASCII, at most 100 letters @param at when it was written */
export async function* tarOf(files: AsyncIterable<OpenFile>, at: Date): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  for await (const { path, bytes } of files) {
    yield header(path, bytes.length, at);
    yield bytes;
    yield new Uint8Array((BLOCK - (bytes.length % BLOCK)) % BLOCK);
  }
  yield new Uint8Array(2 * BLOCK);
}

function header(path: string, size: number, at: Date): Uint8Array<ArrayBuffer> {
  if (!/^[ -~]{1,100}$/.test(path))
    throw new RangeError(`tarOf: path must be 1 to 100 letters of ASCII, got "${path}"`);
  const block = new Uint8Array(BLOCK);
  const put = (text: string, from: number): void => block.set(utf8ToBytes(text), from);
  const octal = (value: number, digits: number): string => value.toString(8).padStart(digits, '0');
  put(path, 0);
  put(`${octal(0o644, 7)}\0${octal(0, 7)}\0${octal(0, 7)}\0`, 100); // mode, owner, group
  put(`${octal(size, 11)}\0${octal(Math.floor(at.getTime() / 1000), 11)}\0`, 124);
  put('        ', 148); // the sum is taken with blanks in its own place
  put('0ustar\x0000', 156); // an ordinary file; magic and version
  put(
    `${octal(
      block.reduce((sum, byte) => sum + byte, 0),
      6,
    )}\0 `,
    148,
  );
  return block;
}
