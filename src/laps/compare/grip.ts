/**
 * What the kart held: acceleration ahead and aside, the edge of the cloud by direction, and an ellipse through it.
 *
 *   a_y = v² κ, a_x = dv/dt from `smooth`, aside taken to one side;  in each of 12 directions of 15 degrees from full braking to full drive
 *   the 95 % quantile of √(a_x² + a_y²);  (a_y / A)² + (a_x / B)² = 1, least squares in 1/A², 1/B²: A and B of braking from
 * the braking side, where tyres are the limit, then B of drive, where the engine may be
 *
 * A direction with fewer than 20 fixes says nothing. Driving laps reach some 95 % of what there is, and a smoother cuts peaks: the
 * kart holds somewhat more. Source: logs made for this project with known truth (computed); least squares.
 */
import type { Lap } from '../find/index.ts';
import type { Smooth } from './smooth.ts';

export type GripDirection = {
  readonly angle: number; // rad from straight aside, braking below 0, drive above
  readonly fixes: number;
  readonly reach?: number; // m/s², 95 of 100 are less; unknown for fewer than 20 fixes
};
export type GripUsed = {
  readonly directions: readonly GripDirection[];
  /** Half axes, m/s². Unknown where too few directions were driven. */
  readonly aside?: number;
  readonly drive?: number;
  readonly braking?: number;
};

const DIRECTIONS = 12;
const LEAST_FIXES = 20;
const SHARE = 0.95;
/** Slower, a course is chance, m/s. */
const SLOWEST = 4;

export function gripOf({ vx, vy, ax, ay }: Smooth, laps: readonly Pick<Lap, 'start' | 'end'>[]): GripUsed {
  const found: number[][] = Array.from({ length: DIRECTIONS }, () => []);
  for (const { start, end } of laps)
    for (let n = start.fix + 1; n <= end.fix; n++) {
      const [x, y, p, q] = [vx[n], vy[n], ax[n], ay[n]] as [number, number, number, number];
      const speed = Math.hypot(x, y);
      if (!(speed >= SLOWEST)) continue;
      const [ahead, aside] = [(p * x + q * y) / speed, Math.abs(x * q - y * p) / speed];
      const turn = (Math.atan2(ahead, aside) + Math.PI / 2) / Math.PI;
      found[Math.min(DIRECTIONS - 1, Math.floor(turn * DIRECTIONS))]?.push(Math.hypot(ahead, aside));
    }
  const directions = found.map((reaches, n): GripDirection => {
    const angle = ((n + 0.5) / DIRECTIONS - 0.5) * Math.PI;
    const reach = reaches.length >= LEAST_FIXES ? quantile(reaches, SHARE) : undefined;
    return { angle, fixes: reaches.length, ...(reach === undefined ? {} : { reach }) };
  });
  return { directions, ...ellipseOf(directions) };
}

/** 1 = A⁻² a_y² + B⁻² a_x²: A and braking from the braking side, where tyres are the limit; drive then with that A. */
function ellipseOf(directions: readonly GripDirection[]): Pick<GripUsed, 'aside' | 'drive' | 'braking'> {
  const half = (side: -1 | 1): readonly (readonly [aside: number, ahead: number])[] =>
    directions.flatMap(({ angle, reach }) =>
      reach === undefined || Math.sign(angle) !== side
        ? []
        : [[(reach * Math.cos(angle)) ** 2, (reach * Math.sin(angle)) ** 2] as const],
    );
  const [braked, driven] = [half(-1), half(1)];
  if (braked.length < 3 || driven.length < 3) return {};
  const sum = (of: readonly (readonly [number, number])[], term: (y: number, x: number) => number): number =>
    of.reduce((all, [y, x]) => all + term(y, x), 0);
  const [yy, xx, xy] = [sum(braked, y => y * y), sum(braked, (_, x) => x * x), sum(braked, (y, x) => x * y)];
  const [y1, x1] = [sum(braked, y => y), sum(braked, (_, x) => x)];
  const det = yy * xx - xy * xy;
  const [a, braking] = [(y1 * xx - x1 * xy) / det, (x1 * yy - y1 * xy) / det];
  const drive = sum(driven, (y, x) => x * (1 - a * y)) / sum(driven, (_, x) => x * x);
  if (!(a > 0 && braking > 0 && drive > 0)) return {};
  return { aside: 1 / Math.sqrt(a), drive: 1 / Math.sqrt(drive), braking: 1 / Math.sqrt(braking) };
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const low = Math.floor(at);
  const [p, q] = [sorted[low] as number, sorted[Math.min(low + 1, sorted.length - 1)] as number];
  return p + (at - low) * (q - p);
}
