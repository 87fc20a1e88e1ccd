/**
 * Place, speed and acceleration at every fix from all fixes before and behind it.
 *
 *   each way (east, north): state (x, v, a); between fixes h apart  x' = x + v h + a h²/2, v' = v + a h, a' = a, and jerk as white
 *   noise of density q adds  q [h⁵/20, h⁴/8, h³/6; h⁴/8, h³/3, h²/2; h³/6, h²/2, h]
 *   a fix sees x with s_x and, where the log has speed and course, v with s_v = √(0.1² + (0.007 speed)²)
 *   then backward: state += C (next smoothed - next foretold), C = P F' P_foretold⁻¹ (Rauch, Tung, Striebel)
 *
 * q 200 m²/s⁵, between 100 and 400 alike within a tenth; s_x quick error of the receiver [m]; s_v from 0.1 m/s and 0.4 degrees,
 * an assumption (memory). The slow error of the receiver moves whole laps and is not seen here; fixes that
 * jump away and come back were left out when the log was read.
 * Source: Kalman filter with constant acceleration, RTS smoother (memory); figures in smooth.test.ts.
 */
import type { Motion, Receiver } from '../find/index.ts';

export type Smooth = {
  readonly time: Float64Array; // s
  readonly x: Float64Array; // m east
  readonly y: Float64Array; // m north
  readonly vx: Float64Array; // m/s
  readonly vy: Float64Array;
  readonly ax: Float64Array; // m/s²
  readonly ay: Float64Array;
  /** One standard deviation of speed [m/s] and acceleration [m/s²], one way. */
  readonly speedSpread: Float64Array;
  readonly accelerationSpread: Float64Array;
};

const JERK = 200;
const SPEED_ERROR = 0.1; // m/s
const COURSE_ERROR = 0.007; // rad
/** What a kart did in a longer hole nobody knows: smoothing begins anew, s. */
const APART = 10;

/** @param doppler whether speed and course stand in the log; from places alone they say nothing new */
export function smooth(
  motion: Motion,
  { receiver: { quick }, doppler }: { readonly receiver: Pick<Receiver, 'quick'>; readonly doppler: boolean },
): Smooth {
  const { time } = motion;
  const count = time.length;
  const made = (): Float64Array => new Float64Array(count);
  const out = { x: made(), y: made(), vx: made(), vy: made(), ax: made(), ay: made() };
  const [speedSpread, accelerationSpread] = [made(), made()];
  for (let from = 0; from < count; ) {
    let to = from + 1;
    while (to < count && (time[to] as number) - (time[to - 1] as number) <= APART) to++;
    smoothStretch(motion, { from, to, quick, doppler }, { ...out, speedSpread, accelerationSpread });
    from = to;
  }
  return { time, ...out, speedSpread, accelerationSpread };
}

type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly quick: number;
  readonly doppler: boolean;
};
type Out = Omit<Smooth, 'time'>;

/** x, y, vx, vy, ax, ay, then the six of the covariance, which both ways share: xx, xv, xa, vv, va, aa. */
const WIDE = 12;

function smoothStretch(motion: Motion, { from, to, quick, doppler }: Stretch, out: Out): void {
  const { time, x, y, vx, vy } = motion;
  const foretold = new Float64Array(WIDE * (to - from));
  const known = new Float64Array(WIDE * (to - from));
  const now = new Float64Array(WIDE);
  now.set([x[from] as number, y[from] as number, vx[from] as number, vy[from] as number, 0, 0]);
  now.set([100, 0, 0, 100, 0, 400], 6); // next to nothing is known before the first fix
  for (let n = from; n < to; n++) {
    if (n > from) foretell(now, (time[n] as number) - (time[n - 1] as number));
    foretold.set(now, WIDE * (n - from));
    see(now, 0, { a: x[n] as number, b: y[n] as number, variance: quick ** 2 });
    if (doppler) {
      const speed = Math.hypot(vx[n] as number, vy[n] as number);
      const variance = SPEED_ERROR ** 2 + (COURSE_ERROR * speed) ** 2;
      see(now, 1, { a: vx[n] as number, b: vy[n] as number, variance });
    }
    known.set(now, WIDE * (n - from));
  }
  backward(time, { from, to, foretold, known });
  for (let n = from; n < to; n++) {
    const at = (k: number): number => known[WIDE * (n - from) + k] as number;
    (['x', 'y', 'vx', 'vy', 'ax', 'ay'] as const).forEach((name, k) => {
      out[name][n] = at(k);
    });
    out.speedSpread[n] = Math.sqrt(Math.max(at(9), 0));
    out.accelerationSpread[n] = Math.sqrt(Math.max(at(11), 0));
  }
}

/** State and covariance h later, in place: F s, F P F' + Q. */
function foretell(s: Float64Array, h: number): void {
  const half = (h * h) / 2;
  for (let way = 0; way < 2; way++) {
    const [v, a] = [s[2 + way] as number, s[4 + way] as number];
    s[way] = (s[way] as number) + v * h + a * half;
    s[2 + way] = v + a * h;
  }
  const [xx, xv, xa, vv, va, aa] = [s[6], s[7], s[8], s[9], s[10], s[11]] as Six;
  const q = JERK;
  const [ax, av] = [xa + h * va + half * aa, va + h * aa]; // new covariances with a
  const vx = xv + h * vv + half * va; // of new x with old v
  s[6] = xx + h * xv + half * xa + h * vx + half * ax + (q * h ** 5) / 20;
  s[7] = vx + h * ax + (q * h ** 4) / 8;
  s[8] = ax + (q * h ** 3) / 6;
  s[9] = vv + h * va + h * av + (q * h ** 3) / 3;
  s[10] = av + (q * h * h) / 2;
  s[11] = aa + q * h;
}
type Six = [number, number, number, number, number, number];

/** Row and column of each of three in the six. */
const PLACE = [
  [6, 7, 8],
  [7, 9, 10],
  [8, 10, 11],
] as const;

/** What is seen of place (0) or speed (1) both ways, taken into the state, in place. */
function see(
  s: Float64Array,
  what: 0 | 1,
  { a, b, variance }: { readonly a: number; readonly b: number; readonly variance: number },
): void {
  const [p0, p1, p2] = PLACE[what].map(k => s[k] as number) as [number, number, number];
  const total = (s[PLACE[what][what]] as number) + variance;
  const [east, north] = [a - (s[2 * what] as number), b - (s[2 * what + 1] as number)];
  const gains = [p0 / total, p1 / total, p2 / total];
  for (let k = 0; k < 3; k++) {
    s[2 * k] = (s[2 * k] as number) + (gains[k] as number) * east;
    s[2 * k + 1] = (s[2 * k + 1] as number) + (gains[k] as number) * north;
  }
  const row = [p0, p1, p2];
  for (let i = 0; i < 3; i++)
    for (let j = i; j < 3; j++) {
      const place = (PLACE[i] as readonly number[])[j] as number;
      s[place] = (s[place] as number) - (gains[i] as number) * (row[j] as number);
    }
}

/** What comes behind each fix, taken into it, from the last to the first; `known` becomes the smoothed states. */
function backward(
  time: Float64Array,
  {
    from,
    to,
    foretold,
    known,
  }: { readonly from: number; readonly to: number; readonly foretold: Float64Array; readonly known: Float64Array },
): void {
  const gain = new Float64Array(9);
  for (let n = to - 2; n >= from; n--) {
    const [here, next] = [WIDE * (n - from), WIDE * (n + 1 - from)];
    gainOf(known, here, { foretold, next, h: (time[n + 1] as number) - (time[n] as number) }, gain);
    for (let way = 0; way < 2; way++) {
      const off = [0, 1, 2].map(k => (known[next + 2 * k + way] as number) - (foretold[next + 2 * k + way] as number));
      for (let i = 0; i < 3; i++) {
        const at = here + 2 * i + way;
        for (let k = 0; k < 3; k++)
          known[at] = (known[at] as number) + (gain[3 * i + k] as number) * (off[k] as number);
      }
    }
    const less = [0, 1, 2, 3, 4, 5].map(k => (known[next + 6 + k] as number) - (foretold[next + 6 + k] as number));
    const lessAt = (i: number, j: number): number => less[((PLACE[i] as readonly number[])[j] as number) - 6] as number;
    for (let i = 0; i < 3; i++)
      for (let j = i; j < 3; j++) {
        let sum = 0;
        for (let k = 0; k < 3; k++)
          for (let l = 0; l < 3; l++) sum += (gain[3 * i + k] as number) * lessAt(k, l) * (gain[3 * j + l] as number);
        const at = here + ((PLACE[i] as readonly number[])[j] as number);
        known[at] = (known[at] as number) + sum;
      }
  }
}

/** C = P F' P_foretold⁻¹, row by row, by the adjugate of the three by three. */
function gainOf(
  known: Float64Array,
  here: number,
  { foretold, next, h }: { readonly foretold: Float64Array; readonly next: number; readonly h: number },
  gain: Float64Array,
): void {
  const half = (h * h) / 2;
  const [a, b, c, d, e, f] = [6, 7, 8, 9, 10, 11].map(k => foretold[next + k] as number) as Six;
  const [ia, ib, ic] = [d * f - e * e, c * e - b * f, b * e - c * d];
  const [id, ie, jf] = [a * f - c * c, b * c - a * e, a * d - b * b];
  const det = a * ia + b * ib + c * ic;
  for (let i = 0; i < 3; i++) {
    const [px, pv, pa] = (PLACE[i] as readonly number[]).map(k => known[here + k] as number) as [
      number,
      number,
      number,
    ];
    const [u, v, w] = [px + h * pv + half * pa, pv + h * pa, pa];
    gain[3 * i] = (u * ia + v * ib + w * ic) / det;
    gain[3 * i + 1] = (u * ib + v * id + w * ie) / det;
    gain[3 * i + 2] = (u * ic + v * ie + w * jf) / det;
  }
}
