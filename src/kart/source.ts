/**
 * A YAML text as plain maps, lists and scalars, with the line and column of every one of them kept beside it.
 * Validation and layering work on the plain values and can still say where each came from.
 */
import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';
import type { Place, Report } from './problem.ts';
import { show } from './problem.ts';

export type Tree = { [key: string]: unknown };

const MAX_TEXT = 2_000_000; // characters; a book refuses a longer kart file too
const MAX_DEPTH = 30;

const places = new WeakMap<object, Map<string, Place>>();

/** Where a key of a map (or an element of a list) was written. */
export const placeIn = (container: object, key: string | number): Place | undefined =>
  places.get(container)?.get(String(key));

export const setPlace = (container: object, key: string | number, place: Place | undefined): void => {
  if (place === undefined) return;
  const known = places.get(container);
  if (known) known.set(String(key), place);
  else places.set(container, new Map([[String(key), place]]));
};

export const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const top = (file: string | undefined): Place => ({ file, line: 1, column: 1, path: [] });

/** The place of a path below `root`; for a key that is not there, the place of the map that lacks it. */
export function locate(root: unknown, start: Place, path: readonly PropertyKey[]): Place {
  let at = start;
  let value = root;
  for (const key of path.map(String)) {
    const found = typeof value === 'object' && value !== null ? placeIn(value, key) : undefined;
    at = found ?? { ...at, path: [...at.path, key] };
    value = child(value, key);
  }
  return at;
}

export const child = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key) ? (value as Tree)[key] : undefined;

/** Reads one document. Undefined when nothing usable came out; the reasons have been reported. */
export function readYaml(text: string, file: string | undefined, report: Report): Tree | undefined {
  const start = top(file);
  if (text.length > MAX_TEXT) {
    report(start, {
      expected: `at most ${MAX_TEXT} characters`,
      got: `${text.length}`,
      remedy: 'hand in the kart file itself, not another file',
    });
    return undefined;
  }
  const lines = new LineCounter();
  const document = parse(text, lines);
  if (document === undefined) {
    report(start, {
      expected: `at most ${MAX_DEPTH} levels`,
      got: 'far deeper nesting',
      remedy: 'close the brackets that were left open',
    });
    return undefined;
  }
  const at = (offset: number, path: readonly string[]): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col), path };
  };
  for (const error of [...document.errors, ...document.warnings])
    report(at(error.pos[0], []), {
      expected: 'YAML',
      got: error.code === 'MULTIPLE_DOCS' ? 'a second document' : `this: ${firstLine(error.message)}`,
      remedy: remedyFor(error.code),
    });
  if (document.errors.length > 0) return undefined;

  const convert = (node: unknown, path: readonly string[], place: Place): unknown => {
    if (path.length > MAX_DEPTH) {
      report(place, { expected: `at most ${MAX_DEPTH} levels`, got: 'deeper nesting', remedy: 'write it flatter' });
      return undefined;
    }
    if (isScalar(node)) return node.value;
    if (isAlias(node)) {
      report(place, {
        expected: 'a value',
        got: `the alias *${node.source}`,
        remedy: 'write the value out; a kart file is read without aliases',
      });
      return undefined;
    }
    if (isSeq(node)) {
      const list: unknown[] = [];
      for (const [i, item] of node.items.entries()) {
        const here = at((item as Node | null)?.range?.[0] ?? 0, [...path, String(i)]);
        list.push(convert(item, here.path, here));
        setPlace(list, i, here);
      }
      return list;
    }
    if (isMap(node)) {
      const tree: Tree = {};
      for (const pair of node.items) {
        const offset = (pair.key as Node | null)?.range?.[0] ?? 0;
        const key = isScalar(pair.key) ? String(pair.key.value ?? '') : undefined;
        const here = at(offset, [...path, key ?? '?']);
        if (key === undefined || key === '' || key in Object.prototype) {
          report(here, {
            expected: 'a name as key',
            got: key === undefined ? 'something else' : show(key),
            remedy: 'give it another name',
          });
          continue;
        }
        setPlace(tree, key, here);
        tree[key] = convert(pair.value, here.path, here);
      }
      return tree;
    }
    return undefined;
  };
  const value = convert(document.contents, [], start);
  if (isTree(value)) return value;
  report(start, {
    expected: 'a map of keys',
    got: show(value),
    remedy: 'write "key: value" lines; `kartwright new` makes a file to start from',
  });
  return undefined;
}

/** Undefined where the nesting is beyond what the parser's own recursion can hold. */
function parse(text: string, lineCounter: LineCounter) {
  try {
    return parseDocument(text, { lineCounter, prettyErrors: false, logLevel: 'error' });
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const firstLine = (message: string): string => message.split('\n')[0]?.replace(/\.$/, '') ?? message;

const remedyFor = (code: string): string => {
  if (code === 'DUPLICATE_KEY') return 'keep one of the two and take the other out';
  if (code === 'TAB_AS_INDENT') return 'indent with spaces';
  if (code === 'MULTIPLE_DOCS') return 'keep one kart a file, without a second "---"';
  if (code === 'TAG_RESOLVE_FAILED') return 'take the tag out, or put the text in quotes';
  return 'correct this line: spaces to indent, one space after a colon, quotes round text that has a colon, # or bracket in it';
};
