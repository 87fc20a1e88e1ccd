/** What stands against a question, said once for every subject: missing partners, signs, ranges, a side left out. */
import { formatQuantity, type Measure } from '../quantity/index.ts';
import type { InputProblem, Uncertain } from './subject.ts';

export type Asked = Readonly<Record<string, Measure | string | undefined>>;
export type Both<T> = { readonly left: T; readonly right: T };

export const wrong = (path: string, expected: string, got: string, remedy: string): InputProblem => ({
  path,
  expected,
  got,
  remedy,
});

export const measureOf = (input: Asked, key: string): Uncertain | undefined => {
  const value = input[key];
  return typeof value === 'object' ? value : undefined;
};

/** SI value of a key, or what to take when it was not given. */
export const siOf = (input: Asked, key: string, otherwise = Number.NaN): number =>
  measureOf(input, key)?.si ?? otherwise;

/** Left and right of a name: `caster` serves both, or `caster left` and `caster right`. */
export function sides(input: Asked, name: string, otherwise?: number): Both<number> {
  const both = siOf(input, name, otherwise);
  return { left: siOf(input, `${name} left`, both), right: siOf(input, `${name} right`, both) };
}

/** A name given both ways, or for one side only. */
export function sideProblems(input: Asked, name: string, example: string): readonly InputProblem[] {
  const [both, left, right] = [name, `${name} left`, `${name} right`].map(key => measureOf(input, key));
  if (both && (left || right))
    return [
      wrong(
        name,
        'one for both sides, or one each',
        'both ways',
        `take out "${name}", or "${name} left" and "… right"`,
      ),
    ];
  if (!left === !right) return [];
  const absent = `${name} ${left ? 'right' : 'left'}`;
  return [
    wrong(absent, `the ${left ? 'right' : 'left'} side too`, 'nothing', `add "${absent}", for example "${example}"`),
  ];
}

/** Some of a group that only says something together: the rest is missing. */
export function incomplete(input: Asked, group: readonly string[], purpose: string): readonly InputProblem[] {
  const absent = group.filter(key => input[key] === undefined);
  if (absent.length === group.length) return [];
  return absent.map(key =>
    wrong(key, `"${key}" too, for ${purpose}`, 'nothing', `add "${key}", or leave out ${named(group, absent)}`),
  );
}

const named = (group: readonly string[], absent: readonly string[]): string =>
  group
    .filter(key => !absent.includes(key))
    .map(key => `"${key}"`)
    .join(', ');

/** Given, but not above 0 (`zero`: not 0 or more). */
export function notAbove(input: Asked, keys: readonly string[], zero = false): readonly InputProblem[] {
  return keys.flatMap(key => {
    const measure = measureOf(input, key);
    if (measure === undefined || measure.si > 0 || (zero && measure.si === 0)) return [];
    return [wrong(key, zero ? '0 or more' : 'more than 0', measure.text, 'measure again and write it without a sign')];
  });
}

/** Given, but outside of what can be. Both ends SI, shown in `unit`; the ends themselves are allowed. */
export function outside(
  input: Asked,
  keys: readonly string[],
  [low, high]: readonly [number, number],
  unit: string,
  remedy: string,
): readonly InputProblem[] {
  return keys.flatMap(key => {
    const measure = measureOf(input, key);
    if (measure === undefined || (measure.si >= low && measure.si <= high)) return [];
    return [wrong(key, `${formatQuantity(low, unit)} to ${formatQuantity(high, unit)}`, measure.text, remedy)];
  });
}

/** Given, can be, and yet not what the formula was checked for. */
export function unusual(
  input: Asked,
  keys: readonly string[],
  [low, high]: readonly [number, number],
  unit: string,
): readonly string[] {
  return keys.flatMap(key => {
    const measure = measureOf(input, key);
    if (measure === undefined || (measure.si >= low && measure.si <= high)) return [];
    return [
      `Outside the range this was checked for: ${key} ${measure.text}, usually ${formatQuantity(low, unit)} to ${formatQuantity(high, unit)} (common practice).`,
    ];
  });
}

/** A name and its two sides. */
export const withSides = (name: string): readonly string[] => [name, `${name} left`, `${name} right`];
