/** A text as a QR code (ISO/IEC 18004), drawn as one path that any face can put into an SVG. */
import qrcode from 'qrcode-generator';

export type QrCode = {
  /** Modules along a side, the quiet zone with them. */
  readonly size: number;
  /** Filled black on white, one unit a module. */
  readonly path: string;
};

/** Around the code, ISO/IEC 18004 6.3.8: four modules (memory). */
const QUIET = 4;

/** Level M: 15 in 100 of it may be smeared. As small as the text allows. */
export function qrOf(text: string): QrCode {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  let path = '';
  for (let row = 0; row < count; row++)
    for (let col = 0; col < count; ) {
      let end = col;
      while (end < count && code.isDark(row, end)) end++;
      if (end > col) path += `M${col + QUIET} ${row + QUIET}h${end - col}v1h${col - end}z`;
      col = Math.max(end, col + 1);
    }
  return { size: count + 2 * QUIET, path };
}
