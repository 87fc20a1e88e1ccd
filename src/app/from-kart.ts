/** What a question about a number need not ask: the kart file and its rule set say it already. */
import { z } from 'zod';
import type { Kart } from '../kart/index.ts';
import type { Answer, Problems, Subject } from '../numbers/index.ts';

/** What is said of fields, by path as refusals name them: `front/tyre diameter`. */
export type Said = Readonly<Record<string, string>>;

/**
 * The part of a subject's question that the kart answers: `front/tyre diameter` is its front tyre diameter. Rows of a
 * list are never filled in. Empty where the kart says nothing of it.
 */
export function fromKart({ name, schema }: Pick<Subject, 'name' | 'schema'>, kart: Kart): Said {
  const fill = (shape: Shape, at: readonly string[]): Said =>
    Object.assign(
      {},
      ...Object.entries(shape.properties ?? {}).map(([key, field]) => {
        const path = [...at, key];
        if (field.properties) return fill(field, path);
        const said = field.items ? undefined : sayOf(name, path, field, kart);
        return said === undefined ? {} : { [path.join('/')]: said };
      }),
    );
  return fill(z.toJSONSchema(schema, { io: 'input' }) as Shape, []);
}

/**
 * Asks with what the kart says put in where the question says nothing. `taken`: what went in. A question is never
 * refused for the kart's sake: what would be refused of it is left out.
 */
export function askWithKart(subject: Pick<Subject, 'ask'>, question: unknown, said: Said): Asked {
  if (!isRecord(question)) return { answered: subject.ask(question), taken: {} };
  const taken = Object.fromEntries(Object.entries(said).filter(([path]) => !isGiven(question, path.split('/'))));
  const answered = subject.ask(filled(question, taken));
  const refused = answered.kind === 'problems' ? answered.problems.filter(({ path }) => path in taken) : [];
  if (refused.length === 0) return { answered, taken };
  const paths = new Set(refused.map(({ path }) => path));
  return askWithKart(subject, question, Object.fromEntries(Object.entries(taken).filter(([path]) => !paths.has(path))));
}
type Asked = { readonly answered: Answer | Problems; readonly taken: Said };

/** Said by the question itself, or inside something of it that is no group. */
function isGiven(question: Group, [key = '', ...rest]: readonly string[]): boolean {
  if (!Object.hasOwn(question, key)) return false;
  const value = question[key];
  return rest.length === 0 || !isRecord(value) || isGiven(value, rest);
}

const filled = (question: Group, said: Said): Group =>
  Object.entries(said).reduce((group, [path, text]) => put(group, path.split('/'), text), question);

function put(group: Group, [key = '', ...rest]: readonly string[], text: string): Group {
  if (rest.length === 0) return { ...group, [key]: text };
  const inner = group[key];
  return { ...group, [key]: put(isRecord(inner) ? inner : {}, rest, text) };
}

type Group = Readonly<Record<string, unknown>>;
type Shape = {
  readonly enum?: readonly unknown[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly items?: Shape;
};

const isRecord = (value: unknown): value is Group =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function sayOf(subject: string, path: readonly string[], shape: Shape, kart: Kart): string | undefined {
  const at = `${subject}/${path.join('/')}`;
  if (NOT_ALONE.has(at)) return undefined;
  const own = OWN[at]?.(kart);
  if (own !== undefined || shape.enum !== undefined) return own;
  const key = path.at(-1) ?? '';
  return (
    [ELSEWHERE[at] ?? '', path.join(' '), key]
      .map(dimension => kart.dimensions[dimension]?.text)
      .find(text => text !== undefined) ?? LIMITS[path.join('/')]?.(kart)
  );
}

/** Names that the kart file says in another way. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  'hub-hold/tyre diameter': 'rear tyre diameter',
  'front-end/tyre diameter': 'front tyre diameter',
  'front-end/tyre width': 'front tyre width',
  'front-end/mass': 'mass with driver',
  'wheel-loads/mass': 'mass with driver',
  'brakes/mass': 'mass with driver',
  'brakes/front load share': 'front share',
  'brakes/centre height': 'cg height',
};

/** What the kart file says but what asks for more readings with it: a person who came for toe alone would be refused. */
const NOT_ALONE: ReadonlySet<string> = new Set(['alignment/kingpin spacing']);

const limit =
  (name: string, end: 'min' | 'max') =>
  ({ rules }: Kart): string | undefined =>
    rules?.limits[name]?.[end]?.text;

const LIMITS: Readonly<Record<string, (kart: Kart) => string | undefined>> = {
  'width limit': limit('overall rear width', 'max'),
  'least mass': limit('mass', 'min'),
};

const list = (all: readonly number[] | undefined): string | undefined => (all?.length ? all.join(' ') : undefined);

/** What one subject alone asks: how the rules fix ballast, the engine's own sheet, the box. Sprockets wait for a wanted speed. */
const OWN: Readonly<Record<string, (kart: Kart) => string | undefined>> = {
  'scales/bolt diameter': limit('ballast bolt diameter', 'min'),
  'scales/bolts a block': limit('ballast bolts a block', 'min'),
  'scales/largest block': limit('ballast block mass', 'max'),
  'scales/mass a bolt': limit('ballast mass a bolt', 'max'),
  'gearing/drive': ({ engine }) => engine?.gears && 'gearbox',
  'gearing/primary ratio': ({ engine }) => engine?.primary?.toString(),
  'gearing/gears': ({ engine }) => list(engine?.gears),
  'carburation/numbered by': ({ engine }) => engine?.jetsNumberedBy,
  'carburation/jets in the box': ({ box }) => list(box?.mainJets),
};
