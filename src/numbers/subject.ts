/** A number that can be asked alone: its card, the shape of its question, and the answer. */
import { z } from 'zod';
import { type Dimension, type Measure, parseQuantity, unitsOf } from '../quantity/index.ts';
import type { Card } from './card.ts';

/** One figure of an answer: SI value, the unit the text is in, and the text. */
export type Figure = { readonly si: number; readonly unit: string; readonly text: string };
export type Answer = {
  readonly kind: 'answer';
  readonly figures: Readonly<Record<string, Figure>>;
  readonly say: readonly string[]; // what to do, in sentences
  readonly notes: readonly string[]; // limits of validity passed, doubts, what was assumed
};
export type InputProblem = {
  readonly path: string;
  readonly expected: string;
  readonly got: string;
  readonly remedy: string;
};
/** All that is wrong with a question at once. */
export type Problems = { readonly kind: 'problems'; readonly problems: readonly InputProblem[] };

export type Subject = {
  readonly name: string; // 'rear-track'
  readonly title: string;
  readonly card: Card;
  /** Shape of the question: `z.toJSONSchema(schema, { io: 'input' })` describes it. */
  readonly schema: z.ZodType;
  /** A question that can be asked as it stands. */
  readonly example: Readonly<Record<string, unknown>>;
  /** Names of figures, or with a * how they begin, that only stand behind those that decide: a page folds them. */
  readonly behind?: readonly string[];
  /** Never throws on input from outside. */
  readonly ask: (input: unknown) => Answer | Problems;
};

/** A measured value with the limits ± `half` [same SI unit] it is known within; `half` undefined when none was given. */
export type Uncertain = Measure & { readonly half?: number };

export const problems = (...list: readonly InputProblem[]): Problems => ({ kind: 'problems', problems: list });

/** Checks the shape first, then asks; what zod found becomes problems with the path as it was written. */
export function subject<T>(
  about: Omit<Subject, 'ask' | 'schema'> & {
    readonly schema: z.ZodType<T>;
    readonly solve: (input: T) => Answer | Problems;
  },
): Subject {
  const { solve, ...rest } = about;
  const ask = (input: unknown): Answer | Problems => {
    const read = shaped(input, about);
    return read.kind === 'shaped' ? solve(read.value) : read;
  };
  return { ...rest, ask };
}

/** The question in its shape, or all that is wrong with it, each with its path and a piece of the example. */
export function shaped<T>(
  input: unknown,
  { schema, example }: { readonly schema: z.ZodType<T>; readonly example: Subject['example'] },
): { readonly kind: 'shaped'; readonly value: T } | Problems {
  const read = schema.safeParse(input, { reportInput: true });
  return read.success
    ? { kind: 'shaped', value: read.data }
    : problems(...read.error.issues.flatMap(issue => fromIssue(issue, example)));
}

/** A quantity as text with its unit. */
export const quantity = (dimension: Dimension, meaning: string, example: string) =>
  text(dimension, meaning, example, parse(dimension));

/** A quantity that may carry its limits: `146 mm ± 0.5 mm`, `146 ± 0.5 mm`, `146 mm`. What is no length shows them in its example. */
export const uncertain = (dimension: Dimension, meaning: string, example: string) =>
  text(
    dimension,
    `${meaning}; limits may follow, as in "${example.includes('±') ? example : `${example} ± 0.5 mm`}"`,
    example,
    written => parseUncertain(written, dimension),
  );

type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly expected: string; readonly got: string; readonly remedy: string };

const parse = (dimension: Dimension) => (written: unknown) => parseQuantity(written, dimension);

function parseUncertain(written: unknown, dimension: Dimension): Outcome<Uncertain> {
  if (typeof written !== 'string') return parseQuantity(written, dimension);
  const [size = '', limits, more] = written.split(/±|\+\/-|\+-/);
  // The limits of a temperature are a difference: ± 1 °C is 1 K, not 274.15 K.
  const apart = dimension === 'temperature' ? 'temperature-difference' : dimension;
  const half = limits === undefined ? undefined : parseQuantity(limits, apart);
  if (half !== undefined && !half.ok) return { ...half, got: `"${written}"` };
  const bare = half !== undefined && /^[\s\d.,/+\u2212-]+$/.test(size);
  const value = parseQuantity(bare ? `${size} ${half.value.unit}` : size, dimension);
  if (!value.ok) return { ...value, got: `"${written}"` };
  if (more !== undefined || (half !== undefined && half.value.si < 0))
    return {
      ok: false,
      expected: 'one value and one limit that is not negative',
      got: `"${written}"`,
      remedy: 'write it as "146 mm ± 0.5 mm"',
    };
  return {
    ok: true,
    value: half === undefined ? value.value : { ...value.value, text: written.trim(), half: half.value.si },
  };
}

function text<T>(dimension: Dimension, meaning: string, example: string, read: (written: unknown) => Outcome<T>) {
  const description = `${meaning}. Units: ${unitsOf(dimension).join(', ')}`;
  return z
    .unknown()
    .meta({ type: 'string', description, examples: [example] })
    .transform((written, context): T => {
      const outcome = read(written);
      if (outcome.ok) return outcome.value;
      const { expected } = outcome;
      const got = written === undefined ? 'nothing' : outcome.got;
      const remedy = written === undefined ? `add it, for example "${example}"` : outcome.remedy;
      context.issues.push({ code: 'custom', input: written, message: remedy, params: { expected, got } });
      return z.NEVER;
    });
}

function fromIssue(issue: z.core.$ZodIssue, example: Subject['example']): readonly InputProblem[] {
  const at = (...more: readonly string[]): string =>
    [...issue.path, ...more].map(String).join('/') || 'the whole input';
  const whole = exampleFor(issue.path[0], example);
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map(key => ({
      path: at(key),
      expected: 'a key that is known here',
      got: `"${key}"`,
      remedy: `take it out, or correct its name; ${whole}`,
    }));
  if (issue.code === 'custom')
    return [
      { path: at(), expected: String(issue.params?.expected), got: String(issue.params?.got), remedy: issue.message },
    ];
  const got = JSON.stringify(issue.input) ?? 'nothing';
  const expected =
    issue.code === 'invalid_type'
      ? (SHAPES[issue.expected] ?? issue.expected)
      : issue.code === 'invalid_value'
        ? `one of ${issue.values.map(v => `"${String(v)}"`).join(', ')}`
        : issue.message;
  return [{ path: at(), expected, got: got.length > 60 ? `${got.slice(0, 60)}…` : got, remedy: whole }];
}

/** What JSON calls otherwise than a person does. */
const SHAPES: Readonly<Record<string, string>> = { object: 'its fields together', array: 'a list', string: 'text' };

/** The piece of the example where the fault stands, as far as it fits in a line; the whole where the fault is nowhere in it. */
function exampleFor(key: PropertyKey | undefined, example: Subject['example']): string {
  const piece = typeof key === 'string' && Object.hasOwn(example, key) ? { [key]: example[key] } : example;
  const text = JSON.stringify(piece);
  return `an example: ${text.length > LINE ? `${text.slice(0, LINE)}…` : text}`;
}
const LINE = 240;
