/** Quantities of one or two laps over the distance, each with its axis up: a frame that stands still, and a strip that moves in it. */
import { Label, SHEET_WIDTH } from '../drawing/lines.tsx';
import {
  type Axes,
  type Line,
  PLOT_LEFT,
  PLOT_RIGHT,
  PlotAcross,
  PlotLevels,
  PlotLine,
  PlotNumbers,
  roundSteps,
} from '../drawing/plot.tsx';

export type Trace = {
  readonly name: string;
  readonly look: Line['look'];
  readonly x: Float64Array | readonly number[]; // m
  readonly y: Float64Array | readonly number[];
};
export type Plot = {
  readonly title: string;
  readonly unit: string;
  readonly traces: readonly Trace[];
  /** So much the axis up spans at least: less is no difference that anybody could read. */
  readonly least: number;
  readonly height?: number;
  readonly zero?: boolean; // the axis up holds 0
};
export type Drawn = Plot & { readonly axes: Axes };

/** Widths of the strip in units of the sheet: where a whole lap is drawn, and as much as is seen, with the margin behind it. */
export const STRIP = { drawn: PLOT_RIGHT - PLOT_LEFT, seen: SHEET_WIDTH - PLOT_LEFT };
const MARGIN = STRIP.seen - STRIP.drawn;
/** More are not seen across a phone or a bench screen. */
const MOST = 700;
/** Room above for the unit and the names, and below for the numbers across. */
const ABOVE = 24;
const BELOW = 26;

export const lengthIn = (plots: readonly Plot[]): number =>
  rangeOf(plots.flatMap(({ traces }) => traces.map(({ x }) => x)))[1];

export function drawnOf(plot: Plot): Drawn {
  const { traces, height = 150, zero = false, least } = plot;
  const [from, to] = rangeOf(traces.map(({ y }) => y));
  const spare = Math.max(0, least - (to - from)) / 2;
  const [low, high] = [(zero ? Math.min(from, 0) : from) - spare, (zero ? Math.max(to, 0) : to) + spare];
  const steps = roundSteps(low, high, 5);
  const step = (steps[1] ?? 1) - (steps[0] ?? 0);
  const [first, last] = [steps[0] ?? low, steps.at(-1) ?? high];
  return {
    ...plot,
    axes: {
      x: rangeOf(traces.map(({ x }) => x)),
      y: [first - (low < first ? step : 0), last + (high > last ? step : 0)],
      height,
      top: ABOVE,
    },
  };
}

/** What stays where it is: numbers on the axis up, units, names. */
export function LapFrames({ drawn }: { readonly drawn: readonly Drawn[] }) {
  return (
    <div class="trace-frames">
      {drawn.map(({ title, unit, traces, axes }) => (
        <svg key={title} class="plate" aria-hidden="true" viewBox={`0 0 ${SHEET_WIDTH} ${tall(axes)}`}>
          <Label x={4} y={12} anchor="start" text={unit} look="quiet" />
          <PlotNumbers axes={axes} />
          <Label
            x={SHEET_WIDTH - 4}
            y={12}
            anchor="end"
            text={traces.map(({ name }) => name).join(' · ')}
            look="quiet"
          />
        </svg>
      ))}
    </div>
  );
}

/** The whole lap, so many times as wide as what is seen of it. */
export function LapStrip({ drawn, times }: { readonly drawn: readonly Drawn[]; readonly times: number }) {
  const wide = STRIP.drawn * times + MARGIN;
  return (
    <div style={{ width: `${(100 * wide) / STRIP.seen}%` }}>
      {drawn.map(({ title, traces, axes }) => {
        const across: Axes = { ...axes, across: [0, STRIP.drawn * times] };
        return (
          <svg key={title} class="plate" viewBox={`0 0 ${wide} ${tall(axes)}`} role="img" aria-label={title}>
            <PlotLevels axes={across} />
            <PlotAcross axes={across} unit=" m" most={6 * times} />
            {traces.map(({ name, look, x, y }) => (
              <PlotLine key={name} line={{ name, look, points: thinned(x, y, MOST * times) }} axes={across} />
            ))}
          </svg>
        );
      })}
    </div>
  );
}

const tall = ({ top, height }: Axes): number => top + height + BELOW;

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
function thinned(
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
