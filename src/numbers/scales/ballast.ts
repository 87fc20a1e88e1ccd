/** How much ballast at which place: the least that meets a least mass and the wanted shares. */
import { type Column, minimise } from './linear-program.ts';

/** Something that is averaged over mass: a share of the scales, a place along an axis. Wanted between `low` and `high`. */
export type Aim = {
  readonly now: number; // its mean without the ballast
  readonly at: readonly number[]; // its value for a mass at each place
  readonly low: number;
  readonly high: number;
};

export type BallastWish = {
  readonly mass: number; // without the ballast [kg]
  readonly least: number; // with it, at least [kg]
  readonly most: readonly number[]; // at each place, at most [kg]: what fits, or one piece
  readonly aims: readonly Aim[];
};

export type Ballast = {
  readonly masses: readonly number[]; // at each place [kg]
  readonly total: number; // of the ballast [kg]
  readonly massShort: number; // still under the least mass, with all places full [kg]; 0 when met
  readonly aims: readonly {
    readonly reached: number;
    /** Mass times the aim's unit that is still missing: above 0 where it stays too low, below 0 where too high; 0 when met. */
    readonly missing: number;
  }[];
  readonly met: boolean;
};

/**
 * The least ballast that meets every wish; where that cannot be, the least that comes nearest, and by how much it misses.
 *   minimise Σ m  with  Σ m >= least - M,  Σ m (q - low) >= -M (q0 - low),  Σ m (q - high) <= -M (q0 - high),  0 <= m <= most
 * m ballast at a place [kg]; M mass without it [kg]; q value of the aim there, q0 its mean now. The optimum is exact, at a
 * corner: no more places are part-filled than there are demands. First the mass, then the aims, then the least ballast.
 * Nearest means the least sum of what is missing over the aims. Valid where ballast leaves warp alone. Source: ballast-lp.
 */
export function leastBallast(wish: BallastWish): Ballast {
  const fits = wish.most.reduce((total, most) => total + most, 0);
  const deficit = Math.max(0, wish.least - wish.mass);
  const demands = [
    { adds: wish.most.map(() => 1), right: Math.min(deficit, fits), sense: 1 as const, aim: -1 },
    ...wish.aims.flatMap((aim, n) => demandsOf(wish.mass, aim, n)),
  ];
  const right = demands.map(demand => demand.right);
  const only = (row: number, value: number): readonly number[] => right.map((_, r) => (r === row ? value : 0));
  const slack = demands.flatMap(({ sense }, row): Column[] =>
    sense === 0 ? [] : [{ cost: 0, most: Number.POSITIVE_INFINITY, adds: only(row, -sense) }],
  );
  // What an aim may miss by, below and above; the mass demand has none, for it was cut to what fits.
  const misses = demands.flatMap(({ sense, aim }, row) =>
    aim < 0 ? [] : [1, -1].filter(sign => sense === 0 || sign === sense).map(sign => ({ row, sign, aim })),
  );
  const program = (costs: { readonly ballast: number; readonly miss: number }, least?: readonly number[]) =>
    optimum(
      [
        ...wish.most.map(
          (most, n): Column => ({ cost: costs.ballast, most, adds: demands.map(({ adds }) => adds[n] ?? 0) }),
        ),
        ...slack,
        ...misses.map(
          ({ row, sign }, n): Column => ({
            cost: costs.miss,
            most: least?.[n] ?? Number.POSITIVE_INFINITY,
            adds: only(row, sign),
          }),
        ),
      ],
      right,
    );
  const nearest = program({ ballast: 0, miss: 1 }).slice(-misses.length || Number.POSITIVE_INFINITY);
  const least = nearest.map(value => (value < 1e-9 ? 0 : value));
  const masses = program({ ballast: 1, miss: 0 }, least).slice(0, wish.most.length);
  const total = masses.reduce((sum, mass) => sum + mass, 0);
  const aims = wish.aims.map(({ now, at }, n) => ({
    reached: (wish.mass * now + masses.reduce((sum, mass, p) => sum + mass * (at[p] ?? 0), 0)) / (wish.mass + total),
    missing: misses.reduce((sum, { aim, sign }, k) => (aim === n ? sum + sign * (least[k] ?? 0) : sum), 0),
  }));
  const massShort = Math.max(0, deficit - fits);
  return { masses, total, massShort, aims, met: massShort === 0 && aims.every(({ missing }) => missing === 0) };
}

/** One demand where both ends are the same, else one for each end. `sense` 1: at least; -1: at most; 0: just that. */
function demandsOf(mass: number, { now, at, low, high }: Aim, aim: number) {
  const demand = (end: number, sense: 1 | 0 | -1) => ({
    adds: at.map(value => value - end),
    right: mass * (end - now),
    sense,
    aim,
  });
  return low === high ? [demand(low, 0)] : [demand(low, 1), demand(high, -1)];
}

function optimum(columns: readonly Column[], right: readonly number[]): readonly number[] {
  const found = minimise(columns, right);
  if (found.kind === 'infeasible')
    throw new Error(`leastBallast: masses and aims must be finite numbers, got demands missed by ${found.short}`);
  return found.values;
}

/**
 * A known mass split between two places so that the centre of gravity comes to a target.
 *   m1 = ((M + m) xt - M x0 - m x2)/(x1 - x2);  m2 = m - m1
 * M mass without it [kg] at x0 [m]; m ballast [kg]; x1, x2 the places [m]; xt wanted [m]. Below 0 or above m: the target
 * lies outside what these places reach. Valid where x1 is not x2. Source: ballast-lp.
 */
export function splitBallast(
  base: { readonly mass: number; readonly at: number },
  ballast: number,
  places: readonly [number, number],
  target: number,
): readonly [number, number] {
  const [one, two] = places;
  const first = ((base.mass + ballast) * target - base.mass * base.at - ballast * two) / (one - two);
  return [first, ballast - first];
}
