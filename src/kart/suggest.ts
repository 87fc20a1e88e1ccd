/**
 * The word most likely meant: the nearest of `among` by edit distance (insert, delete, change, or exchange of two
 * neighbours), if it is near enough to be a slip: at most a third of the letters and never more than 3.
 * Undefined when nothing is near, or when `word` itself is among them.
 */
export function suggest(word: string, among: Iterable<string>): string | undefined {
  const wanted = plain(word);
  const reach = Math.min(3, Math.max(1, Math.floor(wanted.length / 3)));
  let best: string | undefined;
  let least = reach + 1;
  for (const candidate of among) {
    if (candidate === word) return undefined;
    if (Math.abs(candidate.length - word.length) > reach + 2) continue;
    const distance = edits(wanted, plain(candidate));
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

/** A remedy in words: the nearest name, else the whole list while it is short. */
export function didYouMean(word: string, among: Iterable<string>, otherwise: string): string {
  const list = [...among];
  const near = suggest(word, list);
  if (near !== undefined) return `did you mean "${near}"? Else ${otherwise}`;
  return list.length > 0 && list.length <= 24 ? `${otherwise}; known here: ${list.join(', ')}` : otherwise;
}

const plain = (word: string): string =>
  word
    .toLowerCase()
    .replace(/[-_\s]+/g, ' ')
    .trim();

/** Optimal string alignment distance. */
function edits(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      next.push(cost);
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? 0;
}
