import jsqr from 'jsqr';
import { expect, test } from 'vitest';
import { labelUrl } from './labels.ts';
import { qrOf } from './qr.ts';

/** Reads the drawing back with a reader that is not ours: eight dots a module, black on white. */
function readBack({ size, path }: ReturnType<typeof qrOf>): string | undefined {
  const dots = 8;
  const side = size * dots;
  const picture = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y, wide] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let row = Number(y) * dots; row < (Number(y) + 1) * dots; row++)
      for (let col = Number(x) * dots; col < (Number(x) + Number(wide)) * dots; col++)
        picture.fill(0, (row * side + col) * 4, (row * side + col) * 4 + 3);
  const read = (jsqr as unknown as { default?: typeof jsqr }).default ?? jsqr;
  return read(picture, side, side)?.data;
}

test('another reader finds in the drawing what was put in', () => {
  for (const text of [
    'http://192.168.1.20:50271/#/part/41%2Frear%20hub%20left',
    labelUrl('https://kart.example/', 'part', 'Ümläut', 'brake push rod'),
    'x'.repeat(250),
  ])
    expect(readBack(qrOf(text))).toBe(text);
});

test('a code is as small as its text allows, with four light modules around', () => {
  expect(qrOf('A').size).toBe(21 + 8); // version 1 is 21 modules wide, ISO/IEC 18004
  expect(qrOf('A').path).toMatch(/^M4 4h7v1h-7z/); // the finder's upper edge is 7 dark modules
});
