/** One quantity of one or two laps over the distance: lines, a mark where a person points, and numbers on both axes. */

import { Label, Plate, SHEET_WIDTH } from '../drawing/lines.tsx';
import { type Axes, type Line, PlotFrame, PlotLine, plotX, roundSteps } from '../drawing/plot.tsx';

export type Trace = {
  readonly name: string;
  readonly look: Line['look'];
  readonly x: Float64Array | readonly number[];
  readonly y: Float64Array | readonly number[];
};

/** More are not seen across a phone or a bench screen. */
const MOST = 700;

export function Traces(props: {
  readonly title: string;
  readonly traces: readonly Trace[];
  readonly unit: string;
  readonly height?: number;
  /** A place on the axis across. */
  readonly at?: number;
  readonly zero?: boolean; // the axis up holds 0
}) {
  const { title, traces, unit, height = 150, at, zero = false } = props;
  const [low, high] = rangeOf(traces.map(({ y }) => y));
  const [left, right] = rangeOf(traces.map(({ x }) => x));
  if (!(right > left)) return null;
  const steps = roundSteps(zero ? Math.min(low, 0) : low, (zero ? Math.max(high, 0) : high) + 1e-9, 5);
  const step = (steps[1] ?? 1) - (steps[0] ?? 0);
  const axes: Axes = {
    x: [left, right],
    y: [
      (steps[0] ?? low) - (low < (steps[0] ?? low) ? step : 0),
      (steps.at(-1) ?? high) + (high > (steps.at(-1) ?? high) ? step : 0),
    ],
    height,
    top: 24,
  };
  return (
    <Plate height={height + 50} title={title}>
      <Label x={4} y={12} anchor="start" text={unit} look="quiet" />
      <PlotFrame axes={axes} unit=" m" />
      {traces.map(({ name, look, x, y }) => (
        <PlotLine key={name} line={{ name, look, points: thinned(x, y, MOST) }} axes={axes} />
      ))}
      {at !== undefined && (
        <line class="thin" x1={plotX(at, axes)} x2={plotX(at, axes)} y1={axes.top} y2={axes.top + height} />
      )}
      <Label x={SHEET_WIDTH - 4} y={12} anchor="end" text={traces.map(({ name }) => name).join(' · ')} look="quiet" />
    </Plate>
  );
}

/** Lowest and highest of numbers that are some. */
function rangeOf(all: readonly (Float64Array | readonly number[])[]): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const values of all)
    for (const value of values) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  return [low, high];
}

/** Of each stretch the lowest and the highest, in their order: no peak is lost. */
export function thinned(
  x: Float64Array | readonly number[],
  y: Float64Array | readonly number[],
  most: number,
): readonly (readonly [number, number])[] {
  const at = (n: number): readonly [number, number] => [x[n] as number, y[n] as number];
  if (x.length <= most) return Array.from({ length: x.length }, (_, n) => at(n));
  const stretches = Math.floor(most / 2);
  return Array.from({ length: stretches }, (_, k) => {
    const [from, to] = [Math.floor((k * x.length) / stretches), Math.floor(((k + 1) * x.length) / stretches)];
    let [low, high] = [from, from];
    for (let n = from; n < to; n++) {
      if ((y[n] as number) < (y[low] as number)) low = n;
      if ((y[n] as number) > (y[high] as number)) high = n;
    }
    return low === high ? [at(low)] : low < high ? [at(low), at(high)] : [at(high), at(low)];
  }).flat();
}
