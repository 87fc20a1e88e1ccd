/**
 * An invented drive round an invented loop, whose lap times are known exactly: time is a formula of the angle driven, so a
 * crossing needs no search. With an error of place as receivers are taken to have: one that wanders, and a quick one.
 */
import type { Gate, Place } from '../src/laps/index.ts';

export type DriveOptions = {
  readonly laps?: number;
  readonly rate?: number; // fixes a second
  readonly at?: Place; // rad
  readonly turned?: number; // rad, the whole loop
  readonly later?: number; // s, on every time
  readonly seed?: number;
  readonly error?: { readonly slow: number; readonly memory: number; readonly quick: number; readonly speed: number };
};
/** As a file has it: s, degrees, m/s, degrees, rpm. */
export type DriveRow = {
  readonly time: number;
  readonly lat: number;
  readonly lon: number;
  readonly speed: number;
  readonly heading: number;
  readonly rpm: number;
};
export type Drive = {
  readonly rows: readonly DriveRow[];
  readonly gates: readonly [Gate, Gate];
  readonly laps: readonly { readonly start: number; readonly time: number; readonly sectors: readonly number[] }[];
};

const TURN = 2 * Math.PI;
const LAP = 38; // s, about
/** A third of a lap on: where the second gate stands. */
const SPLIT = TURN * 0.4;

export function drive({
  laps = 5,
  rate = 10,
  at = { lat: 0.7, lon: 0.2 },
  turned = 0,
  later = 0,
  seed = 1,
  error,
}: DriveOptions = {}): Drive {
  const random = randomOf(seed);
  const phase = TURN * random.even();
  const time = (angle: number): number =>
    later + 10 + LAP * (angle / TURN + 0.4) + 0.9 * Math.sin(3 * angle) + 0.5 * Math.sin(0.37 * angle + phase);
  const slow = (angle: number): number =>
    LAP / TURN + 2.7 * Math.cos(3 * angle) + 0.185 * Math.cos(0.37 * angle + phase);
  const [first, last] = [time(-0.4 * TURN), time((laps + 0.3) * TURN)];
  const keep = Math.exp(-1 / rate / (error?.memory ?? 1));
  const stir = (error?.slow ?? 0) * Math.sqrt(1 - keep * keep);
  let [east, north] = [(error?.slow ?? 0) * random.normal(), (error?.slow ?? 0) * random.normal()];
  let angle = -0.4 * TURN;
  const rows: DriveRow[] = [];
  for (let n = 0; first + (n + 0.31) / rate < last; n++) {
    const moment = first + (n + 0.31) / rate;
    for (let turn = 0, step = 1; turn < 40 && Math.abs(step) > 1e-14; turn++) {
      step = (time(angle) - moment) / slow(angle);
      angle -= step;
    }
    const { x, y, dx, dy } = loop(angle, turned);
    east = keep * east + stir * random.normal();
    north = keep * north + stir * random.normal();
    const quick = error?.quick ?? 0;
    const place = onEarth(at, x + east + quick * random.normal(), y + north + quick * random.normal());
    const speed = Math.hypot(dx, dy) / slow(angle) + (error?.speed ?? 0) * random.normal();
    const heading = (((Math.atan2(dx, dy) / TURN) * 360 + 360) % 360) + 0;
    rows.push({ time: moment, ...place, speed, heading, rpm: Math.round(speed * 400) });
  }
  const gate = (on: number): Gate => {
    const { x, y, dx, dy } = loop(on, turned);
    const long = Math.hypot(dx, dy);
    const side = (by: number) => radians(onEarth(at, x - (by * dy) / long, y + (by * dx) / long));
    return { left: side(7), right: side(-7) };
  };
  return {
    rows,
    gates: [gate(0), gate(SPLIT)],
    laps: Array.from({ length: laps }, (_, lap) => {
      const [a, b, c] = [time(lap * TURN), time(lap * TURN + SPLIT), time((lap + 1) * TURN)];
      return { start: a, time: c - a, sectors: [b - a, c - b] };
    }),
  };
}

/** Place on the loop and its change with the angle, m and m/rad. */
function loop(angle: number, turned: number) {
  const out = 120 + 25 * Math.cos(3 * angle + 1) + 12 * Math.sin(2 * angle);
  const more = -75 * Math.sin(3 * angle + 1) + 24 * Math.cos(2 * angle);
  const [cos, sin] = [Math.cos(angle + turned), Math.sin(angle + turned)];
  return { x: out * cos, y: out * sin, dx: more * cos - out * sin, dy: more * sin + out * cos };
}

/** Near enough for a few hundred metres, and the gates are placed by the same. */
function onEarth({ lat, lon }: Place, x: number, y: number): { readonly lat: number; readonly lon: number } {
  const [a, e2] = [6_378_137, 0.00669437999014];
  const root = Math.sqrt(1 - e2 * Math.sin(lat) ** 2);
  const degrees = 360 / TURN;
  return {
    lat: (lat + (y * root ** 3) / (a * (1 - e2))) * degrees,
    lon: (lon + (x * root) / (a * Math.cos(lat))) * degrees,
  };
}
const radians = ({ lat, lon }: Place): Place => ({ lat: (lat * TURN) / 360, lon: (lon * TURN) / 360 });

/** Mulberry32, and normal numbers by Box and Muller. */
function randomOf(seed: number) {
  let state = seed >>> 0;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return { even, normal: (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(TURN * even()) };
}
