/** SHA-256 of a file by whose hash it is kept; the page stays alive meanwhile. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** So much is hashed between two turns of a page: some ten milliseconds of a phone. */
const BITE = 256_000; // bytes

/** @param subtle the browser's own, which works beside the page; missing where the page came over plain HTTP */
export async function hashOf(
  bytes: Uint8Array,
  subtle: Pick<SubtleCrypto, 'digest'> | undefined = globalThis.crypto?.subtle,
): Promise<string> {
  if (subtle) return bytesToHex(new Uint8Array(await subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>)));
  const hasher = sha256.create();
  for (let from = 0; from < bytes.length; from += BITE) {
    if (from > 0) await new Promise(done => setTimeout(done));
    hasher.update(bytes.subarray(from, from + BITE));
  }
  return bytesToHex(hasher.digest());
}
