/** The form of a question, read from its schema: the sheet knows no subject by name. */
import { z } from 'zod';
import type { Subject } from '../../numbers/index.ts';

export type TextField = {
  readonly is: 'text';
  readonly key: string;
  readonly meaning: string;
  readonly example: string; // with its unit, where it has one
  readonly units: string; // every unit that is understood, '' for words
  readonly must: boolean;
};
export type ChoiceField = {
  readonly is: 'choice';
  readonly key: string;
  readonly meaning: string;
  readonly choices: readonly string[];
  readonly must: boolean;
};
/** Rows of the same few fields: the links of a chain, the places for ballast. */
export type ListField = {
  readonly is: 'list';
  readonly key: string;
  readonly meaning: string;
  readonly rows: readonly (TextField | ChoiceField)[];
  readonly must: boolean;
};
export type Field = TextField | ChoiceField | ListField;

export type Form = { readonly first: readonly Field[]; readonly more: readonly Field[] };

type Shape = {
  readonly type?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly items?: Shape;
};

/** What is needed, and what the example shows, comes first; the rest can be said if known. */
export function formOf(subject: Subject): Form {
  const fields = fieldsOf(z.toJSONSchema(subject.schema, { io: 'input' }) as Shape);
  const first = (field: Field): boolean => field.must || field.key in subject.example;
  return { first: fields.filter(first), more: fields.filter(field => !first(field)) };
}

export const allFields = ({ first, more }: Form): readonly Field[] => [...first, ...more];

function fieldsOf({ properties = {}, required = [] }: Shape): readonly Field[] {
  return Object.entries(properties).map(([key, shape]) => {
    const must = required.includes(key);
    const rows = shape.items === undefined ? undefined : fieldsOf(shape.items).filter(row => row.is !== 'list');
    return rows === undefined
      ? simple(key, shape, must)
      : { is: 'list', key, meaning: shape.description ?? '', rows, must };
  });
}

function simple(key: string, { description = '', examples, enum: choices }: Shape, must: boolean): Field {
  if (choices) return { is: 'choice', key, meaning: description, choices: choices.map(String), must };
  const [meaning = '', units = ''] = description.split(/\. Units: /);
  // Said once above the form, not at each field.
  const short = meaning.replace('; limits may follow, as in "146 mm ± 0.5 mm"', '');
  return { is: 'text', key, meaning: short, example: String(examples?.[0] ?? ''), units, must };
}
