/** From what was typed to a question, and from a refusal back to its field. Nothing typed is ever changed. */
import type { InputProblem } from '../../numbers/index.ts';
import { allFields, type Field, type Form, isRecord, type ListField } from './fields.ts';

/**
 * What was typed, by path: `front/master bore`, `links/0/size`, as refusals name them. A list has at its own path how
 * many rows it has.
 */
export type Typed = Readonly<Record<string, string>>;

export const under = (path: string, key: string | number): string => (path === '' ? String(key) : `${path}/${key}`);

export const rowsOf = (typed: Typed, path: string): number => {
  const rows = Number(typed[path] ?? 0);
  return Number.isInteger(rows) && rows > 0 ? Math.min(rows, MOST_ROWS) : 0;
};
const MOST_ROWS = 2000;

/** An empty field was not asked about; everything else goes as it was typed. Rows stay in their places. */
export function questionOf(form: Form, typed: Typed, path = ''): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    allFields(form).flatMap((field): [string, unknown][] => {
      const value = saidIn(field, typed, under(path, field.key));
      return value === undefined ? [] : [[field.key, value]];
    }),
  );
}

function saidIn(field: Field, typed: Typed, path: string): unknown {
  if (field.is === 'list') {
    const rows = rowsOf(typed, path);
    return rows === 0
      ? undefined
      : Array.from({ length: rows }, (_, n) => questionOf(field.form, typed, under(path, n)));
  }
  if (field.is === 'group') {
    const group = questionOf(field.form, typed, path);
    return Object.keys(group).length === 0 && !field.must ? undefined : group;
  }
  return typed[path]?.trim() || undefined;
}

/** A question as if a person had typed it. */
export function typedOf(question: unknown, path = ''): Typed {
  if (Array.isArray(question)) {
    const rows = question.map((row, n) => typedOf(row, under(path, n)));
    return Object.assign({ [path]: String(rows.length) }, ...rows);
  }
  if (!isRecord(question)) return { [path]: String(question) };
  return Object.assign({}, ...Object.entries(question).map(([key, value]) => typedOf(value, under(path, key))));
}

/** One row less; those after it move up. */
export function withoutRow(typed: Typed, path: string, row: number): Typed {
  const moved = Object.entries(typed).flatMap(([key, text]): [string, string][] => {
    if (!key.startsWith(`${path}/`)) return [[key, text]];
    const [n = '', ...rest] = key.slice(path.length + 1).split('/');
    if (Number(n) === row) return [];
    return [[[path, Number(n) > row ? Number(n) - 1 : n, ...rest].join('/'), text]];
  });
  return { ...Object.fromEntries(moved), [path]: String(rowsOf(typed, path) - 1) };
}

/** Refusals whose path is no field of the form: shown above the button. */
export function problemsElsewhere(form: Form, typed: Typed, problems: readonly InputProblem[]) {
  const paths = new Set(pathsOf(form, typed, ''));
  return problems.filter(({ path }) => !paths.has(path));
}

function pathsOf(form: Form, typed: Typed, at: string): readonly string[] {
  return allFields(form).flatMap(field => {
    const path = under(at, field.key);
    if (field.is === 'group') return [path, ...pathsOf(field.form, typed, path)];
    if (field.is === 'list') return [path, ...rowPaths(field, typed, path)];
    return [path];
  });
}

const rowPaths = ({ form }: ListField, typed: Typed, path: string): readonly string[] =>
  Array.from({ length: rowsOf(typed, path) }, (_, n) => pathsOf(form, typed, under(path, n))).flat();

/** What this device kept; anything it cannot be is as if nothing was kept. */
export function typedFrom(kept: string): Typed | undefined {
  try {
    const value: unknown = JSON.parse(kept);
    return isTyped(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

const isTyped = (value: unknown): value is Typed =>
  isRecord(value) && Object.values(value).every(text => typeof text === 'string');
