/** What a reader found in a file, before it is known to be a tree; and all that stands against it, at once. */
import { suggest } from '../../kart/index.ts';
import { type InputProblem, type Problems, problems } from '../../numbers/index.ts';
import { type Basic, type FaultTree, type Gate, LIMITS } from './model.ts';
import { loops } from './walk.ts';

/** One thing defined, where it stands (a line of a file, a path of keys), and as it was written if that is no such thing. */
type Defined<T> = { readonly name: string; readonly is: T; readonly where: string; readonly written?: string };

export type Draft = {
  /** Undefined where the notation names none: then the one gate that no other uses. */
  readonly top: { readonly name: string; readonly where: string } | undefined;
  readonly gates: readonly Defined<Gate>[];
  readonly events: readonly Defined<Basic>[];
};

export type TreeRead = { readonly kind: 'tree'; readonly tree: FaultTree } | Problems;

/** The tree, or everything that is wrong with it. `before` is what the reader itself had to say. */
export function treeOf(draft: Draft, before: readonly InputProblem[] = []): TreeRead {
  const large = tooLarge(draft);
  if (large.length > 0) return problems(...before.slice(0, SHOWN), ...large);
  const gates = new Map(draft.gates.map(({ name, is }) => [name, is]));
  const events = new Map(draft.events.map(({ name, is }) => [name, is]));
  const names = new Set([...gates.keys(), ...events.keys()]);
  const top = topOf(draft, names);
  const against = [
    ...before,
    ...twice(draft),
    ...notDefined(draft, names),
    ...draft.gates.flatMap(gateProblems),
    ...draft.events.flatMap(chanceProblem),
    ...loops({ gates }).map(loop => loopProblem(draft, loop)),
    ...(typeof top === 'string' ? [] : [top]),
  ];
  return typeof top === 'string' && against.length === 0
    ? { kind: 'tree', tree: { top, gates, events } }
    : problems(...against);
}

type Saying = Omit<InputProblem, 'path'>;
const at = (path: string, saying: Saying): InputProblem => ({ path, ...saying });
const WHOLE = 'the whole tree';
/** More names than this are not each held against all others in search of what was meant. */
const SHOWN = 20;

function tooLarge({ gates, events }: Draft): readonly InputProblem[] {
  const inputs = gates.reduce((sum, { is }) => sum + is.inputs.length, 0);
  const sizes = { events: events.length, gates: gates.length, inputs };
  const remedy = 'split the tree, and solve each part alone';
  return (['events', 'gates', 'inputs'] as const)
    .filter(what => sizes[what] > LIMITS[what])
    .map(what => at(WHOLE, { expected: `at most ${LIMITS[what]} ${what}`, got: `${sizes[what]}`, remedy }));
}

function twice({ gates, events }: Draft): readonly InputProblem[] {
  const first = new Map<string, string>();
  const remedy = 'give one of them another name';
  return [...gates, ...events].flatMap(({ name, where }) => {
    const before = first.get(name);
    first.set(name, before ?? where);
    const got = `a second one; the first stands at ${before}`;
    return before === undefined ? [] : [at(where, { expected: `"${name}" defined once`, got, remedy })];
  });
}

function notDefined({ gates }: Draft, names: ReadonlySet<string>): readonly InputProblem[] {
  const missing = gates.flatMap(({ name, is, where }) =>
    [...new Set(is.inputs)].filter(input => !names.has(input)).map(input => ({ name, where, input })),
  );
  const shown = missing.slice(0, SHOWN).map(({ name, where, input }) => {
    const remedy = nearOr(input, names, 'define it as a gate or an event');
    return at(where, { expected: `inputs of gate "${name}" that are defined`, got: `"${input}"`, remedy });
  });
  const rest = missing.length - shown.length;
  const remedy = 'put those above right first';
  return rest === 0
    ? shown
    : [...shown, at(WHOLE, { expected: 'inputs that are defined', got: `${rest} more that are not`, remedy })];
}

function gateProblems({ name, is, where }: Defined<Gate>): readonly InputProblem[] {
  const { length } = is.inputs;
  const wrong = (fails: boolean, saying: Saying): readonly InputProblem[] => (fails ? [at(where, saying)] : []);
  const none = wrong(length === 0, {
    expected: `at least one input of gate "${name}"`,
    got: 'none',
    remedy: 'add what brings it about, or take the gate out',
  });
  if (is.op !== 'atleast' || length === 0) return none;
  return [
    ...wrong(!(Number.isInteger(is.k) && is.k >= 1 && is.k <= length), {
      expected: `a whole number from 1 to the ${length} inputs of gate "${name}"`,
      got: Number.isNaN(is.k) ? 'none' : String(is.k),
      remedy: 'say how many of them it takes',
    }),
    ...wrong(new Set(is.inputs).size < length, {
      expected: `each input of gate "${name}" once`,
      got: 'the same one again',
      remedy: 'what counts double is two events',
    }),
  ];
}

/** A not-a-number is no chance either. */
function chanceProblem({ name, is, where, written }: Defined<Basic>): readonly InputProblem[] {
  if (typeof is !== 'number' || (is >= 0 && is <= 1)) return [];
  const remedy = 'a chance of 3 in 100 is 0.03; leave it open where nobody knows it';
  return [at(where, { expected: `a chance of "${name}" from 0 to 1`, got: written ?? String(is), remedy })];
}

function loopProblem({ gates }: Draft, loop: readonly string[]): InputProblem {
  const where = gates.find(({ name }) => name === loop[0])?.where ?? WHOLE;
  const expected = 'gates that do not come about by way of themselves';
  return at(where, { expected, got: shortened(loop).join(' > '), remedy: 'take one of these inputs out' });
}

/** The name of the top, or why there is none. */
function topOf({ top, gates }: Draft, names: ReadonlySet<string>): string | InputProblem {
  if (top !== undefined) {
    if (names.has(top.name)) return top.name;
    const remedy = nearOr(top.name, names, 'name a gate of the tree');
    return at(top.where, { expected: 'a top that is defined', got: `"${top.name}"`, remedy });
  }
  const used = new Set(gates.flatMap(({ is }) => is.inputs));
  const unused = gates.map(({ name }) => name).filter(name => !used.has(name));
  const [only, ...more] = unused;
  if (only !== undefined && more.length === 0) return only;
  const got = only === undefined ? 'none' : `${unused.length}: ${shortened(unused).join(', ')}`;
  const remedy = 'keep one tree in a file, and take out gates that nothing uses';
  return at(WHOLE, { expected: 'one gate that no other uses, the top', got, remedy });
}

const shortened = (names: readonly string[]): readonly string[] =>
  names.length <= 8 ? names : [...names.slice(0, 4), '…', ...names.slice(-3)];

function nearOr(name: string, names: ReadonlySet<string>, otherwise: string): string {
  const near = suggest(name, names);
  return near === undefined ? otherwise : `did you mean "${near}"? Else ${otherwise}`;
}
