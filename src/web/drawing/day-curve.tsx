/** How the air of a day went: density over the hours with its band, and the air a jetting was right in. */
import type { VNode } from 'preact';
import { formatQuantity } from '../../quantity/index.ts';
import { drawingWords } from '../words/drawing.ts';
import { Label, Plate, SHEET_WIDTH } from './lines.tsx';
import { type Axes, PlotLine, plotX, plotY, roundSteps } from './plot.tsx';

export type DayPoint = {
  readonly minute: number; // of the day where the track is, from midnight
  readonly density: number; // kg/m³
  readonly band: number; // ± kg/m³; not a number where it is not known
};
export type Day = {
  readonly points: readonly DayPoint[];
  /** Air of the session whose jetting was right [kg/m³]: above it the same jet is lean. */
  readonly baseline?: number;
};
/** The drawing, what it shows in a sentence, and the same as a table. */
export type DrawnDay = {
  readonly title: string;
  readonly drawing: VNode;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
};

const TOP = 28;
const HEIGHT = 170;

export const clock = (minute: number): string => {
  const whole = Math.round(minute);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};
const words = (si: number): string => formatQuantity(si, 'kg/m³', 3);
const bandOf = ({ band }: DayPoint): number => (Number.isFinite(band) ? band : 0);

/** Undefined where no reading of the day is a number. */
export function dayCurve({ points, baseline }: Day): DrawnDay | undefined {
  const known = points
    .filter(({ minute, density }) => Number.isFinite(minute) && Number.isFinite(density))
    .toSorted((a, b) => a.minute - b.minute);
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const base = baseline !== undefined && Number.isFinite(baseline) ? baseline : undefined;
  const title = titleOf(first, last, base);
  return {
    title,
    head: ['time', 'density', drawingWords.known],
    rows: known.map(point => [
      clock(point.minute),
      words(point.density),
      Number.isFinite(point.band) ? `± ${words(point.band)}` : drawingWords.notKnown,
    ]),
    drawing: <DayCurve points={known} title={title} {...(base === undefined ? {} : { baseline: base })} />,
  };
}

function titleOf(first: DayPoint, last: DayPoint, base: number | undefined): string {
  const from = drawingWords.air(clock(first.minute), words(first.density));
  const to = first === last ? '' : `, at ${clock(last.minute)} ${words(last.density)}`;
  if (base === undefined) return `${from}${to}.`;
  const against =
    Math.abs(last.density - base) <= bandOf(last)
      ? drawingWords.cannotBeTold
      : last.density > base
        ? drawingWords.denserThanBaselineSame
        : drawingWords.thinnerThanBaseline;
  return `${from}${to}; ${against}.`;
}

/** Points in the order of time. */
export function DayCurve({ points, baseline, title }: Day & { readonly title: string }) {
  const axes = axesOf(points, baseline);
  const [start, end] = axes.x;
  const edge = (side: 1 | -1) =>
    points.map(p => `${plotX(p.minute, axes).toFixed(1)} ${plotY(p.density + side * bandOf(p), axes).toFixed(1)}`);
  return (
    <Plate height={TOP + HEIGHT + 24} title={title}>
      <Label x={6} y={15} anchor="start" text={drawingWords.densityKgM} look="strong" />
      {roundSteps(...axes.y, 5).map(value => (
        <g key={value}>
          <line
            class="hair"
            x1={plotX(start, axes)}
            x2={plotX(end, axes)}
            y1={plotY(value, axes)}
            y2={plotY(value, axes)}
          />
          <Label
            x={plotX(start, axes) - 4}
            y={plotY(value, axes) + 4}
            anchor="end"
            text={value.toFixed(2)}
            look="quiet"
          />
        </g>
      ))}
      {hoursOf(axes.x).map(minute => (
        <g key={minute}>
          <line class="hair" x1={plotX(minute, axes)} x2={plotX(minute, axes)} y1={TOP} y2={TOP + HEIGHT} />
          <Label x={plotX(minute, axes)} y={TOP + HEIGHT + 16} text={clock(minute)} look="quiet" />
        </g>
      ))}
      {points.length > 1 && <path class="band" d={`M${[...edge(1), ...edge(-1).toReversed()].join('L')}Z`} />}
      {baseline !== undefined && (
        <g class="signal">
          <line x1={plotX(start, axes)} x2={plotX(end, axes)} y1={plotY(baseline, axes)} y2={plotY(baseline, axes)} />
          <Label x={SHEET_WIDTH - 18} y={plotY(baseline, axes) - 5} anchor="end" text={`baseline ${words(baseline)}`} />
        </g>
      )}
      <PlotLine
        line={{ name: 'density', points: points.map(p => [p.minute, p.density] as const), look: 'plain' }}
        axes={axes}
      />
      {points.length === 1 &&
        points.map(p => (
          <line
            key={p.minute}
            x1={plotX(p.minute, axes)}
            x2={plotX(p.minute, axes)}
            y1={plotY(p.density + bandOf(p), axes)}
            y2={plotY(p.density - bandOf(p), axes)}
          />
        ))}
      {points.map(p => (
        <circle key={p.minute} class="ring" cx={plotX(p.minute, axes)} cy={plotY(p.density, axes)} r={3.5} />
      ))}
    </Plate>
  );
}

/** An hour at least, and 0.04 kg/m³ at least: a still day is not drawn as a wild one. */
function axesOf(points: readonly DayPoint[], baseline: number | undefined): Axes {
  const minutes = points.map(p => p.minute);
  const values = [
    ...points.flatMap(p => [p.density - bandOf(p), p.density + bandOf(p)]),
    ...(baseline ? [baseline] : []),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(0.15 * (high - low), (0.04 - (high - low)) / 2);
  const [from, to] = [Math.min(...minutes), Math.max(...minutes)];
  const beside = Math.max(0, (60 - (to - from)) / 2);
  return { x: [from - beside, to + beside], y: [low - room, high + room], top: TOP, height: HEIGHT };
}

/** Full hours between, every one, every second, every third or every sixth, at most five of them. */
function hoursOf([from, to]: readonly [number, number]): readonly number[] {
  for (const step of [60, 120, 180, 360, 720]) {
    const first = Math.ceil(from / step);
    const count = Math.floor(to / step) - first + 1;
    if (count <= 5) return Array.from({ length: Math.max(count, 0) }, (_, n) => (first + n) * step);
  }
  return [from, to];
}
