/**
 * A library read once and found right, as plain JSON: the trees with the place of everything in them. Unpacking takes a
 * few milliseconds where parsing the YAML takes the better part of a second.
 */
import type { Place } from './problem.ts';
import { isTree, placeIn, setPlace, type Tree, top } from './source.ts';

/** A scalar as it is; a list or a map as its entries, each with its line and column. */
export type Packed =
  | null
  | boolean
  | number
  | string
  | { readonly list: readonly (readonly [line: number, column: number, value: Packed])[] }
  | { readonly map: readonly (readonly [line: number, column: number, key: string, value: Packed])[] };

/** @param value what `readYaml` gave, and nothing else: anything that is not plain data becomes null */
export function pack(value: unknown): Packed {
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  if (Array.isArray(value)) return { list: value.map((one, i) => [...spot(value, i), pack(one)] as const) };
  if (!isTree(value)) return null;
  return { map: Object.entries(value).map(([key, one]) => [...spot(value, key), key, pack(one)] as const) };
}

function spot(container: object, key: string | number): readonly [number, number] {
  const { line, column } = placeIn(container, key) ?? top(undefined);
  return [line, column];
}

/** The tree again, as `readYaml` gave it. */
export function unpack(packed: Packed, file: string): Tree {
  const value = unpacked(packed, file, []);
  if (isTree(value)) return value;
  throw new TypeError(`unpack: ${file} must be a map of keys, got ${typeof value}`);
}

function unpacked(packed: Packed, file: string, path: readonly string[]): unknown {
  if (typeof packed !== 'object' || packed === null) return packed;
  if ('list' in packed) {
    const list: unknown[] = [];
    for (const [i, [line, column, value]] of packed.list.entries()) {
      const place: Place = { file, line, column, path: [...path, String(i)] };
      list.push(unpacked(value, file, place.path));
      setPlace(list, i, place);
    }
    return list;
  }
  const tree: Tree = {};
  for (const [line, column, key, value] of packed.map) {
    const place: Place = { file, line, column, path: [...path, key] };
    setPlace(tree, key, place);
    tree[key] = unpacked(value, file, place.path);
  }
  return tree;
}
