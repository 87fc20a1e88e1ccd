/** Where the kart has been, for a map: as many lines as a place needs to be seen, however long the log is. */
import type { Motion, Point } from '../../laps/index.ts';

/** Points one after the other; NaN lifts the pen. */
export type Path = { readonly x: Float64Array; readonly y: Float64Array }; // m

/** So many cells lie along the longer side of the map: finer is not seen on a phone. */
const CELLS = 150;
/** The way through one cell is drawn so many times. */
const TIMES = 4;
/** m; a kart is not wider. */
const SMALLEST = 1.5;

export function outlineOf({ time, x, y, hole }: Motion): Path {
  const { low, size } = frameOf({ x, y });
  const cell = Math.max(SMALLEST, size / CELLS);
  const seen = new Map<number, number>();
  const [toX, toY]: [number[], number[]] = [[], []];
  let [last, lastFix, drawing] = [Number.NaN, 0, false];
  for (let n = 0; n < time.length; n++) {
    const [px, py] = [x[n] as number, y[n] as number];
    const here = Math.floor((px - low.x) / cell) * 65_536 + Math.floor((py - low.y) / cell);
    const jumped = n > 0 && (time[n] as number) - (time[lastFix] as number) > hole && n - lastFix === 1;
    lastFix = n;
    if (here === last && !jumped) continue;
    last = here;
    const times = (seen.get(here) ?? 0) + 1;
    seen.set(here, times);
    const draw = times <= TIMES;
    if (drawing && (!draw || jumped)) lift(toX, toY);
    if (draw) {
      toX.push(px);
      toY.push(py);
    }
    drawing = draw;
  }
  return { x: Float64Array.from(toX), y: Float64Array.from(toY) };
}

function lift(x: number[], y: number[]): void {
  x.push(Number.NaN);
  y.push(Number.NaN);
}

/** The square that holds a path: its lower left corner and its longer side, m. */
export function frameOf({ x, y }: Path): {
  readonly low: Point;
  readonly high: Point;
  readonly size: number;
} {
  const low = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
  const high = { x: Number.NEGATIVE_INFINITY, y: Number.NEGATIVE_INFINITY };
  for (let n = 0; n < x.length; n++) {
    const [px, py] = [x[n] as number, y[n] as number];
    if (!(Number.isFinite(px) && Number.isFinite(py))) continue;
    if (px < low.x) low.x = px;
    if (px > high.x) high.x = px;
    if (py < low.y) low.y = py;
    if (py > high.y) high.y = py;
  }
  return { low, high, size: Math.max(high.x - low.x, high.y - low.y) };
}
