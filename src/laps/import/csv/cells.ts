/** Cells of a line. Quotes as in RFC 4180: a quoted cell may hold the separator, and "" is one quote (memory). */
export const SEPARATORS = [';', '\t', ',', '|'] as const;
export type Separator = (typeof SEPARATORS)[number];

export function cellsOf(line: string, separator: Separator): string[] {
  if (!line.includes('"')) return line.split(separator);
  const cells: string[] = [];
  for (let at = 0; at <= line.length; ) {
    const quoted = /^ *"((?:[^"]|"")*)" */.exec(line.slice(at));
    const next = quoted ? at + quoted[0].length : line.indexOf(separator, at);
    const end = next < 0 ? line.length : next;
    cells.push(quoted ? (quoted[1] ?? '').replaceAll('""', '"') : line.slice(at, end));
    if (end >= line.length) break;
    // What stands behind a closing quote belongs to no cell; the next one begins after the separator.
    at = line.indexOf(separator, end) + 1;
    if (at === 0) break;
  }
  return cells;
}

/** A number written with this decimal mark and no other; NaN for everything else. */
export function numberOf(cell: string | undefined, decimal: '.' | ','): number {
  if (cell === undefined || cell === '') return Number.NaN;
  if (decimal === '.') return NUMBER.test(cell) ? Number(cell) : Number.NaN;
  return cell.includes('.') ? Number.NaN : numberOf(cell.replace(',', '.'), '.');
}
const NUMBER = /^\s*[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?\s*$/;
