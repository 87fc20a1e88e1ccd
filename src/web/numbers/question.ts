/** From what was typed to a question, and from a refusal back to its field. Nothing typed is ever changed. */
import type { Kart } from '../../kart/index.ts';
import type { InputProblem, Subject } from '../../numbers/index.ts';
import { allFields, type Field, type Form } from './fields.ts';

export type Row = Readonly<Record<string, string>>;
export type Typed = Readonly<Record<string, string | readonly Row[]>>;

export const textOf = (typed: Typed, key: string): string => {
  const value = typed[key];
  return typeof value === 'string' ? value : '';
};
export const rowsOf = (typed: Typed, key: string): readonly Row[] => {
  const value = typed[key];
  return value === undefined || typeof value === 'string' ? [] : value;
};

/** An empty field was not asked about; everything else goes as it was typed. */
export function questionOf(form: Form, typed: Typed): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    allFields(form).flatMap((field): [string, unknown][] => {
      if (field.is !== 'list') {
        const text = textOf(typed, field.key).trim();
        return text === '' ? [] : [[field.key, text]];
      }
      const rows = rowsOf(typed, field.key)
        .map(said)
        .filter(row => Object.keys(row).length > 0);
      return rows.length === 0 ? [] : [[field.key, rows]];
    }),
  );
}

const said = (row: Row): Row =>
  Object.fromEntries(Object.entries(row).flatMap(([key, text]) => (text.trim() === '' ? [] : [[key, text.trim()]])));

/** The example of a subject as if a person had typed it. */
export const typedExample = ({ example }: Subject): Typed => example as Typed;

/** Names that the kart file or its rule set gives by another name, in the subject that asks for them. */
const ELSEWHERE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'hub-hold': { 'tyre diameter': 'rear tyre diameter' },
  'front-end': { 'tyre diameter': 'front tyre diameter', 'tyre width': 'front tyre width' },
  brakes: { 'tyre diameter': 'rear tyre diameter' },
};
const LIMITS: Readonly<Record<string, (rules: Kart['rules']) => string | undefined>> = {
  'width limit': rules => rules?.limits['overall rear width']?.max?.text,
  'least mass': rules => rules?.limits.mass?.min?.text,
};

/** What the kart file and its rule set say already, field by field. */
export function fromKart(form: Form, subject: string, kart: Kart): Typed {
  return Object.fromEntries(
    allFields(form).flatMap(({ key, is }) => {
      if (is !== 'text') return [];
      const name = ELSEWHERE[subject]?.[key] ?? key;
      const text = kart.dimensions[name]?.text ?? LIMITS[key]?.(kart.rules);
      return text === undefined ? [] : [[key, text]];
    }),
  );
}

/** `places/0/most` → its own line; a path that is no field of the form is shown above it. */
export const problemsAt = (problems: readonly InputProblem[], path: string): readonly InputProblem[] =>
  problems.filter(problem => problem.path === path);

export function problemsElsewhere(form: Form, typed: Typed, problems: readonly InputProblem[]) {
  const paths = new Set(allFields(form).flatMap(field => pathsOf(field, typed)));
  return problems.filter(({ path }) => !paths.has(path));
}

const pathsOf = (field: Field, typed: Typed): readonly string[] =>
  field.is === 'list'
    ? [field.key, ...rowsOf(typed, field.key).flatMap((_, n) => field.rows.map(row => `${field.key}/${n}/${row.key}`))]
    : [field.key];

/** What this device kept; anything it cannot be is as if nothing was kept. */
export function typedFrom(kept: string): Typed | undefined {
  try {
    const value: unknown = JSON.parse(kept);
    return isTyped(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isRow = (value: unknown): value is Row =>
  isRecord(value) && Object.values(value).every(text => typeof text === 'string');
const isTyped = (value: unknown): value is Typed =>
  isRecord(value) &&
  Object.values(value).every(entry => typeof entry === 'string' || (Array.isArray(entry) && entry.every(isRow)));
