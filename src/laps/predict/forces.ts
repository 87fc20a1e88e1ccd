/**
 * What pushes and holds the kart, as the change of z = v² along the way, which is twice the acceleration:
 *
 *   grip        (Fx / Fx,max)² + (m z |k| / (mu_y N))² <= 1,  N = m g + rho ClA z / 2,  mu = mu0 (N / N0)^-p
 *   resistance  R = rho CdA z / 2 + Crr N + m z |k| (s0 + s1 |k|)
 *   driving     dz/ds = 2 min[(F_engine - R) / m_eff, (Fx,max sqrt(e) - R) / m]: below 0 where no grip is left to beat R
 *   braking     dz/ds = -2 (min(Fx,max sqrt(e), cap) + R) / m
 *   shifting    dz/ds = -2 R / (m + J_wheel / r²)
 *
 * k curvature [1/m], N load [N], e what cornering leaves of the ellipse [1], m_eff mass with all that turns along [kg].
 * Source: point mass on a given line, quasi-steady, Lenzo and Rossi 2020 (read, in part); the terms as this project
 * defines them, whose figures were worked outside it.
 */
import { type LapKart, ratioOf } from './kart.ts';

/** All that does not change while a lap is reckoned. */
export type Forces = {
  readonly mass: number;
  readonly weight: number; // N
  readonly lift: number; // N s²/m², load more for each z
  readonly drag: number; // N s²/m²
  readonly rolling: number;
  readonly flat: number; // scrub
  readonly tight: number;
  /** Load^power times these is a force [N]. */
  readonly power: number;
  readonly still: number; // weight^power
  readonly side: number;
  readonly drive: number;
  readonly brake: number;
  readonly brakeCap: number; // N
  /** One over: mass · mass with axle and wheels [1/kg] · the most side force of a kart that is not pressed down [1/N]. */
  readonly perMass: number;
  readonly perRolls: number;
  readonly perSide: number;
  readonly speeds: Float64Array; // rad/s
  readonly torques: Float64Array; // N m
  readonly rises: Float64Array; // N m s, from each speed to the next
  readonly clutch: number; // rad/s
  /** By gear; behind the last one more, which does not pull: the engine past its limit. */
  readonly turns: Float64Array; // rad/m of the engine
  readonly pull: Float64Array; // N at the ground for 1 N m of the engine
  readonly perHeavy: Float64Array; // 1/kg, one over mass with all that turns
  readonly up: Float64Array; // z from which the next gear is better
  readonly down: Float64Array; // z below which the gear before is taken
  readonly limit: number; // z at which the last gear pulls no more
  readonly cap: number; // z
  readonly shiftTime: number; // s
};

/** Instead of a gear. */
export const COAST = -1;
export const BRAKE = -2;

/** A gear is let go downwards only this far below the speed of its upshift, in speed: common practice. */
const HOLD = 0.97;

export function forcesOf(kart: LapKart): Forces {
  const { mass, gravity, air, grip, engine, gearing, wheel } = kart;
  const weight = mass * gravity;
  const power = 1 - grip.fall;
  const level = (grip.atMass * gravity) ** grip.fall;
  const count = gearing.gears.length;
  const speeds = Float64Array.from(engine.speeds);
  const torques = Float64Array.from(engine.torques, torque => torque * engine.scale);
  const rises = new Float64Array(speeds.length);
  for (let n = 0; n + 1 < speeds.length; n++)
    rises[n] =
      ((torques[n + 1] as number) - (torques[n] as number)) / ((speeds[n + 1] as number) - (speeds[n] as number));
  const [turns, pull, perHeavy] = [
    new Float64Array(count + 1),
    new Float64Array(count + 1),
    new Float64Array(count + 1),
  ];
  const rolls = mass + wheel.inertia / wheel.radius ** 2;
  for (let gear = 0; gear <= count; gear++) {
    const ratio = ratioOf(gearing, gearing.gears[Math.min(gear, count - 1)] as number);
    turns[gear] = ratio / wheel.radius;
    pull[gear] = gear < count ? (ratio * gearing.efficiency) / wheel.radius : 0;
    perHeavy[gear] = 1 / (rolls + engine.inertia * (turns[gear] as number) ** 2);
  }
  const before = {
    ...{ mass, weight, power, speeds, torques, rises, turns, pull, perHeavy },
    perMass: 1 / mass,
    perRolls: 1 / rolls,
    perSide: 1 / (grip.side * level * weight ** power),
    lift: 0.5 * air * kart.downforceArea,
    drag: 0.5 * air * kart.dragArea,
    rolling: kart.rolling,
    flat: kart.scrub.flat,
    tight: kart.scrub.tight,
    still: weight ** power,
    side: grip.side * level,
    drive: grip.driveShare * grip.along * level,
    brake: grip.brakeShare * grip.along * level,
    brakeCap: kart.brakeCap,
    clutch: engine.clutch,
    limit: (engine.limit / (turns[count - 1] as number)) ** 2,
    cap: kart.speedCap ** 2,
    shiftTime: engine.shiftTime,
  };
  const up = upshifts(before, kart);
  return { ...before, up, down: up.map((_, gear) => (gear === 0 ? 0 : HOLD ** 2 * (up[gear - 1] as number))) };
}

/** What holds a rolling kart back, N. */
export const resistance = (f: Forces, z: number, k: number): number =>
  f.drag * z + f.rolling * (f.weight + f.lift * z) + f.mass * z * k * (f.flat + f.tight * k);

/** At the ground, N; the first gear slips the clutch. */
export function engineForce(f: Before, v: number, gear: number): number {
  let speed = v * (f.turns[gear] as number);
  if (gear === 0 && speed < f.clutch) speed = f.clutch;
  return torqueAt(f, speed) * (f.pull[gear] as number);
}

function torqueAt({ speeds, torques, rises }: Before, speed: number): number {
  let low = 0;
  let high = speeds.length - 1;
  if (speed <= (speeds[0] as number)) return torques[0] as number;
  if (speed >= (speeds[high] as number)) return torques[high] as number;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (speed < (speeds[middle] as number)) high = middle;
    else low = middle;
  }
  return (torques[low] as number) + (rises[low] as number) * (speed - (speeds[low] as number));
}

/** The largest z at which a bend of this curvature can be held. */
export function lateralLimit(f: Forces, k: number): number {
  const inward = f.mass * k;
  if (f.lift === 0) return Math.min(f.cap, (f.side * f.still) / inward); // k = 0: no limit but the cap
  const excess = (z: number): number => inward * z - f.side * Math.max(0, f.weight + f.lift * z) ** f.power;
  if (excess(f.cap) <= 0) return f.cap;
  let [low, high, z] = [0, f.cap, f.cap];
  for (let turn = 0; turn < 100; turn++) {
    const load = f.weight + f.lift * z;
    const over = excess(z);
    if (over > 0) high = z;
    else low = z;
    // Newton's step where it stays between, else the half.
    const newton = z - over / (inward - f.side * f.power * f.lift * Math.max(load, 0) ** (f.power - 1));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - z) <= 1e-14 * z) break;
    z = next;
  }
  return z;
}

/** The gear a kart is in that was braked down to z. */
export function gearFor({ up }: Forces, z: number): number {
  let gear = 0;
  while (z >= (up[gear] as number)) gear++;
  return gear;
}

type Before = Omit<Forces, 'up' | 'down'>;

/** The first speed, from that of the most power on, at which the next gear pulls as hard, held below `shiftBy`. */
function upshifts(f: Before, { engine, gearing }: LapKart): Float64Array {
  const best = engine.speeds.reduce((at, speed, n) => {
    const power = (of: number): number => (engine.speeds[of] as number) * (engine.torques[of] as number);
    return speed * (engine.torques[n] as number) > power(at) ? n : at;
  }, 0);
  return Float64Array.from(gearing.gears, (_, gear) => {
    if (gear === gearing.gears.length - 1) return Number.POSITIVE_INFINITY;
    const turns = f.turns[gear] as number;
    const force = (v: number, of: number): number => engineForce(f, v, of);
    const better = (v: number): boolean => force(v, gear + 1) >= force(v, gear);
    let high = engine.shiftBy / turns;
    let low = Math.min(high, (engine.speeds[best] as number) / turns);
    if (!better(high)) return high ** 2;
    if (better(low)) return low ** 2;
    for (let turn = 0; turn < 50; turn++) {
      const middle = (low + high) / 2;
      if (better(middle)) high = middle;
      else low = middle;
    }
    return high ** 2;
  });
}
