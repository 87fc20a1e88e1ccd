/** A code for a phone's camera, black on white whatever the terminal's colours: two rows of squares to a line of text. */
import qrcode from 'qrcode-generator';

/** Squares of quiet zone around it. Source: ISO/IEC 18004:2015, 5.3.8. */
const QUIET = 4;

export function qrText(text: string): string {
  const qr = qrcode(0, 'M');
  qr.addData(text);
  qr.make();
  const size = qr.getModuleCount();
  const dark = (row: number, column: number): boolean =>
    row >= 0 && column >= 0 && row < size && column < size && qr.isDark(row, column);
  const lines: string[] = [];
  for (let row = -QUIET; row < size + QUIET; row += 2) {
    let line = '';
    for (let column = -QUIET; column < size + QUIET; column++)
      line += BLOCKS[Number(dark(row, column)) + 2 * Number(dark(row + 1, column))];
    lines.push(`\u001b[30;107m${line}\u001b[0m`);
  }
  return `${lines.join('\n')}\n`;
}
const BLOCKS = [' ', '▀', '▄', '█'];
