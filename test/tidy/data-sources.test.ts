import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readText, tracked } from './files.ts';

type Node = { readonly path: string; readonly value: Readonly<Record<string, unknown>> };
const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Every mapping below a value, with its path. */
function maps(path: string, value: unknown): Node[] {
  if (!isMap(value)) return [];
  return [{ path, value }, ...Object.entries(value).flatMap(([key, below]) => maps(`${path} › ${key}`, below))];
}

const inFolder = (folder: string) =>
  tracked
    .filter(path => path.startsWith(`data/${folder}/`) && path.endsWith('.yaml'))
    .flatMap(path => maps(path, parse(readText(path))));
const hasSource = (node: Node) => typeof node.value.source === 'string' && node.value.source.trim() !== '';
const paths = (nodes: readonly Node[]) => nodes.map(node => node.path);

const kinds = inFolder('kinds');
const limits = inFolder('rules').filter(node => node.path.includes(' › limits › '));
const items = kinds.filter(node => 'how' in node.value && 'accept' in node.value);
const torques = kinds.filter(node => 'torque' in node.value);

describe('the figures in data/', () => {
  test('the search finds items, torques and limits', () => {
    expect(items.length).toBeGreaterThan(100);
    expect(torques.length).toBeGreaterThan(20);
    expect(limits.length).toBeGreaterThan(5);
  });

  test('every item of a kind says where it comes from', () => {
    // The check of a joint may take the joint's own source.
    const bare = items.filter(node => !hasSource(node) && !node.path.endsWith(' › check'));
    expect(paths(bare)).toEqual([]);
  });

  test('every torque says where it comes from', () => {
    expect(paths(torques.filter(node => !hasSource(node)))).toEqual([]);
  });

  test('every limit of a rule set says where it comes from', () => {
    expect(
      paths(
        limits.filter(node => ('min' in node.value || 'max' in node.value || 'text' in node.value) && !hasSource(node)),
      ),
    ).toEqual([]);
  });

  test('every rule set names its body and year, and that the real rule book wins', () => {
    const sets = inFolder('rules').filter(node => !node.path.includes(' › '));
    expect(paths(sets.filter(({ value }) => !(value.body && value.year && value.note)))).toEqual([]);
  });

  test('the demo says that it is invented', () => {
    const files = tracked.filter(path => path.startsWith('data/demo/') && path.endsWith('.yaml'));
    expect(files.length).toBeGreaterThan(1);
    expect(files.filter(path => !/\binvented\b/i.test(readText(path)))).toEqual([]);
    const karts = inFolder('demo').filter(node => !node.path.includes(' › ') && node.value.kart === 1);
    expect(karts.map(({ value }) => value.invented)).toEqual([true]);
  });
});
