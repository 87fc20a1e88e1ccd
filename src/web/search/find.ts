/** One search over everything: what can be found, and in which order it is shown. */

export const SORTS = ['page', 'step', 'part', 'joint', 'check', 'number', 'event', 'session', 'entry'] as const;
export type Sort = (typeof SORTS)[number];

export type Thing = {
  readonly sort: Sort;
  readonly title: string;
  /** Beside the title: the part of a joint, the day of an entry. Searched too, but counts less. */
  readonly under: string;
  readonly hash: string;
};
export type Prepared = Thing & { readonly words: string; readonly more: string };
export type Found = { readonly sort: Sort; readonly all: number; readonly first: readonly Thing[] };

const EACH = 8;

/** Done once for a book: what is typed letter by letter only compares. */
export const prepared = (things: readonly Thing[]): readonly Prepared[] =>
  things.map(thing => ({ ...thing, words: bare(thing.title), more: bare(`${thing.title} ${thing.under}`) }));

/** Every word has to be there, in any order. Best first within a sort; the sort of the best one first. */
export function find(things: readonly Prepared[], typed: string): readonly Found[] {
  const wanted = bare(typed).split(' ').filter(Boolean);
  if (wanted.length === 0) return [];
  const hits = new Map<Sort, { thing: Thing; score: number }[]>();
  for (const thing of things) {
    const score = scoreOf(thing, wanted);
    if (score > 0) hits.set(thing.sort, [...(hits.get(thing.sort) ?? []), { thing, score }]);
  }
  const best = (sort: Sort): number => Math.max(...(hits.get(sort) ?? []).map(({ score }) => score));
  return SORTS.filter(sort => hits.has(sort))
    .toSorted((a, b) => best(b) - best(a))
    .map(sort => {
      const all = (hits.get(sort) ?? []).toSorted((a, b) => b.score - a.score);
      return { sort, all: all.length, first: all.slice(0, EACH).map(({ thing }) => thing) };
    });
}

/** 0: a word is missing. A title that is what was typed, then that begins with it, then words that begin so, then inside a word. */
function scoreOf({ words, more }: Prepared, wanted: readonly string[]): number {
  let score = 0;
  for (const word of wanted) {
    if (!more.includes(word)) return 0;
    score += begins(words, word) ? 4 : words.includes(word) ? 3 : begins(more, word) ? 2 : 1;
  }
  const phrase = wanted.join(' ');
  const whole = words === phrase ? 3 : words.startsWith(phrase) ? 2 : words.includes(phrase) ? 1 : 0;
  return score / wanted.length + whole;
}

const begins = (text: string, word: string): boolean => text.startsWith(word) || text.includes(` ${word}`);

/** Without case, accents and signs between words: 'Gap, left' is found by 'gap left'. */
const bare = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}.]+/gu, ' ')
    .trim();
