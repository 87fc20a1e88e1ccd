/** The form of a question, read from its schema: the sheet knows no subject by name. */
import { z } from 'zod';
import type { Subject } from '../../numbers/index.ts';

type Named = { readonly key: string; readonly meaning: string; readonly must: boolean };
export type TextField = Named & {
  readonly is: 'text';
  readonly example: string; // with its unit, where it has one
  readonly limits?: string; // how it is written with how well it is known, where that can be used
};
export type ChoiceField = Named & { readonly is: 'choice'; readonly choices: readonly string[] };
/** Fields that belong together: the front brakes. */
export type GroupField = Named & { readonly is: 'group'; readonly form: Form };
/** Rows of the same few fields: the links of a chain, the places for ballast. */
export type ListField = Named & { readonly is: 'list'; readonly form: Form };
export type Field = TextField | ChoiceField | GroupField | ListField;

/** What is needed, and what the example shows, comes first; the rest can be said if known. */
export type Form = { readonly first: readonly Field[]; readonly more: readonly Field[] };

export const allFields = ({ first, more }: Form): readonly Field[] => [...first, ...more];

type Shape = {
  readonly type?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly items?: Shape;
};

export const formOf = ({ schema, example }: Subject): Form =>
  formFor(z.toJSONSchema(schema, { io: 'input' }) as Shape, example);

function formFor({ properties = {}, required = [] }: Shape, example: unknown): Form {
  const shown = isRecord(example) ? example : {};
  const fields = Object.entries(properties).map(([key, shape]) =>
    fieldFor({ key, meaning: meaningOf(shape), must: required.includes(key) }, shape, shown[key]),
  );
  const first = (field: Field): boolean => field.must || field.key in shown;
  return { first: fields.filter(first), more: fields.filter(field => !first(field)) };
}

function fieldFor(named: Named, shape: Shape, example: unknown): Field {
  if (shape.items) {
    const rows: readonly unknown[] = Array.isArray(example) ? example : [];
    // What any row of the example shows.
    return { ...named, is: 'list', form: formFor(shape.items, Object.assign({}, ...rows)) };
  }
  if (shape.properties) return { ...named, is: 'group', form: formFor(shape, example) };
  if (shape.enum) return { ...named, is: 'choice', choices: shape.enum.map(String) };
  const limits = LIMITS.exec(shape.description ?? '')?.[1];
  return {
    ...named,
    is: 'text',
    example: String(shape.examples?.[0] ?? ''),
    ...(limits === undefined ? {} : { limits }),
  };
}

/** How limits are written, as the first field that can use them shows it; undefined where none can. */
export function limitsIn(form: Form): string | undefined {
  for (const field of allFields(form)) {
    const found = field.is === 'text' ? field.limits : field.is === 'choice' ? undefined : limitsIn(field.form);
    if (found !== undefined) return found;
  }
  return undefined;
}

const LIMITS = /; limits may follow, as in "([^"]*)"/;

/** Units and how limits are written are said once above the form, and again by a refusal, not at each field. */
const meaningOf = ({ description = '' }: Shape): string => description.replace(/\. Units: .*$/, '').replace(LIMITS, '');

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
