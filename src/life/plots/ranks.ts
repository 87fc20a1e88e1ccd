/**
 * Where each failure goes on Weibull paper when others ran on: its rank put right for those, and the share at that rank.
 *
 *   i' = i + (n + 1 - i) / (1 + left);  F = (i' - 0.3) / (n + 0.4)
 *
 * i rank of the failure before, n all lives, left those of this age or more, this one among them. A failure comes before a
 * fine one of the same age. The line through these points is rank regression, not the likelihood's fit: they differ, and
 * say which. Source: Johnson 1964; Benard and Bos-Levenbach 1953; Abernethy, New Weibull Handbook, 2 (memory).
 */
import { ended, joined, type Life, mustBeLives } from '../life.ts';
import type { Weibull } from '../weibull/index.ts';

export type Ranked = { readonly age: number; readonly rank: number; readonly share: number };

export function rankedFailures(lives: readonly Life[]): readonly Ranked[] {
  mustBeLives('rankedFailures', lives);
  const all = [...joined(lives)].sort((a, b) => a.age - b.age || Number(ended(b)) - Number(ended(a)));
  let rank = 0;
  return all.flatMap((life, place): Ranked[] => {
    if (!ended(life)) return [];
    rank += (all.length + 1 - rank) / (1 + all.length - place);
    return [{ age: life.age, rank, share: (rank - 0.3) / (all.length + 0.4) }];
  });
}

/**
 * Least squares of ln age on ln(-ln(1 - F)): the classic line by ranks. Undefined for fewer than two ages.
 *
 *   β = Σ (y - ȳ)² / Σ (x - x̄)(y - ȳ);  ln η = x̄ - ȳ/β;   x = ln t, y = ln(-ln(1 - F))
 */
export function rankRegression(points: readonly Ranked[]): Weibull | undefined {
  const xs = points.map(({ age }) => Math.log(age));
  const ys = points.map(({ share }) => Math.log(-Math.log1p(-share)));
  const mean = (of: readonly number[]): number => of.reduce((sum, one) => sum + one, 0) / of.length;
  const [x0, y0] = [mean(xs), mean(ys)];
  const xy = xs.reduce((sum, x, n) => sum + (x - x0) * ((ys[n] ?? 0) - y0), 0);
  const yy = ys.reduce((sum, y) => sum + (y - y0) ** 2, 0);
  if (!(xy > 0)) return undefined;
  const shape = yy / xy;
  return { shape, scale: Math.exp(x0 - y0 / shape) };
}
