/** Which figures of an answer are read first, and which only stand behind them. */
import type { Answer, Figure, Subject } from './subject.ts';

type Named = readonly [name: string, figure: Figure];

/** In the order of the answer. What no subject puts behind is read first; where all would stand behind, all are. */
export function readFirst(
  { behind = [] }: Pick<Subject, 'behind'>,
  { figures }: Pick<Answer, 'figures'>,
): { readonly first: readonly Named[]; readonly rest: readonly Named[] } {
  const all = Object.entries(figures);
  const first = all.filter(([name]) => !behind.some(pattern => fits(pattern, name)));
  if (first.length === 0) return { first: all, rest: [] };
  return { first, rest: all.filter(one => !first.includes(one)) };
}

const fits = (pattern: string, name: string): boolean =>
  pattern.endsWith('*') ? name.startsWith(pattern.slice(0, -1)) : name === pattern;
