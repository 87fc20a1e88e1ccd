/**
 * Drag and rolling resistance, from rolling out with the clutch pulled on the straight. With M (v0 - v) = f t + c ∫ v² dt
 * speed is a straight line in both, which least squares find:
 *
 *   v = v0 - (f / M) t - (c / M) Q,  Q = ∫ v² dt;  rolling = f / (m g),  drag area = 2 c / rho
 *
 * M mass with axle and wheels [kg], f rolling force [N], c drag [N s²/m²], Q [m²/s]; v0 each stretch has of its own. Errors
 * that go on from fix to fix widen the spread by √((1 + r) / (1 - r)), r what follows from one to the next. Wind and slope are in
 * it: drive it both ways. Source: Newton's law integrated once, case A4 of checks/rows/laps-predict.json.
 */
import { forcesOf } from '../forces.ts';
import type { LapKart } from '../kart.ts';
import { type FitLog, type Fitted, type Stretch, stretches, unknown } from './log.ts';

const STRAIGHT = 1 / 150; // 1/m
const HARDEST = 3.5; // m/s², more than this is braking
const LONG = 3; // s
/** The engine turns with the wheels while speed over its speed changes by less. */
const COUPLED = 0.04;
/** Fastest over slowest that tell drag from rolling. */
const RANGE = 1.4;

export type Coasted = { readonly dragArea: Fitted; readonly rolling: Fitted };

export function fitCoast(log: FitLog, kart: LapKart): Coasted {
  const { speed, ahead, curvature } = log;
  const rolled = stretches(log, LONG, fix => {
    const slows = -(ahead[fix] as number);
    return (
      (speed[fix] as number) > 5 && Math.abs(curvature[fix] as number) < STRAIGHT && slows > 0.05 && slows < HARDEST
    );
  }).filter(stretch => !coupled(log, stretch));
  const both = (why: string): Coasted => ({ dragArea: unknown(why), rolling: unknown(why) });
  if (rolled.length === 0)
    return both(
      `Nowhere the kart rolls out on the straight for ${LONG} s with the clutch pulled: do so once or twice each way.`,
    );
  const [slowest, fastest] = ends(rolled.map(({ from, to }) => speed.subarray(from, to)));
  if (!(fastest > RANGE * slowest))
    return both(
      `Rolled out from ${fastest.toFixed(0)} to ${slowest.toFixed(0)} m/s only: drag is not told from rolling.`,
    );
  const { slopes, spreads } = leastSquares(log, rolled);
  const mass = 1 / forcesOf(kart).perRolls;
  const seconds = rolled.reduce(
    (sum, { from, to }) => sum + (log.time[to - 1] as number) - (log.time[from] as number),
    0,
  );
  const trust = log.rotation === undefined ? '; that the clutch was pulled is taken on trust' : '';
  const rests = `${rolled.length} times rolled out, ${seconds.toFixed(0)} s in all${trust}`;
  const said = (n: 0 | 1, per: number): Fitted =>
    slopes[n] > 0
      ? { kind: 'fitted', value: slopes[n] * mass * per, spread: spreads[n] * mass * per, rests }
      : unknown('What was rolled out says less than nothing of it: too short, or wind from behind.');
  return { rolling: said(0, 1 / (kart.mass * kart.gravity)), dragArea: said(1, 2 / kart.air) };
}

function coupled({ speed, rotation }: FitLog, { from, to }: Stretch): boolean {
  if (rotation === undefined) return false;
  const turns = rotation.subarray(from, to).map((each, n) => each / (speed[from + n] as number));
  const [least, most] = ends([turns]);
  return most < least * (1 + 2 * COUPLED);
}

/** Least and most of all; a day of fixes is more than arguments a call may have. NaN where one is none. */
function ends(lists: readonly Float64Array[]): readonly [least: number, most: number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const list of lists)
    for (const each of list) {
      least = Math.min(least, each);
      most = Math.max(most, each);
    }
  return [least, most];
}

type Two = readonly [number, number];

/** Slopes of -v by time and by Q, each stretch about its own middle. */
function leastSquares(
  { time, speed }: FitLog,
  rolled: readonly Stretch[],
): { readonly slopes: Two; readonly spreads: Two } {
  const rows = rolled.map(({ from, to }) => {
    let way = 0;
    const points = Array.from({ length: to - from }, (_, n): readonly [number, number, number] => {
      const fix = from + n;
      const h = n === 0 ? 0 : (time[fix] as number) - (time[fix - 1] as number);
      if (n > 0) way += (h * ((speed[fix] as number) ** 2 + (speed[fix - 1] as number) ** 2)) / 2;
      return [(time[fix] as number) - (time[from] as number), way, -(speed[fix] as number)];
    });
    const mean = [0, 1, 2].map(of => points.reduce((sum, point) => sum + (point[of] as number), 0) / points.length);
    return points.map(point => point.map((value, of) => value - (mean[of] as number)) as [number, number, number]);
  });
  const all = rows.flat();
  const sum = (of: (row: readonly [number, number, number]) => number): number =>
    all.reduce((total, row) => total + of(row), 0);
  const [tt, tq, qq] = [sum(([t]) => t * t), sum(([t, q]) => t * q), sum(([, q]) => q * q)];
  const [tv, qv] = [sum(([t, , v]) => t * v), sum(([, q, v]) => q * v)];
  const whole = tt * qq - tq * tq;
  const slopes: Two = [(qq * tv - tq * qv) / whole, (tt * qv - tq * tv) / whole];
  const rest = ([t, q, v]: readonly [number, number, number]): number => v - slopes[0] * t - slopes[1] * q;
  const rests = rows.map(stretch => stretch.map(rest));
  const squares = rests.flat().reduce((total, one) => total + one * one, 0);
  const next = rests.reduce(
    (total, list) => total + list.slice(1).reduce((sub, one, n) => sub + one * (list[n] as number), 0),
    0,
  );
  const follows = Math.min(0.99, Math.max(0, next / squares || 0));
  const variance = (squares / Math.max(1, all.length - 2 - rows.length)) * ((1 + follows) / (1 - follows));
  return { slopes, spreads: [Math.sqrt((variance * qq) / whole), Math.sqrt((variance * tt) / whole)] };
}
