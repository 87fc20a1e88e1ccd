import fc from 'fast-check';
import { expect, test } from 'vitest';
import { encodingOf, TextOfBytes } from './text-of-bytes.ts';

/** Letters of one to four bytes, without halves of letters. */
const whole = fc
  .string({ unit: 'binary' })
  .map(text =>
    new TextDecoder('utf-8', { ignoreBOM: true }).decode(new TextEncoder().encode(text)).replace(/^\ufeff/, ''),
  );

test('text of any letters is the same, wherever its bytes are cut', () => {
  fc.assert(
    fc.property(whole, fc.array(fc.nat(40)), (text, cuts) => {
      const bytes = new TextEncoder().encode(text);
      const reader = new TextOfBytes('utf-8');
      let [got, from] = ['', 0];
      for (const to of [...cuts.toSorted((a, b) => a - b), bytes.length]) {
        got += reader.feed(bytes.subarray(from, Math.max(from, to)));
        from = Math.max(from, Math.min(to, bytes.length));
      }
      expect(got + reader.end()).toBe(text);
      expect(reader.latin).toBe(0);
    }),
  );
});

test('bytes of any kind are the same text, wherever they are cut', () => {
  fc.assert(
    fc.property(
      fc.uint8Array(),
      fc.nat(40),
      fc.constantFrom('utf-8', 'utf-16le', 'utf-16be'),
      (bytes, cut, encoding) => {
        const [once, twice] = [new TextOfBytes(encoding), new TextOfBytes(encoding)];
        const all = once.feed(bytes) + once.end();
        expect(twice.feed(bytes.subarray(0, cut)) + twice.feed(bytes.subarray(cut)) + twice.end()).toBe(all);
        expect(twice.latin).toBe(once.latin);
      },
    ),
  );
});

test('a byte that is no UTF-8 is the letter of that number', () => {
  const reader = new TextOfBytes('utf-8');
  expect(reader.feed(Uint8Array.of(0x4c, 0xe4, 0x6e, 0x67, 0x65, 0xc3, 0xa4, 0xff)) + reader.end()).toBe('Längeäÿ');
  expect(reader.latin).toBe(2);
});

test('an encoding is told by its mark, or by the zeros in it', () => {
  expect(encodingOf(Uint8Array.of(0xff, 0xfe, 0x41, 0))).toBe('utf-16le');
  expect(encodingOf(Uint8Array.of(0, 0x41, 0, 0x42, 0, 0x43))).toBe('utf-16be');
  expect(encodingOf(Uint8Array.of(0x41, 0x42, 0x43, 0x44))).toBe('utf-8');
  expect(encodingOf(new Uint8Array(0))).toBe('utf-8');
});
