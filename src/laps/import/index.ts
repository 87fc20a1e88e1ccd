export type { LayoutChoice } from './csv/csv.ts';
export { type CsvColumn, type CsvLayout, type Proposed, proposeLayout } from './csv/layout.ts';
export { ROLES, type Role, unitsFor } from './csv/words.ts';
export { MOST_FIXES } from './gather.ts';
export {
  type Imported,
  type ImportOptions,
  importLog,
  LogImport,
  type NotImported,
  type Progress,
} from './log-import.ts';
export type { Format } from './sniff.ts';
export { jumpsOf, type Reason, type Skipped } from './tally.ts';
