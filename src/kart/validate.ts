/** Turns what a shape finds into problems with place and remedy, and takes the bad values out so that reading can go on. */
import type { z } from 'zod';
import type { Place, Report } from './problem.ts';
import { show } from './problem.ts';
import { QUANTITY } from './shapes.ts';
import { child, isTree, locate, type Tree } from './source.ts';
import { didYouMean } from './suggest.ts';

type Issue = z.core.$ZodIssue;

/**
 * Reports everything that is wrong with `tree` and takes it out, and what is then incomplete too, until what is left has
 * the shape; only keys missing at the very top stay missing.
 */
export function validate(shape: z.ZodType, tree: Tree, start: Place, report: Report): void {
  let issues = examine(shape, tree, start, report);
  while (issues.filter(issue => prune(issue, tree)).length > 0) issues = examine(shape, tree, start, () => {});
}

/** Reports everything that is wrong with `tree` and leaves the tree as it is. */
export function examine(shape: z.ZodType, tree: Tree, start: Place, report: Report): readonly Issue[] {
  const result = shape.safeParse(tree, { error: defaultExpected });
  if (result.success) return [];
  const issues = result.error.issues.flatMap(issue => innermost(issue));
  for (const issue of issues) reportIssue(issue, tree, start, report);
  return issues;
}

/** Of a union, the issues of the branch that the writer most likely meant. */
function innermost(issue: Issue, base: readonly PropertyKey[] = []): Issue[] {
  const path = [...base, ...issue.path];
  if (issue.code !== 'invalid_union') return [{ ...issue, path }];
  const meant = issue.errors
    .filter(
      branch => !branch.some(i => i.path.length === 0 && (i.code === 'invalid_type' || i.code === 'invalid_value')),
    )
    .sort((a, b) => a.length - b.length)[0];
  return meant ? meant.flatMap(inner => innermost(inner, path)) : [{ ...issue, path }];
}

function reportIssue(issue: Issue, tree: Tree, start: Place, report: Report): void {
  if (issue.code === 'unrecognized_keys') {
    const known = issue.message.split('\n');
    for (const key of issue.keys)
      report(locate(tree, start, [...issue.path, key]), {
        expected: 'a key that is known here',
        got: `"${key}"`,
        remedy: didYouMean(key, known, 'take it out'),
      });
    return;
  }
  const place = locate(tree, start, issue.path);
  const value = issue.path.map(String).reduce<unknown>(child, tree);
  if (issue.code === 'invalid_key') {
    const expected = issue.issues[0]?.message ?? 'a name';
    report(place, { expected, got: show(String(issue.path.at(-1))), remedy: `use ${expected}` });
    return;
  }
  report(place, { expected: issue.message, got: show(value), remedy: remedy(issue, value) });
}

function remedy(issue: Issue, value: unknown): string {
  const key = String(issue.path.at(-1) ?? '');
  if (value === undefined || value === null) return `write "${key}:" with ${issue.message}`;
  if (issue.message === QUANTITY && typeof value === 'number') return `write the unit too, such as "${value} mm"`;
  if (issue.code === 'invalid_type' && issue.expected === 'string' && typeof value !== 'object')
    return `put it in quotes: "${String(value)}"`;
  if (issue.code === 'invalid_value' && typeof value === 'string')
    return didYouMean(value, issue.values.map(String), `write ${issue.message}`);
  return `write ${issue.message}`;
}

/** Deletes what is wrong: the value, or the list it stands in, or the map that lacks a key. True when it did. */
function prune(issue: Issue, tree: Tree): boolean {
  const path = issue.path.map(String);
  const remove = (holder: unknown, key: string | undefined): boolean =>
    key !== undefined && isTree(holder) && Object.hasOwn(holder, key) && delete holder[key];
  const at = (keys: readonly string[]): unknown => keys.reduce<unknown>(child, tree);
  if (issue.code === 'unrecognized_keys') return issue.keys.filter(key => remove(at(path), key)).length > 0;
  const holder = at(path.slice(0, -1));
  if (!(isTree(holder) && Object.hasOwn(holder, path.at(-1) ?? ''))) path.pop();
  while (path.length > 0 && Array.isArray(at(path.slice(0, -1)))) path.pop();
  const last = path.pop();
  return remove(at(path), last);
}

function defaultExpected(issue: z.core.$ZodRawIssue): string {
  if (issue.code === 'too_big') return `at most ${String(issue.maximum)}`;
  if (issue.code === 'too_small') return `at least ${String(issue.minimum)}`;
  if (issue.code === 'invalid_type') return issue.expected === 'object' ? 'a map of keys' : issue.expected;
  return 'another value';
}
