/** What scripts/mutate.mjs asks for, and what is told back: a line a finding, so that nothing is lost when a mutant never ends. */
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const work: { readonly folder: string; readonly tests: readonly string[] } = JSON.parse(
  process.env.KARTWRIGHT_MUTATE ?? '{"folder":"","tests":[]}',
);

export type Told =
  /** Which mutants the tests of a file reach, and which are reached only while files load. */
  | { readonly file: string; readonly reached: readonly string[]; readonly atLoad: readonly string[] }
  /**
   * Tests left out: those that fail without a mutant too (the switches make every function larger, and a deep recursion may outgrow
   * the stack), and those that would take too long for each.
   */
  | { readonly file: string; readonly failing: readonly string[]; readonly slow: readonly string[] }
  | { readonly file: string; readonly done: true }
  | { readonly file: string; readonly mutant: string; readonly begun: number } // ms that it may take
  | { readonly file: string; readonly mutant: string; readonly end: 'killed' | 'lived'; readonly by?: string }
  /** A mutant left something behind that makes a test fail without it: begin with a fresh process. */
  | { readonly file: string; readonly stale: string };

const told = join(work.folder, 'told.jsonl');

export const tell = (line: Told): void => appendFileSync(told, `${JSON.stringify(line)}\n`);

export const toldSoFar = (): readonly Told[] =>
  existsSync(told)
    ? readFileSync(told, 'utf8')
        .split('\n')
        .filter(Boolean)
        .map(line => JSON.parse(line) as Told)
    : [];
