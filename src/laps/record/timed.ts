/** From what a log gave to what the book keeps of it: times, gates and how long the kart moved. */
import { type BookGate, isFull, type TimedLap } from '../../book/index.ts';
import { type Gate, type Laps, lineOf, type Motion, planeAt, type Span } from '../find/index.ts';

/** Every way out, lap and way in, as driven. An outing without a crossing is one way out. */
export const timedOf = ({ outings }: Laps, { step }: Motion): readonly TimedLap[] =>
  outings.flatMap(({ laps, from, to, out = { from, to }, in: back }, n): readonly TimedLap[] => {
    const outing = n + 1;
    /** A recording begins and ends somewhere between two fixes. */
    const way = (span: Span, way: 'out' | 'in'): readonly TimedLap[] =>
      span.to > span.from
        ? [{ time: rounded(span.to - span.from, DIGITS), spread: rounded(step, DIGITS), way, outing }]
        : [];
    const full = laps.map(
      ({ time, spread, sectors, doubts }): TimedLap => ({
        time: rounded(time, DIGITS),
        spread: rounded(spread, DIGITS),
        outing,
        ...(sectors.length > 1 && {
          sectors: sectors.map(each => (each === undefined ? null : rounded(each, DIGITS))),
        }),
        ...(doubts.length > 0 && { doubts: [...doubts] }),
      }),
    );
    return [...way(out, 'out'), ...full, ...(back ? way(back, 'in') : [])];
  });

/** @param numbers of full laps, from 1, that a person marked as not counting */
export function withMarks(times: readonly TimedLap[], numbers: readonly number[]): readonly TimedLap[] {
  let full = 0;
  return times.map(lap => (isFull(lap) && numbers.includes(++full) ? { ...lap, marked: true } : lap));
}

/** A tenth of a millisecond: what a noise-free log leaves. */
const DIGITS = 4;
/** A centimetre. */
const PLACE_DIGITS = 7;
const DEGREE = Math.PI / 180;

export const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

export function gateForBook({ left, right }: Gate): BookGate {
  const degrees = (place: Gate['left']): [number, number] => [
    rounded(place.lat / DEGREE, PLACE_DIGITS),
    rounded(place.lon / DEGREE, PLACE_DIGITS),
  ];
  return { left: degrees(left), right: degrees(right) };
}

export function gateFromBook({ left, right }: BookGate): Gate {
  const place = ([lat, lon]: readonly [number, number]): Gate['left'] => ({ lat: lat * DEGREE, lon: lon * DEGREE });
  return { left: place(left), right: place(right) };
}

/** Why two points are no gate, undefined when they are one. */
export function gateFault(gate: BookGate): string | undefined {
  const { left, right } = gateFromBook(gate);
  try {
    lineOf({ left, right }, planeAt(left));
    return undefined;
  } catch (error) {
    return (error as Error).message.replace(/^lineOf: gate must be/, 'a gate');
  }
}

/** How long the kart moved and how far: what its parts have worked. Over a hole it is not known to have moved. */
export function movingOf({ time, x, y, vx, vy, hole }: Motion): { readonly minutes: number; readonly metres: number } {
  let [seconds, metres] = [0, 0];
  for (let n = 0; n + 1 < time.length; n++) {
    const step = (time[n + 1] as number) - (time[n] as number);
    if (step > Math.max(hole, SHORT_HOLE) || Math.hypot(vx[n] as number, vy[n] as number) < WALKING) continue;
    seconds += step;
    metres += Math.hypot((x[n + 1] as number) - (x[n] as number), (y[n + 1] as number) - (y[n] as number));
  }
  return { minutes: rounded(seconds / 60, 2), metres: Math.round(metres) };
}

/** A kart under way does not stop and start within it, s. */
const SHORT_HOLE = 10;
/** As where laps are told from standing still, m/s. */
const WALKING = 1.5;
