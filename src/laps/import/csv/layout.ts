/** How a file of separated values is to be read: proposed from its first lines, corrected by a person, remembered by its header. */
import { clockOf, momentOf } from '../clock.ts';
import { cellsOf, numberOf, SEPARATORS, type Separator } from './cells.ts';
import { isUnit, meaningOf, plain, type Role } from './words.ts';

export type CsvColumn = {
  readonly heading: string; // as the file writes it
  readonly unit?: string; // of `unitsFor(role)`; without one: time by its steps, speed by the places, °, rpm, m
};
export type CsvLayout = {
  readonly separator: Separator;
  readonly decimal: '.' | ',';
  readonly columns: { readonly [role in Role]?: CsvColumn };
  /** The same for every file with the same header line: what a choice is remembered by. */
  readonly signature: string;
  readonly headings: readonly string[];
  /** Headings that no role was found for. */
  readonly unread: readonly string[];
  /** What a person had better look at. */
  readonly doubts: readonly string[];
};

export type Proposed = { readonly layout: CsvLayout; readonly header: number }; // index of the header line

/** @param lines the first of the file; undefined when none of them could be a header */
export function proposeLayout(lines: readonly string[]): Proposed | undefined {
  const candidates = lines.flatMap((line, header) =>
    SEPARATORS.map(separator => ({
      header,
      separator,
      score: scoreOf(cellsOf(line, separator), lines[header + 1], separator),
    })),
  );
  const best = candidates.reduce<(typeof candidates)[number] | undefined>(
    (top, each) => (each.score > (top?.score ?? 0) ? each : top),
    undefined,
  );
  return best && { header: best.header, layout: layoutOf(lines, best.header, best.separator) };
}

/** Three cells or more that are no numbers; each role that is named makes it likelier, and numbers below it too. */
function scoreOf(cells: readonly string[], below: string | undefined, separator: Separator): number {
  if (cells.length < 3 || cells.some(cell => /^[\s"]*[-+\d]/.test(cell))) return 0;
  const roles = new Set(cells.flatMap(cell => meaningOf(cell)?.role ?? []));
  const numbers = below !== undefined && cellsOf(below, separator).length === cells.length ? 1 : 0;
  return 10 * roles.size + numbers + (numbers > 0 ? cells.length / 1000 : 0);
}

function layoutOf(lines: readonly string[], header: number, separator: Separator): CsvLayout {
  const headings = cellsOf(lines[header] ?? '', separator).map(cell => cell.trim());
  const below = cellsOf(lines[header + 1] ?? '', separator);
  const units = isUnits(below);
  const columns: { [role in Role]?: CsvColumn } = {};
  const unread: string[] = [];
  const doubts: string[] = [];
  headings.forEach((heading, n) => {
    const meaning = meaningOf(units ? `${heading} [${bare(below[n])}]` : heading) ?? meaningOf(heading);
    const taken = meaning && columns[meaning.role];
    if (taken) doubts.push(`Both "${taken.heading}" and "${heading}" say ${meaning.role}: the first is read.`);
    if (meaning === undefined || taken) {
      if (heading !== '') unread.push(heading);
    } else columns[meaning.role] = meaning.unit === undefined ? { heading } : { heading, unit: meaning.unit };
  });
  const rows = lines.slice(header + 1 + (units ? 1 : 0)).map(line => cellsOf(line, separator));
  const decimal = decimalOf(rows, headings.indexOf(columns.lat?.heading ?? ''), separator);
  const time = columns.time && timeUnit(rows, headings.indexOf(columns.time.heading), decimal, columns.time);
  if (time && columns.time) {
    columns.time = { ...columns.time, unit: time };
    doubts.push(`"${columns.time.heading}" names no unit; by its steps it is in ${time}.`);
  }
  if (columns.speed && columns.speed.unit === undefined)
    doubts.push(`"${columns.speed.heading}" names no unit; it is told from the places, if they bear one out.`);
  const signature = `${separator === '\t' ? 'tab' : separator} ${headings.map(plain).join(' | ')}`;
  return { separator, decimal, columns, signature, headings, unread, doubts };
}

/** Whether a line under the header says units: some known ones, and no number. */
export const isUnits = (cells: readonly string[]): boolean =>
  cells.some(isUnit) && cells.every(cell => isUnit(cell) || !/\d/.test(cell));

const bare = (cell = ''): string => cell.trim().replace(/^["[(]+|["\])]+$/g, '');

/** By the latitudes, which always have decimals; where none is there yet, by all that is. */
function decimalOf(rows: readonly (readonly string[])[], lat: number, separator: Separator): '.' | ',' {
  const telling = (cells: readonly string[]): number =>
    cells.reduce((sum, cell) => {
      if (cell.includes('.')) return sum - 1;
      return cell.includes(',') && Number.isFinite(numberOf(cell, ',')) ? sum + 1 : sum;
    }, 0);
  const commas = telling(rows.flatMap(row => row[lat] ?? [])) || telling(rows.flat());
  if (commas === 0) return separator === ';' ? ',' : '.';
  return commas > 0 ? ',' : '.';
}

/** For a time of plain numbers without a unit: steps of 10 and more between rows are milliseconds, as are 12 digits. */
function timeUnit(
  rows: readonly (readonly string[])[],
  column: number,
  decimal: '.' | ',',
  { unit }: CsvColumn,
): 's' | 'ms' | undefined {
  const cells = rows.flatMap(row => row[column] ?? []);
  const written = cells.some(cell => Number.isFinite(clockOf(cell)) || momentOf(cell) !== undefined);
  if (unit !== undefined || written) return undefined;
  const times = cells.map(cell => numberOf(cell, decimal)).filter(Number.isFinite);
  const steps = times
    .slice(1)
    .map((time, n) => time - (times[n] as number))
    .filter(step => step > 0);
  const middle = steps.toSorted((a, b) => a - b)[steps.length >> 1] ?? 0;
  return middle >= 10 || (times[0] ?? 0) > 1e11 ? 'ms' : 's';
}
