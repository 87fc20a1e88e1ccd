/**
 * Text of bytes that come in pieces. UTF-8 and UTF-16; a byte that is no UTF-8 is read as Latin-1, whose first 256
 * characters have the same numbers, so a file of either reads right without asking which it is.
 * Source: RFC 3629, table in section 4; RFC 2781 (memory).
 */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be';

/** From the first bytes: a byte order mark, or the zero that every other byte of plain UTF-16 is. */
export function encodingOf(head: Uint8Array): Encoding {
  const [a, b] = head;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  const zeros = [0, 0];
  const look = Math.min(head.length, 256) & ~1;
  for (let n = 0; n < look; n++) if (head[n] === 0) zeros[n & 1] = (zeros[n & 1] as number) + 1;
  const [even = 0, odd = 0] = zeros;
  if (look >= 4 && odd > 0.4 * look && even === 0) return 'utf-16le';
  if (look >= 4 && even > 0.4 * look && odd === 0) return 'utf-16be';
  return 'utf-8';
}

const NOTHING = new Uint8Array(0);

export class TextOfBytes {
  readonly #encoding: Encoding;
  #rest: Uint8Array = NOTHING;
  #first = true;
  /** Bytes that were no UTF-8. */
  latin = 0;

  constructor(encoding: Encoding) {
    this.#encoding = encoding;
  }

  feed(bytes: Uint8Array): string {
    return this.#text(this.#rest.length === 0 ? bytes : joined(this.#rest, bytes), false);
  }
  end(): string {
    return this.#text(this.#rest, true);
  }

  #text(bytes: Uint8Array, last: boolean): string {
    if (this.#encoding === 'utf-8' && isPlain(bytes)) {
      this.#rest = NOTHING;
      if (bytes.length > 0) this.#first = false;
      return textOf(bytes);
    }
    const units = new Uint16Array(bytes.length);
    const [count, used] = this.#encoding === 'utf-8' ? this.#utf8(bytes, units, last) : this.#utf16(bytes, units);
    this.#rest = bytes.slice(used);
    if (count === 0) return '';
    const from = this.#first && units[0] === 0xfeff ? 1 : 0;
    this.#first = false;
    return textOf(units.subarray(from, count));
  }

  #utf16(bytes: Uint8Array, units: Uint16Array): readonly [number, number] {
    const [low, high] = this.#encoding === 'utf-16le' ? [0, 1] : [1, 0];
    const count = bytes.length >> 1;
    for (let n = 0; n < count; n++) units[n] = (bytes[2 * n + low] as number) | ((bytes[2 * n + high] as number) << 8);
    return [count, 2 * count];
  }

  #utf8(bytes: Uint8Array, units: Uint16Array, last: boolean): readonly [number, number] {
    let [count, at] = [0, 0];
    while (at < bytes.length) {
      const byte = bytes[at] as number;
      if (byte < 0x80) {
        units[count++] = byte;
        at++;
        continue;
      }
      const length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2;
      if (at + length > bytes.length && !last && hopeful(bytes, at)) break;
      const code = codeAt(bytes, at, length);
      if (code === undefined) {
        this.latin++;
        units[count++] = byte;
        at++;
        continue;
      }
      if (code > 0xffff) {
        units[count++] = 0xd7c0 + (code >> 10);
        units[count++] = 0xdc00 + (code & 0x3ff);
      } else units[count++] = code;
      at += length;
    }
    return [count, at];
  }
}

/** Whether what is there of a character at the end may still become one. */
function hopeful(bytes: Uint8Array, at: number): boolean {
  for (let n = at + 1; n < bytes.length; n++) if (((bytes[n] as number) & 0xc0) !== 0x80) return false;
  const byte = bytes[at] as number;
  return byte >= 0xc2 && byte <= 0xf4;
}

function codeAt(bytes: Uint8Array, at: number, length: number): number | undefined {
  const lead = bytes[at] as number;
  if (lead < 0xc2 || lead > 0xf4 || at + length > bytes.length) return undefined;
  let code = lead & (0xff >> (length + 1));
  for (let n = 1; n < length; n++) {
    const byte = bytes[at + n] as number;
    if ((byte & 0xc0) !== 0x80) return undefined;
    code = (code << 6) | (byte & 0x3f);
  }
  const least = [0, 0, 0x80, 0x800, 0x10000][length] as number;
  return code < least || code > 0x10ffff || (code >= 0xd800 && code < 0xe000) ? undefined : code;
}

/** ASCII and nothing else, as next to all of a log is. */
function isPlain(bytes: Uint8Array): boolean {
  for (let n = 0; n < bytes.length; n++) if ((bytes[n] as number) > 0x7f) return false;
  return true;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const all = new Uint8Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}

/** In pieces: a function takes only so many arguments. */
function textOf(units: Uint16Array | Uint8Array): string {
  const PIECE = 8192;
  let text = '';
  for (let at = 0; at < units.length; at += PIECE)
    text += String.fromCharCode.apply(null, units.subarray(at, at + PIECE) as unknown as number[]);
  return text;
}
