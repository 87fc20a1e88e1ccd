/** Rows counted by how their value was obtained. */
export const MARKS = ['read', 'computed', 'memory', 'common practice'] as const;
export type Mark = (typeof MARKS)[number];

/** What a row that ran leaves behind. */
export type Counted = { readonly id: string; readonly mark: Mark; readonly known: boolean };

export function tallyLine(rows: readonly Counted[]): string {
  const counts = MARKS.map(mark => `${rows.filter(row => row.mark === mark).length} ${mark}`);
  return `${rows.length} rows: ${counts.join(', ')}, ${rows.filter(row => row.known).length} known differences`;
}
