/** A person as a name: who wrote under it, and where it stands in a text. */

export type Named = {
  /** Is this name theirs? */
  is(name: string): boolean;
  /** [from, how many] of the letters, as UTF-16 counts them. */
  places(text: string): [number, number][];
  barred(text: string): string;
};

/** A shorter name is also a word or part of one, so it is not looked for in texts. */
const LEAST = 3;

/** Undefined for a name without a letter. */
export function named(person: string): Named | undefined {
  const name = person.trim();
  if (!/[\p{L}\p{N}]/u.test(name) || name.length > 200) return undefined;
  const words = name.split(/\s+/).map(word => word.replace(/[.*+?^${}()|[\]\\/-]/g, '\\$&'));
  const found = new RegExp(`(?<![\\p{L}\\p{N}])${words.join('\\s+')}(?![\\p{L}\\p{N}])`, 'giu');
  const places = (text: string): [number, number][] =>
    name.length < LEAST ? [] : [...text.matchAll(found)].map(one => [one.index, one[0].length]);
  return {
    is: other => other.trim().toLowerCase() === name.toLowerCase(),
    places,
    barred: text => (name.length < LEAST ? text : text.replace(found, one => one.replace(/[^\n]/g, '█'))),
  };
}
